"""How much of a claimed surge would still hold in the worst corner: for how long, in what air, with how many switches."""

from collections.abc import Callable
from math import inf

import numpy as np
from scipy.optimize import brentq

from service.derating.case import BankCase, Case, Corner
from service.derating.holding import ABSOLUTE_ZERO_C, COLDEST_AIR_C, MOST_SWITCHES, least_number
from service.derating.surge_unknowns import with_surge_quantities
from service.derating.surging import BankSurge, surged_banks
from service.derating.weighing import ENOUGH

_BRIEFEST_S, _LONGEST_S = 1e-6, 1e5


def largest_surge_s(case: Case) -> float | None:
    """Longest time for the claimed surge current that holds in the worst corner.

    Args:
        case: The board under one rule set.

    Returns:
        Time, zero where not even the briefest surge is proven; None where no surge is claimed, where it may last for ever, or where
        no bound exists. [s]
    """
    surge = case.board.claim.surge_a
    if surge is None:
        return None
    banks = surged_banks(case)[:1] if case.banks_alike else surged_banks(case)
    times = [_longest_s(case, bank, surge.most) for bank in banks if not case.lacks_conduction(bank)]
    shortest = min(times, default=inf)
    return None if shortest == inf else shortest


def highest_surge_ambient_c(case: Case) -> float | None:
    """Highest ambient in which the claimed surge holds in the worst corner.

    Args:
        case: The board under one rule set.

    Returns:
        Ambient; None where no surge is claimed, or where nobody knows how much heat the board holds: then the bound is that of a surge
        without end, which says little of this one. [degC]
    """
    return _over_banks(case, _highest_ambient_c, min)


def least_surge_switches(case: Case) -> float | None:
    """Least number of switches, the same in each bank, with which the claimed surge holds in the worst corner.

    Args:
        case: The board under one rule set.

    Returns:
        The number, infinite where even very many are not enough; None as for the ambient. [1]
    """
    return _over_banks(case, _least_switches, max)


def _over_banks(
    case: Case,
    figure: Callable[[Case, BankCase, float, float], float],
    pick: Callable[[list[float]], float],
) -> float | None:
    """The figure that binds, of all banks that the claimed surge passes."""
    surge_a, seconds = case.board.claim.surge_a, case.board.claim.surge_s
    if surge_a is None or seconds is None or case.board.cooling.board_heat_jpk is None or case.lacks_conduction(case.discharge):
        return None
    own = with_surge_quantities(case, seconds=seconds.most)
    banks = surged_banks(own)[:1] if own.banks_alike else surged_banks(own)
    return pick([figure(own, bank, surge_a.most, seconds.most) for bank in banks])


def _highest_ambient_c(case: Case, bank: BankCase, surge_a: float, seconds: float) -> float:
    """Highest ambient of one bank."""
    point = case.point(Corner.WORST)

    def spare(ambient_c: float) -> float:
        return BankSurge(case, bank, {**point, "ambient": ambient_c}, seconds=seconds).margin(surge_a) - 1

    limit_c = BankSurge(case, bank, point, seconds=seconds).limit_c
    return float(brentq(spare, COLDEST_AIR_C, limit_c, xtol=1e-6)) if spare(COLDEST_AIR_C) > 0 else ABSOLUTE_ZERO_C


def _least_switches(case: Case, bank: BankCase, surge_a: float, seconds: float) -> float:
    """Least number of switches of one bank, with as many in the other."""

    def keeps(switches: int) -> bool:
        more = case.with_switches(switches)
        same = next(one for one in more.banks if one.name == bank.name)
        return BankSurge(more, same, more.point(Corner.WORST), seconds=seconds).margin(surge_a) >= ENOUGH

    return least_number(keeps, most=MOST_SWITCHES)


def _longest_s(case: Case, bank: BankCase, surge_a: float) -> float:
    """Longest time of one bank; infinite where the surge may last for ever."""
    case = with_surge_quantities(case, seconds=_BRIEFEST_S)
    point = case.point(Corner.WORST)

    def spare(log_s: float) -> float:
        return BankSurge(case, bank, point, seconds=float(np.exp(log_s))).margin(surge_a) - 1

    brief, long = np.log(_BRIEFEST_S), np.log(_LONGEST_S)
    if spare(long) >= 0:
        return inf
    if spare(brief) < 0:
        return 0.0
    return float(np.exp(brentq(spare, brief, long, xtol=1e-5)))
