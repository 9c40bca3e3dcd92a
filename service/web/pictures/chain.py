"""The way of the heat from the junction to the air: each link a span from its cooler to its hotter end."""

from collections.abc import Mapping
from typing import Any

import matplotlib as mpl
from matplotlib.axes import Axes

from service.web.pictures.drawing import ACCENT, INK, PALE, STYLE, blank, ruled, svg_of, write

Link = Mapping[str, Any]


def chain_svg(chain: Mapping[str, Any]) -> bytes:
    """Draw the thermal chain of a report, the junction on top.

    Args:
        chain: As in switchbank.report/1.
    """
    links = list(reversed(chain["steps"]))
    limit, hottest, coolest = chain["limit_degc"], links[-1]["from_degc"], links[0]["to_degc"]
    span = max(limit, hottest) - coolest
    figure = blank(height_in=1.2 + 0.62 * len(links))
    with mpl.rc_context(STYLE):
        axes = figure.add_subplot()
        for row, link in enumerate(links):
            draw_link(axes, row, link, left=link["to_degc"] - coolest < span / 2)
        axes.axvline(limit, color=INK, linewidth=1.6)
        write(axes, f"junction limit {limit:.4g} °C", (limit, 1), shift=(-5, -8), up="axes fraction", side="right")
        if chain["board_limit_degc"] is not None:
            axes.plot([chain["board_limit_degc"]] * 2, [-0.4, 0.4], color=INK, linewidth=1.6, linestyle=(0, (2, 1)))
            write(axes, f"board limit {chain['board_limit_degc']:.4g} °C", (chain["board_limit_degc"], -0.42), shift=(-5, 0), side="right")
        axes.set_yticks(range(len(links)), [f"{link['from']} to {link['to']}" for link in links])
        axes.tick_params(axis="y", length=0)
        axes.set_xlim(coolest - 0.04 * span, coolest + 1.08 * span)
        axes.set_ylim(-0.6, len(links) - 0.1)
        axes.set_xlabel("temperature in the worst case [°C]")
        ruled(axes)
    return svg_of(figure)


def draw_link(axes: Axes, row: int, link: Link, *, left: bool) -> None:
    """One link with its sum written above it, and the temperatures at both ends."""
    cool, hot = link["to_degc"], link["from_degc"]
    axes.barh(row, hot - cool, left=cool, height=0.34, color=PALE, edgecolor=ACCENT, linewidth=1.4)
    working = f"{link['resistance']['worst']:.3g} K/W × {link['heat_w']:.3g} W = {hot - cool:.3g} K"
    write(axes, working, (cool if left else hot, row + 0.2), shift=(0, 8), side="left" if left else "right")
    write(axes, f"{hot:.4g} °C", (hot, row), shift=(5, 0))
