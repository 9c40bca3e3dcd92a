"""How hot junction and board settle over the current, in both corners: for a picture."""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from service.derating.case import BankCase, Case, Corner
from service.derating.first_to_pass import first_to_pass, largest_worst_a
from service.derating.formulas.elementwise import greater
from service.derating.thermal import limits_of
from service.facts.drawn import Axis, Curve, Mark, Series

CURRENTS = 53
# How far beyond the largest current, or the claimed one, a person still wants to look.
BEYOND = 1.3
Array = NDArray[np.float64]


def temperature_curve(case: Case) -> Curve | None:
    """Draw the bank that passes its limit first.

    Args:
        case: The board under one rule set.

    Returns:
        Junction and, where one is shared, board over the current; a line ends where the temperature never settles. None where a
        bank's heat has no bound.
    """
    bank = first_to_pass(case, case.banks)
    if bank is None:
        return None
    point, largest_a = case.point(Corner.WORST), largest_worst_a(case, bank)
    claimed_a = case.claimed_a(bank, point)
    currents_a = np.linspace(0.0, BEYOND * max(largest_a, claimed_a), CURRENTS)
    limits = limits_of(case, bank, point)
    lines = [Mark(label="junction limit", y=limits.junction_c)]
    if limits.board_c is not None:
        lines.append(Mark(label="board limit", y=limits.board_c))
    series = tuple(line for corner in (Corner.WORST, Corner.FAVOURABLE) for line in _lines(case, bank, corner, currents_a))
    return Curve(
        kind="temperature_vs_current",
        bank=bank.name,
        x=Axis(quantity="current", unit="A"),
        y=Axis(quantity="temperature", unit="degC"),
        series=series,
        marks=(*lines, Mark(label="claimed", x=claimed_a), Mark(label="largest in the worst case", x=largest_a)),
        note=_note(series[0], float(currents_a[-1])),
    )


def _lines(case: Case, bank: BankCase, corner: Corner, currents_a: Array) -> Iterator[Series]:
    """Junction and board at one corner; of both ways of sharing the hotter one."""
    point = case.point(corner)
    sharings = (False, True) if bank.switches > 1 else (False,)
    with np.errstate(all="ignore"):
        states = [case.settle(bank, point, current_a=currents_a, low_switch=low) for low in sharings]  # type: ignore[arg-type]  # one entry a current
    named = {"junction": [state.junctions_c[0] for state in states]}
    if case.is_chain:
        named["board"] = [state.board_c for state in states]
    for label, temperatures in named.items():
        hottest = temperatures[0] if len(temperatures) == 1 else greater(*temperatures)
        pairs = zip(currents_a.tolist(), np.broadcast_to(hottest, currents_a.shape).tolist(), strict=True)
        yield Series(label=label, corner=corner.value, points=tuple((amperes, warm) for amperes, warm in pairs if np.isfinite(warm)))


def _note(worst: Series, last_a: float) -> str:
    """What a line means that ends before the picture does."""
    end_a = worst.points[-1][0]
    return f"In the worst case the temperature never settles beyond about {end_a:.3g} A." if end_a < last_a else ""
