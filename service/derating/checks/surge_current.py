"""Does the board bear the claimed surge for the claimed time?"""

from collections.abc import Mapping
from functools import partial
from math import isfinite

from service.derating.both_banks import each_bank
from service.derating.case import BankCase, Case, Corner
from service.derating.check import Check
from service.derating.figures import least_of
from service.derating.quantity import Point
from service.derating.spoken import rounded_up, spoken
from service.derating.stated import prolonged, stated
from service.derating.surge_inverse import highest_surge_ambient_c, largest_surge_s, least_surge_switches
from service.derating.surge_unknowns import with_surge_quantities
from service.derating.surging import BankSurge, SurgeEnd, surged_banks
from service.derating.thresholds import Search
from service.derating.weighing import Weighing, not_determined, weigh
from service.facts.finding import BothEnds, Figure, Finding, Input, Outcome
from service.facts.sourced import Sourced

NAME = "surge_current"


def run(case: Case) -> tuple[Finding, ...]:
    """Judge each bank that the surge passes; nothing where no surge is claimed."""
    claim = case.board.claim
    if claim.surge_a is None or claim.surge_s is None:
        return ()
    own = with_surge_quantities(case, seconds=claim.surge_s.most)
    judge = partial(_judge, surge=claim.surge_a, lasting=claim.surge_s)
    return each_bank(own, judge) if len(surged_banks(own)) > 1 else (judge(own, own.discharge),)


def _judge(case: Case, bank: BankCase, *, surge: Sourced, lasting: Sourced) -> Finding:
    """One bank."""
    surge_a, seconds = surge.most, lasting.most
    subject = f"{spoken(surge_a, 'A')} for {spoken(seconds, 's')} through the {bank.name} bank that runs at {spoken(bank.claimed_a.most, 'A')}"
    lacking = case.lacks_conduction(bank)
    if lacking:
        return not_determined(check=NAME, bank=bank.name, text=subject, missing=lacking)

    def at(point: Point) -> BankSurge:
        return BankSurge(case, bank, point, seconds=seconds)

    weighed = weigh(
        case,
        lambda point: _ratio(at(point), surge_a),
        slack=lambda point: at(point).margin(surge_a) - 1,
        at=f"at {spoken(surge_a, 'A')} for {spoken(seconds, 's')}",
    )
    ends = {corner: at(case.point(corner)) for corner in (Corner.FAVOURABLE, Corner.WORST)}
    reached = {corner: course.end(surge_a) for corner, course in ends.items()}
    largest_a = weighed.margin.worst * surge_a
    text = f"{subject}: {_reached(reached[Corner.WORST], ends[Corner.WORST].limit_c)} in the worst case, which bears {spoken(largest_a, 'A')}"
    return weighed.finding(
        check=NAME,
        bank=bank.name,
        text=text + _with_heat(case, bank, weighed, surge_a, seconds) + _outside(case, bank, reached[Corner.WORST]),
        demand=Figure(quantity="surge_current_a", value=surge_a, unit="A"),
        limit=Figure(quantity="largest_surge_a", value=largest_a, unit="A"),
        formula="Tj(t) = board(t) + P x (case to board + Zth(t)), by superposition from the settled running state <= junction limit",
        inputs=(Input(name="surge_current", sourced=surge), Input(name="surge_time", sourced=lasting), *stated(bank)),
        values={
            "junction_degc": _both("degC", {corner: end.junction_c for corner, end in reached.items()}),
            "board_degc": _both("degC", {corner: end.board_c for corner, end in reached.items()}),
            "hottest_switch_a": _both("A", {corner: end.current_a for corner, end in reached.items()}),
            "junction_limit_degc": _both("degC", {corner: course.limit_c for corner, course in ends.items()}),
            "largest_surge_a": BothEnds(favourable=weighed.margin.favourable * surge_a, worst=largest_a, unit="A"),
        },
    )


def _outside(case: Case, bank: BankCase, end: SurgeEnd) -> str:
    """What to think of heat that was computed for more current than the sheet allows in a pulse, or beyond the sheet's curve."""
    rated = least_of(bank.switch, "id_pulse")
    beyond = rated is not None and end.current_a > rated.value
    pulse = "; its hottest switch sees more than the sheet's pulsed current, so this lies outside the sheet" if beyond else ""
    return pulse + prolonged(case, bank, end.junction_c)


def _both(unit: str, ends: Mapping[Corner, float]) -> BothEnds:
    """A figure at both ends; an infinite one (it runs away) is None."""
    favourable, worst = (ends[corner] if isfinite(ends[corner]) else None for corner in (Corner.FAVOURABLE, Corner.WORST))
    return BothEnds(favourable=favourable, worst=worst, unit=unit)


def _ratio(course: BankSurge, surge_a: float) -> float:
    """Largest over claimed current, on the side of 1 that the claimed current itself is on: the search for the largest ends a hair off."""
    found = course.largest_a() / surge_a
    return max(found, 1.0) if course.margin(surge_a) >= 1 else min(found, 1 - 1e-6)


def _with_heat(case: Case, bank: BankCase, weighed: Weighing, surge_a: float, seconds: float) -> str:
    """Where the worst running state leaves no room for any heat capacity: what would do with everything else at its nominal figure."""
    heat = case.quantities["board_heat_capacity"]
    if not heat.is_open or weighed.outcome is not Outcome.HOLDS_IF or any(item.quantity == heat.key for item in weighed.conditions):
        return ""
    search = Search(case=case, left=lambda point: BankSurge(case, bank, point, seconds=seconds).margin(surge_a) - 1)
    value = search.threshold(heat, Corner.NOMINAL)
    return "" if value is None else f"; with all else at its nominal figure a board that holds {spoken(rounded_up(value), 'J/K')} would do"


def _reached(end: SurgeEnd, limit_c: float) -> str:
    """The junction temperature in words."""
    if not isfinite(end.junction_c):
        return "runs away"
    return f"junction {spoken(end.junction_c, 'degC')} of {spoken(limit_c, 'degC')}"


CHECK = Check(
    name=NAME,
    question="Do the switches bear the claimed surge current for the claimed time, starting from their settled running temperature?",
    method="Superposition of heat steps on transient impedance and board, with the on-resistance following the junction; without a curve "
    "RthJC bounds the impedance, without a heat capacity the board counts as settled at once.",
    source="an2015-10, superposition of steps; an11158 p.24: impedance to the case settles within a tenth of a second",
    needs=("claim.surge_a", "claim.surge_s", "switch.rds_on", "switch.rth_jc", "switch.zth", "cooling.board_heat_jpk"),
    run=run,
    inverses={"surge_s": largest_surge_s, "ambient_degc": highest_surge_ambient_c, "switches": least_surge_switches},
)
