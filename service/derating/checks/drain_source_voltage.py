"""Can an open switch bear the voltage of the whole string?"""

from functools import partial

from service.derating.case import CHARGE, BankCase, Case, Corner
from service.derating.check import Check
from service.derating.fault_loop import inductance_h
from service.derating.figures import Ends, default
from service.derating.formulas.interruption import gentlest_fall_s
from service.derating.formulas.stacking import cold_rating_v, largest_stack, string_v
from service.derating.quantities import quantity
from service.derating.quantity import Point
from service.derating.spoken import spoken
from service.derating.values import both_ends
from service.derating.weighing import not_determined, weigh
from service.facts.finding import BothEnds, Figure, Finding

NAME = "drain_source_voltage"
COLD_BELOW_C = 25.0
# Two sheets: 55 V falls to 50 V at -55 degC, 30 V falls to 27 V.
LEAST_COLD_LOSS_PER_K, MOST_COLD_LOSS_PER_K = 5 / 55 / 80, 3 / 30 / 80
SEES_THE_STRING = (
    "gate driver's voltage rating",
    "monitor IC's voltage rating",
    "surge suppressor's voltage rating",
    "isolation of communication lines",
    "maker's word on stacking",
)


def run(case: Case) -> tuple[Finding, ...]:
    """Judge each bank."""
    own = _with_own(case)
    return tuple(_judge(own, bank) for bank in own.banks)


def packs_in_series(case: Case) -> float | None:
    """Most packs whose string both banks bear in the worst corner."""
    own = _with_own(case)
    if any(bank.prefix + "drain_voltage" not in own.quantities for bank in own.banks):
        return None
    point = own.point(Corner.WORST)
    pack_v = _string_v(own, point, packs=1)
    return min(
        largest_stack(allowed_v=_limit_v(own, bank, point), added_v=_demand_v(own, bank, point, packs=1) - pack_v, pack_v=pack_v)
        for bank in own.banks
    )


def _judge(case: Case, bank: BankCase) -> Finding:
    """One bank."""
    packs = case.board.claim.packs_in_series
    subject = f"{packs} x {case.board.cells.in_series} cells in series across an open switch of the {bank.name} bank"
    if bank.prefix + "drain_voltage" not in case.quantities:
        return not_determined(check=NAME, bank=bank.name, text=subject, missing=(f"{bank.name}: vds_max",))

    def margin(point: Point) -> float:
        return _limit_v(case, bank, point) / _demand_v(case, bank, point, packs=packs)

    worst = case.point(Corner.WORST)
    demand, limit = _demand_v(case, bank, worst, packs=packs), _limit_v(case, bank, worst)
    text = f"{subject}: {spoken(demand, 'V')} of {spoken(limit, 'V')}, {spoken(limit - demand, 'V')} left for the overshoot at turn-off"
    amperes, loop_h, fall_s = _largest_claimed_a(case, bank), inductance_h(case), partial(_gentlest_fall_s, case, bank)
    falling = fall_s(worst, loop_h.most)
    if falling is not None:
        text = f"{text}, enough for {spoken(amperes, 'A')} to fall in {spoken(falling, 's')} or more in a loop of {spoken(loop_h.most, 'H')}"
    return weigh(case, margin).finding(
        check=NAME,
        bank=bank.name,
        text=text if packs == 1 else f"{text}. This is about the switches alone: look up what else sees the string",
        demand=Figure(quantity="open_switch_v", value=demand, unit="V"),
        limit=Figure(quantity="allowed_v", value=limit, unit="V"),
        formula="packs x cells x charge voltage (+ charger, reversed) <= factor x VDS rating (less what cold takes)",
        values={
            "open_switch_v": both_ends(case, "V", lambda point: _demand_v(case, bank, point, packs=packs)),
            "allowed_v": both_ends(case, "V", lambda point: _limit_v(case, bank, point)),
            "gentlest_fall_s": BothEnds(favourable=fall_s(case.point(Corner.FAVOURABLE), loop_h.least), worst=falling, unit="s"),
        },
        missing=SEES_THE_STRING if packs > 1 else (),
    )


def _largest_claimed_a(case: Case, bank: BankCase) -> float:
    """The largest current that a bank may have to break in service: a surge passes only what carries the discharge. [A]."""
    surge = case.board.claim.surge_a
    return bank.claimed_a.most if surge is None or bank not in case.conducting(case.discharge) else max(surge.most, bank.claimed_a.most)


def _gentlest_fall_s(case: Case, bank: BankCase, point: Point, loop_h: float) -> float | None:
    """Shortest fall of the largest claimed current whose overshoot stays within what is left; None where nothing is. [s]."""
    supply_v, limit_v = _demand_v(case, bank, point, packs=case.board.claim.packs_in_series), _limit_v(case, bank, point)
    if limit_v <= supply_v:
        return None
    return gentlest_fall_s(inductance_h=loop_h, current_a=_largest_claimed_a(case, bank), breakdown_v=limit_v, supply_v=supply_v)


def _string_v(case: Case, point: Point, *, packs: int) -> float:
    """Voltage of the string at charge."""
    return string_v(packs=packs, cells=case.board.cells.in_series, cell_v=point["charge_voltage"])


def _demand_v(case: Case, bank: BankCase, point: Point, *, packs: int) -> float:
    """What an open switch of a bank may see."""
    string, charger = _string_v(case, point, packs=packs), case.board.charger_v
    if bank.name != CHARGE or charger is None:
        return string
    # Why two cases: the right way round the charger stands against the string; reversed it adds to it.
    return string + charger.most if point["charger_reversed"] > 0 else max(string, charger.most)


def _limit_v(case: Case, bank: BankCase, point: Point) -> float:
    """What a switch of a bank may bear."""
    rating = point[bank.prefix + "drain_voltage"]
    coldest_c = case.board.cooling.ambient_c.least
    if coldest_c < COLD_BELOW_C:
        rating = cold_rating_v(rating_v=rating, temperature_c=coldest_c, loss_per_k=point["cold_rating_loss"])
    return case.rules.drain_voltage_factor * rating


def _with_own(case: Case) -> Case:
    """The case with the two quantities that only this check knows."""
    low, high = LEAST_COLD_LOSS_PER_K, MOST_COLD_LOSS_PER_K
    loss = default(high, "1/K", "two sheets that print the breakdown voltage in the cold", low=low, high=high)
    reversal = default(1.0, "", "a charger connected the wrong way round cannot be ruled out", low=0.0, high=1.0)
    return case.with_quantities(
        (
            quantity("cold_rating_loss", Ends(favourable=low, nominal=(low + high) / 2, worst=high, sourced=loss)),
            quantity("charger_reversed", Ends(favourable=0.0, nominal=0.0, worst=1.0, sourced=reversal)),
        ),
    )


CHECK = Check(
    name=NAME,
    question="Can an open switch bear the voltage of the whole string of packs at charge?",
    method="Packs times cells times charge voltage, for the charge bank with the charger's largest voltage, against the rated drain-source "
    "voltage times the rule set's factor, less what cold takes from it; beside it how slowly the largest claimed current must fall for the "
    "loop's inductance to keep within what is left.",
    source="own, circuit argument: an open switch sees the whole string; an2112 section 3.4 on margin, an936 section 4 on overshoot; "
    "psmn022-30pl and buk7y12-55b on cold",
    needs=("claim.packs_in_series", "cells.in_series", "cells.charge_v", "switch.vds_max"),
    run=run,
    inverses={"packs_in_series": packs_in_series},
)
