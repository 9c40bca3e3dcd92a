"""Does each switch stay within the smaller of its silicon and its package current?"""

from dataclasses import replace

from service.derating.both_banks import each_bank
from service.derating.case import BankCase, Case, Corner
from service.derating.case_ratings import CaseState, case_state, highest_within_c, largest_within_a, sign_within, silicon_left_a
from service.derating.check import Check
from service.derating.figures import silicon_current
from service.derating.holding import least_switches, over_banks, over_discharge_path
from service.derating.quantity import Point
from service.derating.spoken import spoken
from service.derating.stated import stated
from service.derating.values import both_ends
from service.derating.weighing import Weighing, not_determined, weigh
from service.facts.finding import Assumption, BothEnds, Figure, Finding, Input

NAME = "package_current"
PACKAGE, SILICON = "package", "silicon"


def run(case: Case) -> tuple[Finding, ...]:
    """Judge each bank."""
    return each_bank(case, _judge)


def _judge(case: Case, bank: BankCase) -> Finding:
    """One bank."""
    claimed = bank.claimed_a.value
    subject = f"current of one switch of the {bank.name} bank at {claimed:g} A"
    missing = _missing(case, bank)
    if missing:
        return not_determined(check=NAME, bank=bank.name, text=subject, missing=missing)
    worst = case.point(Corner.WORST)
    limit_a, limited_by = _allowed(case, bank, worst, _state(case, bank, worst))
    weighed = weigh(case, lambda point: _margin(case, bank, point), slack=lambda point: _slack_a(case, bank, point), at=f"at {claimed:g} A")
    rated = silicon_current(bank.switch)
    each_a = claimed / bank.switches
    return _with_unknown_package(case, bank, weighed, each_a).finding(
        check=NAME,
        bank=bank.name,
        text=f"{subject}: {_said(each_a, limit_a, limited_by)}{_headline(bank)}",
        demand=Figure(quantity="switch_current_a", value=each_a, unit="A"),
        limit=Figure(quantity=f"{limited_by}_current_a", value=limit_a, unit="A"),
        formula="I/n <= factor x min(ID x sqrt((Tjmax - Tc)/(Tjmax - Tc,rated)), package current)",
        values=_values(case, bank),
        inputs=(*stated(bank), *((Input(name=bank.prefix + "rated_current", sourced=rated.sourced),) if rated else ())),
    )


def _missing(case: Case, bank: BankCase) -> tuple[str, ...]:
    """Data without which no bound exists."""
    if _knows_silicon(case, bank) or bank.prefix + "package_current" in case.quantities:
        return case.lacks_conduction(bank)
    return (f"{bank.name}: id_cont at a case temperature, or rth_jc",)


def _knows_silicon(case: Case, bank: BankCase) -> bool:
    """Whether the silicon's current has a bound: printed, or from power and on-resistance."""
    return silicon_current(bank.switch) is not None or bank.prefix + "junction_case" in case.quantities


def _margin(case: Case, bank: BankCase, point: Point) -> float:
    """Largest current over the claimed one."""
    return _largest_a(case, bank, point) / case.claimed_a(bank, point)


def _largest_a(case: Case, bank: BankCase, point: Point) -> float:
    """Largest current of the bank that both silicon and package allow each switch."""
    return largest_within_a(case, bank, point, lambda state: _allowed(case, bank, point, state)[0] - state.current_a)


def _ambient_c(case: Case, bank: BankCase, point: Point) -> float:
    """Highest ambient at which both silicon and package still allow the claimed current."""
    return highest_within_c(case, bank, point, lambda state: _allowed(case, bank, point, state)[0] - state.current_a)


def _slack_a(case: Case, bank: BankCase, point: Point) -> float:
    """What is left of the allowed current at the claimed one."""
    return sign_within(case, bank, point, lambda state: _allowed(case, bank, point, state)[0] - state.current_a)


def _allowed(case: Case, bank: BankCase, point: Point, state: CaseState) -> tuple[float, str]:
    """The rule set's share of the smaller of silicon and package current, and which of them it is."""
    package_a = point.get(bank.prefix + "package_current", float("inf"))
    silicon_a = silicon_left_a(case, bank, point, case_c=state.case_c) if _knows_silicon(case, bank) else float("inf")
    smaller = min((silicon_a, SILICON), (package_a, PACKAGE))
    return case.rules.current_factor * smaller[0], smaller[1]


def _state(case: Case, bank: BankCase, point: Point) -> CaseState:
    """One switch at the claimed current."""
    return case_state(case, bank, point, current_a=case.claimed_a(bank, point))


def _said(each_a: float, limit_a: float, limited_by: str) -> str:
    """The worst end in words."""
    if limit_a <= 0:
        return f"{each_a:.4g} A, while at the worst the junction is past its limit and nothing is left of the rating"
    return f"{each_a:.4g} A of {limit_a:.4g} A, which the {limited_by} allows at the worst"


def _headline(bank: BankCase) -> str:
    """What the headline ampere means."""
    rated = silicon_current(bank.switch)
    if rated is None:
        return ""
    return f"; the sheet's {rated.sourced.value:g} A hold only while the case is kept at {spoken(rated.cond.tc or 0.0, 'degC')}"


def _with_unknown_package(case: Case, bank: BankCase, weighed: Weighing, each_a: float) -> Weighing:
    """The weighing with a note where nothing is known of the package: the silicon's current was taken for both."""
    if bank.prefix + "package_current" in case.quantities:
        return weighed
    needed = each_a / case.rules.current_factor
    silicon_a = silicon_left_a(case, bank, case.point(Corner.WORST), case_c=25.0)
    unknown = Assumption(
        name=bank.prefix + "package_current",
        used=silicon_a,
        low=min(needed, silicon_a),
        high=silicon_a,
        unit="A",
        flips_at=needed,
        basis="package limit unknown: none is printed and its kind has no common one; the silicon's current is taken",
    )
    return replace(weighed, assumptions=(*weighed.assumptions, unknown))


def _values(case: Case, bank: BankCase) -> dict[str, BothEnds]:
    """Figures of both ends."""

    def package_a(point: Point) -> float | None:
        return point.get(bank.prefix + "package_current")

    def silicon_a(point: Point) -> float | None:
        return silicon_left_a(case, bank, point, case_c=_state(case, bank, point).case_c) if _knows_silicon(case, bank) else None

    return {
        "switch_current_a": both_ends(case, "A", lambda point: case.claimed_a(bank, point) / bank.switches),
        "silicon_current_a": both_ends(case, "A", silicon_a),
        "package_current_a": both_ends(case, "A", package_a),
        "case_degc": both_ends(case, "degC", lambda point: _state(case, bank, point).case_c),
        "largest_a": both_ends(case, "A", lambda point: _largest_a(case, bank, point)),
    }


CHECK = Check(
    name=NAME,
    question="Does each switch stay within the smaller of its silicon's and its package's current?",
    method="The rated silicon current is taken down to the real case temperature and compared with the package's own limit; the smaller one, "
    "times the rule set's factor, is set against the current of one switch.",
    source="an11158 eq. 5 and Table 3; mil-prf-19500-685 note 3: the package caps the silicon; irf1404, irf3205 and irlr2905 footnotes",
    needs=("claim.continuous_a", "bank.switches", "switch.id_cont", "switch.package"),
    run=run,
    margin=lambda case, bank, point: None if _missing(case, bank) else _margin(case, bank, point),
    inverses={
        "continuous_a": lambda case: None if _any_missing(case) else over_discharge_path(case, _largest_a),
        "ambient_degc": lambda case: None if _any_missing(case) else over_banks(case, _ambient_c),
        "switches": lambda case: None if _any_missing(case) else least_switches(case, _margin),
    },
)


def _any_missing(case: Case) -> bool:
    """Whether a bank's current has no bound."""
    return any(_missing(case, bank) for bank in case.banks)
