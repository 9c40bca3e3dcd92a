"""What happens while one bank is blocked and the current takes its body diodes?"""

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from service.derating.case import CHARGE, BankCase, Case, Corner
from service.derating.check import Check
from service.derating.diode_conduction import BlockedBank
from service.derating.figures import Ends, default, larger_is_worse
from service.derating.formulas.body_diode import bank_diode_loss_w, part_channel_loss_w, part_diode_loss_w
from service.derating.quantities import quantity
from service.derating.quantity import Point, Quantity, Wording
from service.derating.spoken import spoken
from service.derating.thresholds import condition
from service.derating.values import both_ends
from service.derating.weighing import Weighing, not_determined, weigh
from service.derating.wordings import WORDINGS
from service.facts.board import Port
from service.facts.finding import BothEnds, Condition, Figure, Finding, Input, Outcome
from service.facts.reading import Limit
from service.facts.sourced import Sourced

NAME = "body_diode"
LARGEST_PRINTED_V = 1.5


def run(case: Case) -> tuple[Finding, ...]:
    """Judge the charge bank blocked while discharging and the discharge bank blocked while charging."""
    if case.board.port is Port.SEPARATE:
        return (_does_not_arise(),)
    own = _with_diodes(case)
    return tuple(_judge(own, bank) for bank in own.banks)


def _judge(case: Case, bank: BankCase) -> Finding:
    """One bank blocked."""
    current, current_a = _current(case, bank), partial(_current_a, case, bank)
    subject = f"{spoken(current.most, 'A')} through the body diodes of {bank.switches} switches while the {bank.name} bank is blocked"
    lacking = _lacking(case, bank)
    if lacking:
        return not_determined(check=NAME, bank=bank.name, text=subject, missing=lacking, scenario=True)

    def at(point: Point) -> BlockedBank:
        return BlockedBank(case, bank, point)

    weighed = weigh(
        case,
        lambda point: at(point).largest_a() / current_a(point),
        slack=lambda point: at(point).slack_k(current_a(point)),
        at=f"at {spoken(current.most, 'A')} through its diodes",
    )
    safe_a = weighed.margin.worst * current.most
    finding = _with_reclosing(case, weighed).finding(
        check=NAME,
        bank=bank.name,
        text=f"{subject}: {_said(case, bank, current.most, safe_a)}",
        demand=Figure(quantity="diode_current_a", value=current.most, unit="A"),
        limit=Figure(quantity="safe_diode_current_a", value=safe_a, unit="A"),
        formula="Tj = T(board or air) + Rth x (I/n) x VSD; with the bank re-closed (I/n)^2 x RDS(on) x k(Tj) instead",
        values=_values(case, bank, current_a),
        inputs=() if current.is_band else (Input(name="blocked_current", sourced=current),),
        scenario=True,
    )
    # Why no margin with re-closing: then the diodes carry the current for a moment only, which no ratio describes.
    return finding if finding.outcome is weighed.outcome and case.board.recloses_on_current is not True else replace(finding, margin=None)


def _with_reclosing(case: Case, weighed: Weighing) -> Weighing:
    """The weighing of the diodes, or what re-closing makes of it."""
    recloses = case.board.recloses_on_current
    if recloses is True:
        return replace(weighed, outcome=Outcome.HOLDS, conditions=())
    if recloses is False or weighed.outcome is Outcome.HOLDS:
        return weighed
    first: Condition = condition(case, _reclosing(), 1.0, "")
    return replace(weighed, outcome=Outcome.HOLDS_IF, conditions=(first, *weighed.conditions))


def _said(case: Case, bank: BankCase, current_a: float, safe_a: float) -> str:
    """What the diodes do at the worst."""
    blocked = BlockedBank(case, bank, case.point(Corner.WORST))
    if safe_a >= current_a:
        return f"junction {spoken(blocked.junction_c(current_a), 'degC')} of {spoken(blocked.limit_c, 'degC')} at the worst"
    seconds = blocked.seconds_to_limit(current_a)
    lasting = "" if seconds is None else f", and reach their limit {'at once' if seconds == 0 else 'after ' + spoken(seconds, 's')}"
    recloses = "; the protection closes the bank again, so they carry it for a moment only" if case.board.recloses_on_current else ""
    return f"for hours the diodes bear {spoken(safe_a, 'A')} at the worst{lasting}{recloses}"


def _values(case: Case, bank: BankCase, current_a: Callable[[Point], float]) -> dict[str, BothEnds]:
    """Figures of both ends: diodes, and channel for comparison."""
    prefix, count = bank.prefix, bank.switches

    def channel_w(point: Point) -> float:
        settled = case.settle(bank, point, current_a=current_a(point))
        return part_channel_loss_w(
            current_a=current_a(point),
            switches=count,
            hot_resistance_ohm=point[prefix + "on_resistance"] * case.ratio(bank, point).value(min(settled.junctions_c[0], 1e3)),
        )

    return {
        "bank_diode_loss_w": both_ends(case, "W", lambda p: bank_diode_loss_w(current_a=current_a(p), diode_v=p[prefix + "diode_voltage"])),
        "switch_diode_loss_w": both_ends(
            case,
            "W",
            lambda p: part_diode_loss_w(current_a=current_a(p), diode_v=p[prefix + "diode_voltage"], switches=count),
        ),
        "switch_channel_loss_w": both_ends(case, "W", channel_w),
        "junction_degc": both_ends(case, "degC", lambda p: BlockedBank(case, bank, p).junction_c(current_a(p))),
        "board_degc": both_ends(case, "degC", lambda p: BlockedBank(case, bank, p).board_c(current_a(p))),
        "junction_limit_degc": both_ends(case, "degC", lambda p: BlockedBank(case, bank, p).limit_c),
        "safe_current_a": both_ends(case, "A", lambda p: BlockedBank(case, bank, p).largest_a()),
        "time_to_limit_s": both_ends(case, "s", lambda p: BlockedBank(case, bank, p).seconds_to_limit(current_a(p))),
    }


def _current(case: Case, bank: BankCase) -> Sourced:
    """What flows through the diodes of a blocked bank: the current of the other direction."""
    claim = case.board.claim
    return claim.continuous_a if bank.name == CHARGE else claim.continuous_charge_a or claim.continuous_a


def _current_a(case: Case, bank: BankCase, point: Point) -> float:
    """The same at a point: a charge current that nobody claims is open. [A]."""
    stated = _current(case, bank).most
    return stated if bank.name == CHARGE else point.get("charge_current", stated)


def _lacking(case: Case, bank: BankCase) -> tuple[str, ...]:
    """Data without which no bound exists."""
    own = () if bank.prefix + "diode_voltage" in case.quantities else (f"{bank.name}: vsd",)
    return (*own, *case.lacks_conduction(bank))


def _with_diodes(case: Case) -> Case:
    """The case with the forward voltage of each part's diode, where its sheet gives it, and a charge current that nobody claims."""
    found = {bank.prefix: _diode(bank) for bank in case.banks}
    charge = case.board.claim.continuous_charge_a
    if charge is not None and charge.is_band:
        found["charge current"] = quantity("charge_current", larger_is_worse(charge))
    return case.with_quantities(item for item in found.values() if item is not None)


def _diode(bank: BankCase) -> Quantity | None:
    """Forward voltage: the printed maximum at the worst end, the typical value at the other where it is printed."""
    largest, typical = ([value.sourced for value in bank.switch.of("vsd", limit)] for limit in (Limit.MAX, Limit.TYP))
    if not largest and not typical:
        return None
    name = f"no maximum is printed; {LARGEST_PRINTED_V:g} V is the largest of five sheets"
    bound = default(LARGEST_PRINTED_V, "V", name, low=min((v.value for v in typical), default=0.0), high=LARGEST_PRINTED_V)
    worst = max((*largest, *typical, *(() if largest else (bound,))), key=lambda sourced: sourced.value)
    low = min((sourced.value for sourced in typical), default=worst.value)
    return Quantity(
        key=bank.prefix + "diode_voltage",
        name="diode_voltage",
        unit="V",
        favourable=low,
        nominal=low,
        worst=worst.value,
        sourced=worst,
        wording=Wording(
            phrase="the body diodes drop {value} or less",
            how="Block the bank, draw a known current through it and measure the volts from drain to source.",
            effort=2,
            lowest=0.1,
            highest=3.0,
        ),
    )


def _reclosing() -> Quantity:
    """Whether the protection closes a blocked bank, which nobody has said."""
    unknown = default(0.0, "", "nobody has tried whether the protection closes a blocked bank when current flows", low=0.0, high=1.0)
    item = quantity("recloses_on_current", Ends(favourable=1.0, nominal=0.0, worst=0.0, sourced=unknown))
    return replace(item, wording=WORDINGS["recloses_on_current"])


def _does_not_arise() -> Finding:
    """On separate ports no current passes a blocked bank."""
    text = "Separate ports: neither direction passes the other's bank, so no current takes the diodes of a blocked one"
    return Finding(check=NAME, bank="both", outcome=None, text=text, scenario=True)


CHECK = Check(
    name=NAME,
    question="What happens while one bank is blocked and the current takes its body diodes?",
    method="The claimed current times the diodes' forward voltage as heat of the blocked bank, with the other bank on; what they bear for "
    "hours, how long they bear the claim, and what re-closing the bank would change.",
    source="own, P = I V against P = I^2 R; irfr3806, irf3205 and irf1404 for printed forward voltages",
    needs=("claim.continuous_a", "claim.continuous_charge_a", "switch.vsd", "board.recloses_on_current", "bank.switches"),
    run=run,
    scenario=True,
)
