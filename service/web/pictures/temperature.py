"""How hot junction and board settle over the current, with the limits and the claim."""

from collections.abc import Mapping
from typing import Any

import matplotlib as mpl
from matplotlib.axes import Axes

from service.web.pictures.drawing import ACCENT, INK, SOFT, STYLE, blank, ruled, svg_of, write

Curve = Mapping[str, Any]
# Why line and dash: greyscale paper must still tell them apart.
LINES: Mapping[tuple[str, str], Mapping[str, Any]] = {
    ("junction", "worst"): {"color": ACCENT, "linewidth": 2.6},
    ("junction", "favourable"): {"color": ACCENT, "linewidth": 1.1},
    ("board", "worst"): {"color": SOFT, "linewidth": 2.6, "linestyle": (0, (4, 2))},
    ("board", "favourable"): {"color": SOFT, "linewidth": 1.1, "linestyle": (0, (4, 2))},
}
WORDS = {"worst": "worst case", "favourable": "at its best"}


def temperature_svg(curve: Curve) -> bytes:
    """Draw a temperature curve of a report.

    Args:
        curve: Of kind temperature_vs_current, as in switchbank.report/1.
    """
    figure = blank(height_in=4.1)
    with mpl.rc_context(STYLE):
        axes = figure.add_subplot()
        for series in curve["series"]:
            label, corner = series["label"], series["cond"]["corner"]
            axes.plot(*zip(*series["points"], strict=True), label=f"{label}, {WORDS[corner]}", **LINES[label, corner])
        coolest = curve["series"][0]["points"][0][1]
        limits = [mark for mark in curve["marks"] if mark["y"] is not None]
        currents = sorted((mark for mark in curve["marks"] if mark["x"] is not None), key=lambda mark: mark["x"])
        hottest = max(mark["y"] for mark in limits)
        axes.set_ylim(coolest, coolest + 1.25 * (hottest - coolest) if hottest > coolest else None)
        axes.set_xlim(0, max(axes.get_xlim()[1], 1.15 * currents[-1]["x"]))
        for mark in limits:
            axes.axhline(mark["y"], color=INK, linewidth=1.4)
            write(axes, f"{mark['label']} {mark['y']:.4g} °C", (0, mark["y"]), shift=(5, 8), across="axes fraction")
        for mark, smaller in zip(currents, (True, False), strict=True):
            draw_current(axes, mark, smaller=smaller)
        axes.set_xlabel("current for hours [A]")
        axes.set_ylabel("temperature [°C]")
        ruled(axes)
        figure.legend(loc="outside lower center", ncols=2, fontsize=9)
    return svg_of(figure)


def draw_current(axes: Axes, mark: Mapping[str, Any], *, smaller: bool) -> None:
    """Draw a current from floor to ceiling.

    Why the words of the smaller one stand left of its head and those of the larger one right of its foot: there no line passes, and
    the two may lie a hair apart.
    """
    claimed = mark["label"] == "claimed"
    axes.axvline(mark["x"], color=INK, linewidth=1.4, linestyle="-" if claimed else (0, (1, 2)))
    words = f"{'claimed' if claimed else 'holds up to'} {mark['x']:.4g} A"
    place, shift, side = ((mark["x"], 1), (-5, -10), "right") if smaller else ((mark["x"], 0), (5, 12), "left")
    write(axes, words, place, shift=shift, up="axes fraction", side=side)
