"""The switch banks of a board as a small circuit, with the counts that a person made."""

from dataclasses import dataclass

import matplotlib as mpl

from service.web.pictures.drawing import ACCENT, INK, SOFT, STYLE, blank, svg_of

# Why cut off: sixteen switches drawn one under the other say no more than eight and the count.
MOST_DRAWN = 8
PITCH = 0.62


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnBank:
    """One bank of the picture.

    Attributes:
        name: discharge or charge.
        part: The part as named on the board.
        switches: How many stand in parallel.
    """

    name: str
    part: str
    switches: int


def circuit_words(discharge: DrawnBank, charge: DrawnBank, *, common_port: bool) -> str:
    """Say the picture in one sentence, for those who cannot see it."""
    banks = f"{discharge.switches} × {discharge.part} for discharge, {charge.switches} × {charge.part} for charge"
    return f"{banks}; {'one port, both banks in series' if common_port else 'separate ports, each bank in a path of its own'}."


def circuit_svg(discharge: DrawnBank, charge: DrawnBank, *, cells: int, common_port: bool) -> bytes:
    """Draw cells, banks and terminals in the negative path.

    A body diode lets through what its own bank does not block: charge current leaves the cells towards the terminal past the
    discharge bank, discharge current comes back past the charge bank.

    Args:
        discharge: The bank that cuts discharge.
        charge: The bank that cuts charge.
        cells: In series.
        common_port: Whether one pair of terminals serves both ways.
    """
    rows = max(min(discharge.switches, MOST_DRAWN), min(charge.switches, MOST_DRAWN))
    height = 1.4 + PITCH * 0.55 * rows * (1 if common_port else 2)
    figure = blank(height_in=height)
    with mpl.rc_context(STYLE):
        axes = figure.add_subplot()
        axes.set_axis_off()
        axes.set_aspect("equal")
        draw_cells(axes, cells)
        if common_port:
            draw_bank(axes, discharge, x=3.0, y=0.0, forward=True)
            draw_bank(axes, charge, x=7.0, y=0.0, forward=False)
            wire(axes, 0.55, 3.0, 0.0)
            wire(axes, 5.0, 7.0, 0.0)
            terminal(axes, 9.0, 0.0, "pack −")
        else:
            offset = PITCH * rows / 2 + 0.6
            draw_bank(axes, discharge, x=4.0, y=offset, forward=True)
            draw_bank(axes, charge, x=4.0, y=-offset, forward=False)
            axes.plot([0.55, 1.8, 1.8, 1.8], [0, 0, offset, -offset], color=INK, linewidth=1.4)
            wire(axes, 1.8, 4.0, offset)
            wire(axes, 1.8, 4.0, -offset)
            terminal(axes, 6.0, offset, "load −")
            terminal(axes, 6.0, -offset, "charger −")
    return svg_of(figure)


def draw_cells(axes: "mpl.axes.Axes", cells: int) -> None:
    """The cells as a battery sign with their count."""
    for x, half in ((0.0, 0.5), (0.18, 0.25), (0.36, 0.5), (0.54, 0.25)):
        axes.plot([x, x], [-half, half], color=INK, linewidth=1.6)
    axes.text(0.27, -0.8, f"{cells} cells in series", ha="center", va="top", color=SOFT)


def draw_bank(axes: "mpl.axes.Axes", bank: DrawnBank, *, x: float, y: float, forward: bool) -> None:
    """Parallel switches between two rails; the triangle is the body diode, which a switched-off bank still has."""
    drawn = min(bank.switches, MOST_DRAWN)
    lines = [y + PITCH * (row - (drawn - 1) / 2) for row in range(drawn)]
    for line in lines:
        axes.plot([x, x + 0.65], [line, line], color=INK, linewidth=1.2)
        axes.plot([x + 1.35, x + 2.0], [line, line], color=INK, linewidth=1.2)
        axes.plot(
            [x + 0.65, x + 1.35, x + 1.35, x + 0.65, x + 0.65],
            [line - 0.2, line - 0.2, line + 0.2, line + 0.2, line - 0.2],
            color=ACCENT,
            linewidth=1.4,
        )
        tip, back = (x + 1.15, x + 0.85) if forward else (x + 0.85, x + 1.15)
        axes.fill([back, back, tip], [line - 0.13, line + 0.13, line], color=ACCENT)
    for rail in (x, x + 2.0):
        axes.plot([rail, rail], [lines[0], lines[-1]], color=INK, linewidth=1.4)
    more = f" ({bank.switches - drawn} more not drawn)" if bank.switches > drawn else ""
    axes.text(x + 1.0, lines[-1] + 0.35, f"{bank.name} bank: {bank.switches} × {bank.part}{more}", ha="center", va="bottom")


def wire(axes: "mpl.axes.Axes", x0: float, x1: float, y: float) -> None:
    """A straight piece of wire."""
    axes.plot([x0, x1], [y, y], color=INK, linewidth=1.4)


def terminal(axes: "mpl.axes.Axes", x: float, y: float, name: str) -> None:
    """A terminal at the end of a wire."""
    wire(axes, x, x + 0.8, y)
    axes.plot([x + 0.9], [y], marker="o", markersize=7, color=INK, markerfacecolor="white", markeredgewidth=1.6)
    axes.text(x + 1.1, y, name, va="center")
