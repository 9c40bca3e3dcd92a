"""Does any switch see more current than its sheet allows in a pulse?"""

from math import ceil

from service.derating.both_banks import each_bank
from service.derating.case import BankCase, Case, Corner
from service.derating.check import Check
from service.derating.conduction_figures import WIDEST_SPREAD
from service.derating.figures import Ends, default, least_of
from service.derating.formulas.sharing import low_switch_share, switches_for_share
from service.derating.quantities import quantity
from service.derating.quantity import Point
from service.derating.spoken import spoken
from service.derating.stated import stated
from service.derating.values import both_ends
from service.derating.weighing import not_determined, weigh
from service.facts.finding import Figure, Finding, Input
from service.facts.sourced import Sourced

NAME = "pulsed_current"


def run(case: Case) -> tuple[Finding, ...]:
    """Judge each bank at the largest current that is claimed through it, short or for hours."""
    own = _with_spread(case)
    return each_bank(own, _judge)


def continuous_a(case: Case) -> float | None:
    """Largest discharge current that no lowest switch passes its pulsed rating with, in the worst corner; None where none is known. [A]."""
    own = _with_spread(case)
    point = own.point(Corner.WORST)
    found = []
    for bank in own.conducting(own.discharge):
        rated = least_of(bank.switch, "id_pulse")
        if rated is not None:
            share = low_switch_share(spread=point[bank.prefix + "current_spread"], switches=bank.switches)
            found.append(own.rules.current_factor * rated.value / share)
    return min(found, default=None)


def switches(case: Case) -> float | None:
    """Least number of switches, the same in each bank, whose lowest one stays within its pulsed rating in the worst corner. [1]."""
    own = _with_spread(case)
    point = own.point(Corner.WORST)
    found = []
    for bank in own.banks:
        rated = least_of(bank.switch, "id_pulse")
        if rated is not None:
            allowed_a, spread = own.rules.current_factor * rated.value, point[bank.prefix + "current_spread"]
            found.append(switches_for_share(share=allowed_a / _claimed(own, bank).most, spread=spread))
    # Why the small term: an exact quotient may come out a hair above its whole number, and equality keeps the limit.
    return float(max(ceil(max(found) - 1e-9), 1)) if found else None


def _judge(case: Case, bank: BankCase) -> Finding:
    """One bank."""
    claim = _claimed(case, bank)
    subject = f"{spoken(claim.most, 'A')} through {bank.switches} switches of the {bank.name} bank"
    rated = least_of(bank.switch, "id_pulse")
    if rated is None:
        return not_determined(check=NAME, bank=bank.name, text=subject, missing=(f"{bank.name}: id_pulse",))
    allowed_a = case.rules.current_factor * rated.value

    def switch_a(point: Point) -> float:
        return claim.most * low_switch_share(spread=point[bank.prefix + "current_spread"], switches=bank.switches)

    worst_a = switch_a(case.point(Corner.WORST))
    said = "" if worst_a <= allowed_a else "; above it the sheet promises nothing, and what other checks say of it lies outside the sheet"
    return weigh(case, lambda point: allowed_a / switch_a(point), at=f"at {spoken(claim.most, 'A')}").finding(
        check=NAME,
        bank=bank.name,
        text=f"{subject}: {spoken(worst_a, 'A')} in the lowest switch of {spoken(allowed_a, 'A')}{said}",
        demand=Figure(quantity="switch_pulse_a", value=worst_a, unit="A"),
        limit=Figure(quantity="allowed_pulse_a", value=allowed_a, unit="A"),
        formula="I x rho / (rho + n - 1) <= factor x IDM",
        values={"switch_pulse_a": both_ends(case, "A", switch_a)},
        inputs=(Input(name=bank.prefix + "pulsed_drain_current", sourced=rated), *stated(bank)),
    )


def _claimed(case: Case, bank: BankCase) -> Sourced:
    """The largest current claimed through a bank: a surge passes only what carries the discharge."""
    surge = case.board.claim.surge_a
    if surge is None or bank not in case.conducting(case.discharge):
        return bank.claimed_a
    return surge if surge.most > bank.claimed_a.most else bank.claimed_a


def _with_spread(case: Case) -> Case:
    """The case with a spread of on-resistances also for a part whose on-resistance nobody knows at the board's gate voltage."""
    name = "widest spread that a sheet prints"
    widest = default(WIDEST_SPREAD, "1", name, low=1.0, high=WIDEST_SPREAD)
    ends = Ends(favourable=1.0, nominal=(1.0 + WIDEST_SPREAD) / 2, worst=WIDEST_SPREAD, sourced=widest)
    missing = {bank.prefix for bank in case.banks if bank.prefix + "current_spread" not in case.quantities}
    return case.with_quantities(quantity("current_spread", ends, prefix=prefix) for prefix in sorted(missing))


CHECK = Check(
    name=NAME,
    question="Does any switch see more current than its sheet allows in a pulse?",
    method="The largest claimed current as the lowest switch of the bank takes it, against the pulsed drain current of the sheet times the "
    "rule set's factor.",
    source="eee-inst-002 section S1, Table 4 for the factor; own, conductances in parallel for the lowest switch",
    needs=("claim.surge_a", "claim.continuous_a", "bank.switches", "switch.id_pulse"),
    run=run,
    inverses={"continuous_a": continuous_a, "switches": switches},
)
