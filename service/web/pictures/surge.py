"""The largest surge over its time, with the claim as a spot."""

from collections.abc import Mapping
from typing import Any

import matplotlib as mpl
from matplotlib.axes import Axes
from matplotlib.ticker import FuncFormatter, LogLocator, NullLocator

from service.web.pictures.drawing import ACCENT, INK, PALE, STYLE, blank, ruled, svg_of

Curve = Mapping[str, Any]
Points = list[tuple[float, float]]
# Why cut off: where nobody knows the board, the best case is a number without meaning.
HIGHEST = 2.5


def surge_svg(curve: Curve) -> bytes:
    """Draw a surge curve of a report.

    Args:
        curve: Of kind surge_current_vs_time, as in switchbank.report/1.
    """
    worst, best = ([(x, y) for x, y in series["points"] if y > 0] for series in curve["series"])
    top = ceiling_a(curve, worst, best)
    figure = blank(height_in=3.9)
    with mpl.rc_context(STYLE):
        axes = figure.add_subplot()
        axes.set_xscale("log")
        if len(worst) == len(best):
            axes.fill_between([x for x, _ in worst], [y for _, y in worst], [y for _, y in best], color=PALE, linewidth=0)
        draw_line(axes, worst, line="-", words="worst case")
        draw_line(axes, best, line=(0, (4, 2)), words=f"at its best{' (beyond this picture)' if all(y > top for _, y in best) else ''}")
        for mark in curve["marks"]:
            draw_mark(axes, mark, top=top)
        axes.set_ylim(0, top)
        axes.set_xlabel("how long the surge lasts [s]")
        axes.set_ylabel("largest surge [A]")
        plain_ticks(axes)
        ruled(axes)
        figure.legend(loc="outside lower center", ncols=3, fontsize=9)
    return svg_of(figure)


def ceiling_a(curve: Curve, worst: Points, best: Points) -> float:
    """Where the paper ends [A]."""
    seen = [y for _, y in worst] + [mark["y"] for mark in curve["marks"] if mark["x"] is not None]
    highest = max([*seen, *(y for _, y in best)], default=1.0)
    return min(1.05 * highest, HIGHEST * max(seen, default=highest))


def draw_line(axes: Axes, points: Points, *, line: str | tuple[int, tuple[int, int]], words: str) -> None:
    """One corner."""
    if points:
        axes.plot(*zip(*points, strict=True), color=ACCENT, linewidth=2.4, linestyle=line, marker="o", markersize=4, label=words)


def draw_mark(axes: Axes, mark: Mapping[str, Any], *, top: float) -> None:
    """The claim as a spot; the sheet's own bound as a line, where the paper reaches so far."""
    if mark["x"] is not None:
        words = f"claimed: {mark['y']:.4g} A for {mark['x']:.4g} s"
        axes.plot([mark["x"]], [mark["y"]], linestyle="none", marker="X", markersize=11, color=INK, label=words)
    elif mark["y"] < top:
        axes.axhline(mark["y"], color=INK, linewidth=1.2, linestyle=(0, (1, 2)), label=f"{mark['label']}: {mark['y']:.4g} A")


def plain_ticks(axes: Axes) -> None:
    """Times as people write them, not as powers of ten."""
    axes.xaxis.set_major_locator(LogLocator(base=10))
    axes.xaxis.set_major_formatter(FuncFormatter(lambda value, _: f"{value:g}"))
    axes.xaxis.set_minor_locator(NullLocator())
