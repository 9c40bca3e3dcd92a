"""How much would still hold: the worst of several banks, and the least number of switches."""

from collections.abc import Callable

from service.derating.case import BankCase, Case, Corner
from service.derating.quantity import Point
from service.derating.weighing import ENOUGH

MOST_SWITCHES = 1024
# Where no air is cool enough the answer is absolute zero: no board ever holds. [degC]
COLDEST_AIR_C, ABSOLUTE_ZERO_C = -60.0, -273.15

BankFigure = Callable[[Case, BankCase, Point], float]


def over_discharge_path(case: Case, figure: BankFigure) -> float | None:
    """The smallest figure of the banks that carry the discharge current, in the worst corner.

    Args:
        case: The board under one rule set.
        figure: From a bank to a figure of which less is worse.

    Returns:
        The smallest; None where a bank's heat has no bound.
    """
    return _smallest(case, case.conducting(case.discharge), figure)


def over_banks(case: Case, figure: BankFigure) -> float | None:
    """The smallest figure of both banks, in the worst corner.

    Args:
        case: The board under one rule set.
        figure: From a bank to a figure of which less is worse.

    Returns:
        The smallest; None where a bank's heat has no bound.
    """
    return _smallest(case, case.banks, figure)


def least_switches(case: Case, margin: BankFigure) -> float | None:
    """Least number of switches, the same in each bank, that keeps a margin of both banks in the worst corner.

    Args:
        case: The board under one rule set.
        margin: Limit over demand of a bank; it must not fall as switches are added.

    Returns:
        The number; infinite where even very many are not enough, None where a bank's heat has no bound.
    """

    def keeps(switches: int) -> bool:
        found = over_banks(case.with_switches(switches), margin)
        return found is not None and found >= ENOUGH

    if any(case.lacks_conduction(bank) for bank in case.banks):
        return None
    return least_number(keeps, most=MOST_SWITCHES)


def least_number(keeps: Callable[[int], bool], *, most: int) -> float:
    """The least whole number from 1 on that keeps something.

    Args:
        keeps: Whether a number does; once true it must stay so.
        most: Where to give up.

    Returns:
        The number; infinite where none up to the most does.
    """
    high = 1
    while not keeps(high):
        high *= 2
        if high > most:
            return float("inf")
    low = high // 2
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if keeps(middle) else (middle, high)
    return float(high)


def _smallest(case: Case, banks: tuple[BankCase, ...], figure: BankFigure) -> float | None:
    """The smallest figure of some banks; of two that are alike one is enough."""
    if any(case.lacks_conduction(bank) for bank in banks):
        return None
    point = case.point(Corner.WORST)
    return min(figure(case, bank, point) for bank in (banks[:1] if case.banks_alike else banks))
