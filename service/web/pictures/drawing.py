"""The paper that every picture is drawn on."""

from io import BytesIO
from typing import Any

import matplotlib as mpl
from matplotlib.figure import Figure
from matplotlib.typing import RcKeyType

INK, SOFT, LINE, ACCENT = "#1c1f22", "#5d6469", "#d9d6ce", "#0b5d66"

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
    "text.color": INK,
    "xtick.color": SOFT,
    "ytick.color": INK,
    "figure.facecolor": "white",
}


def blank(*, width_in: float = 8.0, height_in: float = 3.5) -> Figure:
    """A white figure in the house's style.

    Args:
        width_in: Width. [inch]
        height_in: Height. [inch]
    """
    with mpl.rc_context(STYLE):
        return Figure(figsize=(width_in, height_in), layout="constrained")


def svg_of(figure: Figure) -> bytes:
    """The figure as an SVG file: the same bytes for the same figure."""
    out = BytesIO()
    with mpl.rc_context(STYLE):
        figure.savefig(out, format="svg", metadata={"Date": None, "Creator": None})
    return out.getvalue()
