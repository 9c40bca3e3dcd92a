"""What would the part have to be? The least drain-source rating and the largest on-resistance that still do, for a board without a part."""

from dataclasses import dataclass, replace
from math import exp, log

from scipy.optimize import brentq

from service.derating.case import Case, Corner
from service.derating.checks import continuous_current, current_sharing
from service.derating.formulas.stacking import needed_rating_v, string_v
from service.derating.open_case import open_case
from service.derating.spoken import rounded_down, rounded_up
from service.derating.surge_unknowns import with_surge_quantities
from service.derating.surging import BankSurge, surged_banks
from service.facts.board import Bank, Board
from service.facts.reading import Conditions, Limit
from service.facts.sourced import Known, Sourced
from service.facts.switch import RatedValue, Switch

# The lower common junction limit and a thermal resistance that nearly every part with a tab keeps; both ask for the better part.
JUNCTION_MAX_C, JUNCTION_CASE_KPW, GATE_V = 150.0, 1.5, 10.0
LEAST_OHM, MOST_OHM = 1e-6, 10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What to look for in a datasheet.

    Attributes:
        drain_voltage_v: Least drain-source rating under the rule set, rounded up. [V]
        on_resistance_ohm: Largest maximum on-resistance at 25 degC and 10 V, rounded down; None where no part is good enough. [ohm]
        junction_max_c: Junction limit that was supposed. [degC]
    """

    drain_voltage_v: float
    on_resistance_ohm: float | None
    junction_max_c: float = JUNCTION_MAX_C


def wanted(board: Board, *, rule_set: str | None = None) -> Wanted:
    """Say what a part would have to be; the parts that the board names are left aside.

    Args:
        board: As stated.
        rule_set: maker, trade-80 or eee-inst-002; the board's own where none is named.

    Returns:
        The least voltage rating and the largest on-resistance at which the worst corner still holds at rest, and through the claimed
        surge where it is known how much heat the board holds.
    """
    volts = _least_v(open_case(board, rules=rule_set))

    def left(log_ohm: float) -> float:
        case = open_case(_with_part(board, volts=volts, ohm=exp(log_ohm)), rules=rule_set)
        return min(_margins(case)) - 1

    if left(log(LEAST_OHM)) < 0:
        return Wanted(drain_voltage_v=rounded_up(volts), on_resistance_ohm=None)
    if left(log(MOST_OHM)) >= 0:
        return Wanted(drain_voltage_v=rounded_up(volts), on_resistance_ohm=MOST_OHM)
    most = exp(brentq(left, log(LEAST_OHM), log(MOST_OHM), xtol=1e-7))
    return Wanted(drain_voltage_v=rounded_up(volts), on_resistance_ohm=rounded_down(most))


def _least_v(case: Case) -> float:
    """The least rating for the string at charge, with the charger on top where one is known."""
    board = case.board
    string = string_v(packs=board.claim.packs_in_series, cells=board.cells.in_series, cell_v=board.cells.charge_v.most)
    charger = 0.0 if board.charger_v is None else board.charger_v.most
    return needed_rating_v(open_v=string + charger, factor=case.rules.drain_voltage_factor)


def _with_part(board: Board, *, volts: float, ohm: float) -> Board:
    """The board with a trial part in both banks."""
    figures = (
        ("vds_max", volts, "V", Conditions()),
        ("rds_on", ohm, "ohm", Conditions(vgs=GATE_V)),
        ("tj_max", JUNCTION_MAX_C, "degC", Conditions()),
        ("rth_jc", JUNCTION_CASE_KPW, "K/W", Conditions()),
    )
    values = tuple(
        RatedValue(key=key, limit=Limit.MAX, sourced=Sourced(value=value, unit=unit, known=Known.ASSUMED, name="trial part"), cond=cond)
        for key, value, unit, cond in figures
    )
    switch = Switch(marking="wanted", values=values, typed=True)
    return replace(
        board,
        discharge_bank=Bank(switch=switch, switches=board.discharge_bank.switches),
        charge_bank=Bank(switch=switch, switches=board.charge_bank.switches),
        gate_v=None,
    )


def _margins(case: Case) -> list[float]:
    """Worst margins of heat, sharing and surge of every bank."""
    checks = (continuous_current.CHECK, current_sharing.CHECK)
    point = case.point(Corner.WORST)
    found = (check.margin(case, bank, point) for check in checks if check.margin for bank in case.banks)
    return [*(margin for margin in found if margin is not None), *_surge_margins(case)]


def _surge_margins(case: Case) -> list[float]:
    """Worst margins of the claimed surge; none where none is claimed, or where only the bound of a surge without end would be known."""
    claim = case.board.claim
    if claim.surge_a is None or claim.surge_s is None or case.board.cooling.board_heat_jpk is None:
        return []
    seconds, own = claim.surge_s.most, with_surge_quantities(case, seconds=claim.surge_s.most)
    point = own.point(Corner.WORST)
    return [BankSurge(own, bank, point, seconds=seconds).margin(claim.surge_a.most) for bank in surged_banks(own)]
