"""What is left of the headline watts at the real case temperature?"""

from service.derating.both_banks import each_bank
from service.derating.case import BankCase, Case, Corner
from service.derating.case_ratings import CaseState, case_state, highest_within_c, largest_within_a, power_left_w, sign_within
from service.derating.check import Check
from service.derating.figures import rated_power_at_case
from service.derating.formulas.rating import power_residual
from service.derating.holding import least_switches, over_banks, over_discharge_path
from service.derating.quantity import Point
from service.derating.spoken import spoken
from service.derating.stated import stated
from service.derating.values import both_ends
from service.derating.weighing import not_determined, weigh
from service.facts.finding import BothEnds, Figure, Finding, Input

NAME = "power_rating"
# Thirteen of fifteen sheets agree with themselves within 3 %.
RESIDUAL_WORTH_SAYING = 0.04


def run(case: Case) -> tuple[Finding, ...]:
    """Judge each bank."""
    return each_bank(case, _judge)


def _judge(case: Case, bank: BankCase) -> Finding:
    """One bank."""
    claimed = bank.claimed_a.value
    subject = f"heat of one switch of the {bank.name} bank at {claimed:g} A"
    missing = _missing(case, bank)
    if missing:
        return not_determined(check=NAME, bank=bank.name, text=subject, missing=missing)
    state = _state(case, bank, case.point(Corner.WORST))
    allowed_w = max(_allowed_w(case, bank, case.point(Corner.WORST), state), 0.0)
    weighed = weigh(case, lambda point: _margin(case, bank, point), slack=lambda point: _slack_w(case, bank, point), at=f"at {claimed:g} A")
    rated = rated_power_at_case(bank.switch)
    return weighed.finding(
        check=NAME,
        bank=bank.name,
        text=f"{subject}: {_said(bank, case.point(Corner.WORST), state, allowed_w)}",
        demand=Figure(quantity="switch_loss_w", value=state.loss_w, unit="W") if state.exists else None,
        limit=Figure(quantity="allowed_w", value=allowed_w, unit="W"),
        formula="(I/n)^2 x RDS(on) x k(Tj) <= factor x PD x (Tjmax - Tc)/(Tjmax - Tc,rated), Tc = Tj - RthJC x P",
        values=_values(case, bank),
        inputs=(*stated(bank), *((Input(name=bank.prefix + "rated_power", sourced=rated.sourced),) if rated else ())),
    )


def _missing(case: Case, bank: BankCase) -> tuple[str, ...]:
    """Data without which no bound exists."""
    lacking = case.lacks_conduction(bank)
    own = f"{bank.name}: rth_jc, or pd at a case temperature"
    return lacking if bank.prefix + "junction_case" in case.quantities else (*(item for item in lacking if "rth_jc" not in item), own)


def _margin(case: Case, bank: BankCase, point: Point) -> float:
    """Largest current over the claimed one."""
    return _largest_a(case, bank, point) / case.claimed_a(bank, point)


def _largest_a(case: Case, bank: BankCase, point: Point) -> float:
    """Largest current whose heat stays within what is left of the rating."""
    return largest_within_a(case, bank, point, lambda state: _allowed_w(case, bank, point, state) - state.loss_w)


def _ambient_c(case: Case, bank: BankCase, point: Point) -> float:
    """Highest ambient at which the heat of the claimed current stays within what is left of the rating."""
    return highest_within_c(case, bank, point, lambda state: _allowed_w(case, bank, point, state) - state.loss_w)


def _slack_w(case: Case, bank: BankCase, point: Point) -> float:
    """What is left of the allowed power at the claimed current."""
    return sign_within(case, bank, point, lambda state: _allowed_w(case, bank, point, state) - state.loss_w)


def _allowed_w(case: Case, bank: BankCase, point: Point, state: CaseState) -> float:
    """The rule set's share of what is left of the rating."""
    return case.rules.power_factor * power_left_w(bank, point, case_c=state.case_c) if state.exists else 0.0


def _state(case: Case, bank: BankCase, point: Point) -> CaseState:
    """One switch at the claimed current."""
    return case_state(case, bank, point, current_a=case.claimed_a(bank, point))


def _said(bank: BankCase, point: Point, state: CaseState, allowed_w: float) -> str:
    """The worst end in words, with what the headline means."""
    if not state.exists:
        return "at the worst the temperature never settles"
    rated = rated_power_at_case(bank.switch)
    left = f"of {allowed_w:.4g} W that are left" if allowed_w > 0 else "while nothing is left"
    said = f"{state.loss_w:.4g} W {left} at a case of {spoken(state.case_c, 'degC')}"
    if rated is None:
        return said
    headline = f"the sheet's {rated.sourced.value:g} W hold only while the case is kept at {rated.cond.tc:g} \N{DEGREE SIGN}C"
    residual = _residual(bank, point)
    doubt = f"; its watts and its thermal resistance contradict each other by {residual:+.0%}" if abs(residual) > RESIDUAL_WORTH_SAYING else ""
    return f"{said}; {headline}{doubt}"


def _residual(bank: BankCase, point: Point) -> float:
    """How far the sheet contradicts itself."""
    rated = rated_power_at_case(bank.switch)
    if rated is None:
        return 0.0
    kpw, junction_max_c = point[bank.prefix + "junction_case"], point[bank.prefix + "junction_max"]
    return power_residual(rated_power_w=rated.sourced.value, rated_case_c=rated.cond.tc or 0.0, junction_case_kpw=kpw, junction_max_c=junction_max_c)


def _values(case: Case, bank: BankCase) -> dict[str, BothEnds]:
    """Figures of both ends."""
    return {
        "switch_loss_w": both_ends(case, "W", lambda point: _state(case, bank, point).loss_w),
        "case_degc": both_ends(case, "degC", lambda point: _state(case, bank, point).case_c),
        "allowed_w": both_ends(case, "W", lambda point: max(_allowed_w(case, bank, point, _state(case, bank, point)), 0.0)),
        "headline_w": both_ends(case, "W", lambda point: power_left_w(bank, point, case_c=25.0)),
        "power_residual": both_ends(case, "1", lambda point: _residual(bank, point)),
        "largest_a": both_ends(case, "A", lambda point: _largest_a(case, bank, point)),
    }


CHECK = Check(
    name=NAME,
    question="Does the heat of each switch stay within what is left of its rated watts at its real case temperature?",
    method="The rated power is taken down in a straight line from its case temperature to zero at the highest junction temperature, times the "
    "rule set's factor, and compared with the heat at the claimed current.",
    source="an11158 section 2.4 and p.8-9; eee-inst-002 section S1, Table 4",
    needs=("claim.continuous_a", "switch.pd or switch.rth_jc", "switch.tj_max", "switch.rds_on", "cooling"),
    run=run,
    margin=lambda case, bank, point: None if _missing(case, bank) else _margin(case, bank, point),
    inverses={
        "continuous_a": lambda case: None if _any_missing(case) else over_discharge_path(case, _largest_a),
        "ambient_degc": lambda case: None if _any_missing(case) else over_banks(case, _ambient_c),
        "switches": lambda case: None if _any_missing(case) else least_switches(case, _margin),
    },
)


def _any_missing(case: Case) -> bool:
    """Whether a bank's rating has no bound."""
    return any(_missing(case, bank) for bank in case.banks)
