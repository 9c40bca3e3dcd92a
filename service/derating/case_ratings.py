"""What is left of a sheet's watts and amperes at the real case temperature of a bank's switches."""

from collections.abc import Callable
from dataclasses import dataclass

from scipy.optimize import brentq

from service.derating.case import BankCase, Case
from service.derating.figures import rated_power_at_case, silicon_current
from service.derating.formulas.elementwise import chosen, lesser
from service.derating.formulas.rating import derated_current_a, derated_power_w, rated_power_w, silicon_current_a
from service.derating.formulas.settling import Settled
from service.derating.holding import ABSOLUTE_ZERO_C, COLDEST_AIR_C
from service.derating.quantity import Point
from service.derating.thermal import Limits, highest_ambient_c, largest_current_a

CLOSE_K = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseState:
    """One switch at rest, seen from its case.

    Attributes:
        exists: Whether the temperatures settle.
        junction_c: Its junction. [degC]
        case_c: Its case. [degC]
        loss_w: Its heat. [W]
        current_a: Through it. [A]
    """

    exists: bool
    junction_c: float
    case_c: float
    loss_w: float
    current_a: float


def case_state(case: Case, bank: BankCase, point: Point, *, current_a: float) -> CaseState:
    """The switches of a bank at rest; their case lies below the junction by RthJC times their heat.

    Where RthJC is not known the case is taken to be as hot as the junction, which is a safe bound for every rating.

    Args:
        case: The board under one rule set.
        bank: The bank.
        point: A number for each quantity.
        current_a: Through the bank. [A]

    Returns:
        The state.
    """
    settled: Settled = case.settle(bank, point, current_a=current_a)
    junction_c, loss_w = settled.junctions_c[0], settled.losses_w[0]
    cooler_k = point.get(bank.prefix + "junction_case", 0.0) * chosen(settled.exists, loss_w, 0.0)
    case_c = junction_c - cooler_k
    return CaseState(exists=settled.exists, junction_c=junction_c, case_c=case_c, loss_w=loss_w, current_a=settled.currents_a[0])


def power_left_w(bank: BankCase, point: Point, *, case_c: float) -> float:
    """What is left of the rated power at a case temperature.

    Args:
        bank: The bank.
        point: A number for each quantity.
        case_c: The real case. [degC]

    Returns:
        Of the printed rating, or through RthJC where none is printed; negative beyond the highest junction temperature. [W]
    """
    junction_max_c = point[bank.prefix + "junction_max"]
    rated = rated_power_at_case(bank.switch)
    if rated is None:
        return rated_power_w(junction_max_c=junction_max_c, case_c=case_c, junction_case_kpw=point[bank.prefix + "junction_case"])
    return derated_power_w(
        rated_power_w=rated.sourced.value,
        rated_case_c=rated.cond.tc or 0.0,
        case_c=case_c,
        junction_max_c=junction_max_c,
    )


def silicon_left_a(case: Case, bank: BankCase, point: Point, *, case_c: float) -> float:
    """What is left of the silicon's rated current at a case temperature.

    Args:
        case: The board under one rule set.
        bank: The bank.
        point: A number for each quantity.
        case_c: The real case. [degC]

    Returns:
        Of the printed rating, or from the power and the hot on-resistance where none is printed; zero beyond the highest junction
        temperature. [A]
    """
    junction_max_c = point[bank.prefix + "junction_max"]
    case_c = lesser(case_c, junction_max_c)
    rated = silicon_current(bank.switch)
    if rated is None:
        hot_ohm = point[bank.prefix + "on_resistance"] * case.ratio(bank, point).value(junction_max_c)
        power = rated_power_w(junction_max_c=junction_max_c, case_c=case_c, junction_case_kpw=point[bank.prefix + "junction_case"])
        return silicon_current_a(power_w=power, hot_resistance_ohm=hot_ohm)
    return derated_current_a(
        rated_current_a=rated.sourced.value,
        rated_case_c=rated.cond.tc or 0.0,
        case_c=case_c,
        junction_max_c=junction_max_c,
    )


def largest_within_a(case: Case, bank: BankCase, point: Point, slack: Callable[[CaseState], float]) -> float:
    """Largest current of a bank at which its switches keep some rating at their real case temperature.

    Args:
        case: The board under one rule set.
        bank: The bank.
        point: A number for each quantity.
        slack: Rating less stress of one switch; it must fall with the current.

    Returns:
        Current through the bank, never above the one that takes the junction to the sheet's own limit. [A]
    """
    ceiling = largest_current_a(case.network(bank, point), Limits(junction_c=point[bank.prefix + "junction_max"]))

    def left(current_a: float) -> float:
        return slack(case_state(case, bank, point, current_a=current_a))

    # Why just below: at the ceiling itself the last digit decides whether anything is left.
    if ceiling <= 0 or left(ceiling * (1 - 1e-9)) >= 0:
        return ceiling
    floor = ceiling * 1e-6
    return float(brentq(left, floor, ceiling * (1 - 1e-9), rtol=1e-10)) if left(floor) > 0 else 0.0


def highest_within_c(case: Case, bank: BankCase, point: Point, slack: Callable[[CaseState], float]) -> float:
    """Highest ambient at which the switches of a bank keep some rating at their real case temperature and the claimed current.

    Args:
        case: The board under one rule set.
        bank: The bank.
        point: A number for each quantity; its own ambient is left out of account.
        slack: Rating less stress of one switch; it must fall with the ambient.

    Returns:
        Ambient, never above the one that takes the junction to the sheet's own limit; absolute zero where no air of this earth is cool
        enough. [degC]
    """
    current_a = case.claimed_a(bank, point)
    limits = Limits(junction_c=point[bank.prefix + "junction_max"])
    ceiling = highest_ambient_c(case.network(bank, point), limits, current_a=current_a)

    def left(ambient_c: float) -> float:
        return slack(case_state(case, bank, {**point, "ambient": ambient_c}, current_a=current_a))

    # Why just below: at the ceiling itself the last digit decides whether anything is left.
    if ceiling <= COLDEST_AIR_C or left(ceiling - CLOSE_K) >= 0:
        return max(ceiling, ABSOLUTE_ZERO_C)
    return float(brentq(left, COLDEST_AIR_C, ceiling - CLOSE_K, xtol=1e-9)) if left(COLDEST_AIR_C) > 0 else ABSOLUTE_ZERO_C


def sign_within(case: Case, bank: BankCase, point: Point, slack: Callable[[CaseState], float]) -> float:
    """Zero or more exactly where the claimed current is not above ``largest_within_a``; cheaper than that, for seeking thresholds.

    Args:
        case: The board under one rule set.
        bank: The bank.
        point: A number for each quantity.
        slack: Rating less stress of one switch; it must fall with the current.

    Returns:
        The slack, or what is left to the sheet's own junction limit where that is less; only the sign has a meaning.
    """
    state = case_state(case, bank, point, current_a=case.claimed_a(bank, point))
    return min(slack(state), point[bank.prefix + "junction_max"] - state.junction_c) if state.exists else -1.0
