"""All margins of a result in one picture, the smallest first: how far each limit lies from what is asked."""

from dataclasses import dataclass

import matplotlib as mpl

from service.web.pictures.drawing import ACCENT, INK, LINE, STYLE, blank, svg_of, write

# Why cut off: a limit of thirty times the demand and one of three times say the same thing, and the small ones want the room.
WIDEST = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class MarginBar:
    """One check's margin: limit over demand in the worst and in the favourable corner.

    Attributes:
        label: The check and the bank in words.
        worst: In the worst corner. [1]
        favourable: In the favourable corner. [1]
    """

    label: str
    worst: float
    favourable: float


def margins_svg(bars: tuple[MarginBar, ...]) -> bytes:
    """Draw the margins from the worst to the favourable corner against 1, which is exactly enough.

    Args:
        bars: In any order; the smallest worst margin is drawn on top.
    """
    ordered = sorted(bars, key=lambda bar: bar.worst, reverse=True)
    figure = blank(height_in=0.9 + 0.38 * max(len(ordered), 1))
    with mpl.rc_context(STYLE):
        axes = figure.add_subplot()
        for row, bar in enumerate(ordered):
            draw_bar(axes, row, bar)
        axes.axvline(1.0, color=INK, linewidth=1.6)
        axes.set_yticks(range(len(ordered)), [bar.label for bar in ordered])
        axes.set_xlim(0, WIDEST + 0.45)
        axes.set_xticks([0, 1, 2, 3, 4], ["0", "1 just enough", "2", "3", "4 times"])
        axes.set_ylim(-0.6, len(ordered) - 0.4)
        axes.tick_params(axis="y", length=0)
        axes.grid(axis="x", color=LINE, linewidth=0.6)
        axes.set_axisbelow(True)
    return svg_of(figure)


def draw_bar(axes: "mpl.axes.Axes", row: int, bar: MarginBar) -> None:
    """Draw one margin as a span with its worst end marked and written out."""
    worst, favourable = min(bar.worst, WIDEST), min(max(bar.favourable, bar.worst), WIDEST)
    axes.plot([worst, favourable], [row, row], color=ACCENT, linewidth=7, alpha=0.35, solid_capstyle="butt")
    # Why filled and hollow: greyscale paper must still tell what is passed.
    axes.plot([worst], [row], marker="o", markersize=8, color=ACCENT, markerfacecolor=ACCENT if bar.worst >= 1 else "white", markeredgewidth=2)
    written = f"more than {WIDEST:g}" if bar.worst > WIDEST else f"{bar.worst:.2f}"
    write(axes, written, (favourable, row), shift=(10, 0))
