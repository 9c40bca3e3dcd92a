"""The paper that every picture is drawn on."""

from io import BytesIO
from typing import Any

import matplotlib as mpl
from flask import Response
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.typing import RcKeyType

PAPER, INK, SOFT, LINE, ACCENT, PALE = "#ffffff", "#1c1f22", "#5d6469", "#d9d6ce", "#0b5d66", "#b6d0d3"

# Dark is drawn too: each colour of the paper has its own at night, the same as the pages'.
AT_NIGHT = {PAPER: "#1e2124", INK: "#e7e5e0", SOFT: "#a3a9ae", LINE: "#383d42", ACCENT: "#7fc8cf", PALE: "#34565a"}

# Why text stays text: it can be read aloud, searched and copied; and a salt instead of chance gives the same bytes each time.
STYLE: dict[RcKeyType, Any] = {
    "svg.fonttype": "none",
    "svg.hashsalt": "switchbank",
    "font.family": ["DejaVu Sans", "sans-serif"],
    "font.size": 10,
    "axes.edgecolor": SOFT,
    "axes.labelcolor": INK,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "legend.frameon": False,
    "text.color": INK,
    "xtick.color": SOFT,
    "ytick.color": INK,
    "figure.facecolor": PAPER,
}


# Why its own: a picture that is opened by itself needs the style that it carries, and nothing else.
CONTENT_POLICY = "default-src 'none'; style-src 'unsafe-inline'; sandbox"


def svg(data: bytes) -> Response:
    """Hand a picture out as a file of its own."""
    return Response(data, mimetype="image/svg+xml", headers={"Content-Security-Policy": CONTENT_POLICY})


def blank(*, width_in: float = 7.4, height_in: float = 3.5) -> Figure:
    """A white figure in the house's style.

    Args:
        width_in: Width. [inch]
        height_in: Height. [inch]
    """
    with mpl.rc_context(STYLE):
        return Figure(figsize=(width_in, height_in), layout="constrained")


def write(
    axes: Axes, words: str, place: tuple[float, float], *, shift: tuple[float, float], across: str = "data", up: str = "data", side: str = "left"
) -> None:
    """Write beside a place, on a little paper of its own, so that no line runs through the words.

    Args:
        axes: Where.
        words: What.
        place: Of what is written about.
        shift: How far beside it. [pt, pt]
        across: Whether the first place counts in the picture's own numbers (data) or as a share of it (axes fraction).
        up: The same for the second.
        side: Which side of the words is at the place.
    """
    paper = {"facecolor": PAPER, "edgecolor": "none", "pad": 1.0}
    axes.annotate(words, place, xytext=shift, textcoords="offset points", xycoords=(across, up), ha=side, va="center", fontsize=9, bbox=paper)


def ruled(axes: Axes) -> None:
    """Rule the paper behind the lines."""
    axes.grid(color=LINE, linewidth=0.6)
    axes.set_axisbelow(True)


def svg_of(figure: Figure) -> bytes:
    """The figure as an SVG file that knows day and night: the same bytes for the same figure."""
    out = BytesIO()
    with mpl.rc_context(STYLE):
        figure.savefig(out, format="svg", metadata={"Date": None, "Creator": None})
    return out.getvalue().replace(b"</style>", _night().encode() + b"</style>", 1)


def _night() -> str:
    """The rules that turn each colour into its own at night."""
    rules = (f'[style*="{what}: {day}"]{{{what}:{night} !important}}' for day, night in AT_NIGHT.items() for what in ("fill", "stroke"))
    return f"@media (prefers-color-scheme: dark){{{''.join(rules)}}}"
