"""Is the gate driven within its rating, and hard enough for the printed on-resistance?"""

from service.derating import figures
from service.derating.both_banks import each_bank
from service.derating.case import BankCase, Case, Corner
from service.derating.check import Check
from service.derating.figures import Ends
from service.derating.gate_rows import GateRow
from service.derating.open_case import known_gate_v
from service.derating.quantities import quantity
from service.derating.quantity import Point
from service.derating.spoken import spoken
from service.derating.values import both_ends
from service.derating.weighing import not_determined, weigh
from service.facts.finding import BothEnds, Figure, Finding, Input
from service.facts.sourced import Sourced

NAME = "gate_drive"
# Why up to 12 V: drivers with a charge pump or a regulator commonly give 10 to 12 V; common practice, no source.
UNKNOWN_GATE_V = figures.default(10.0, "V", "10 V, up to 12 V from drivers with a charge pump", low=10.0, high=12.0)


def run(case: Case) -> tuple[Finding, ...]:
    """Judge each bank."""
    return each_bank(case, _judge)


def _judge(case: Case, bank: BankCase) -> Finding:
    """One bank."""
    rating = figures.least_of(bank.switch, "vgs_max")
    subject = f"gate of the {bank.name} bank"
    if bank.drive is None:
        missing = (f"{bank.name}: rds_on at a gate voltage that the board reaches",)
        return not_determined(check=NAME, bank=bank.name, text=subject, missing=missing)
    if rating is None:
        text = f"{subject}, {_row_said(case, bank)}"
        return not_determined(check=NAME, bank=bank.name, text=text, missing=(f"{bank.name}: vgs_max",))
    allowed_v = case.rules.gate_voltage_factor * rating.value
    own = case.with_quantities((quantity("gate_stress", _stress(known_gate_v(case.board))),))
    applied_v = own.point(Corner.WORST)["gate_stress"]
    exactly = ", exactly at the limit" if abs(applied_v - allowed_v) < 1e-9 * allowed_v else ""
    return weigh(own, lambda point: allowed_v / point["gate_stress"]).finding(
        check=NAME,
        bank=bank.name,
        text=f"{subject}: {applied_v:g} V of {allowed_v:g} V{exactly}; {_row_said(own, bank)}",
        demand=Figure(quantity="gate_voltage", value=applied_v, unit="V"),
        limit=Figure(quantity="allowed_v", value=allowed_v, unit="V"),
        formula="VGS <= factor x VGS rating; RDS(on) from the nearest printed VGS that is not higher",
        values=_values(own, bank),
        inputs=(Input(name=bank.prefix + "gate_rating", sourced=rating),),
    )


def _stress(known: Sourced | None) -> Ends:
    """The gate voltage as a stress: here its upper end hurts."""
    return figures.larger_is_worse(known or UNKNOWN_GATE_V)


def _row(case: Case, bank: BankCase, corner: Corner) -> GateRow:
    """The on-resistance row that counts at a corner."""
    if bank.drive is None:
        raise ValueError(f"the {bank.name} bank has no on-resistance at its gate voltage; ask lacks_conduction() first")
    return bank.drive.row(case.point(corner)[bank.prefix + "gate_voltage"])


def _row_said(case: Case, bank: BankCase) -> str:
    """Which on-resistance counts, in words."""
    row, ohm = _row(case, bank, Corner.WORST), case.point(Corner.WORST)[bank.prefix + "on_resistance"]
    lowest_v = case.board.cells.in_series * case.board.cells.empty_v.least
    said = f"on-resistance taken from {row.gate_v:g} V: {spoken(ohm, 'ohm')} at most when cold"
    low = f"; an empty pack has only {lowest_v:g} V, so a driver without a charge pump falls below that" if lowest_v < row.gate_v else ""
    return said + low


def _values(case: Case, bank: BankCase) -> dict[str, BothEnds]:
    """Figures of both ends."""
    row_v = {corner: _row(case, bank, corner).gate_v for corner in (Corner.FAVOURABLE, Corner.WORST)}
    return {
        "gate_v": both_ends(case, "V", lambda point: point["gate_stress"]),
        "row_gate_v": BothEnds(favourable=row_v[Corner.FAVOURABLE], worst=row_v[Corner.WORST], unit="V"),
        "on_resistance_ohm": both_ends(case, "ohm", lambda point: _ohm(bank, point)),
    }


def _ohm(bank: BankCase, point: Point) -> float:
    """On-resistance at 25 degC."""
    return point[bank.prefix + "on_resistance"]


CHECK = Check(
    name=NAME,
    question="Is the gate driven within its rating, and hard enough for a printed on-resistance also from an empty pack?",
    method="The gate voltage against the rating times the rule set's factor; the on-resistance is that of the nearest printed gate voltage "
    "that is not above the real one.",
    source="eee-inst-002 section S1, Table 4; an11158 p.15: on-resistance belongs to its gate voltage, so it is never interpolated",
    needs=("board.gate_v", "switch.vgs_max", "switch.rds_on", "cells.empty_v"),
    run=run,
)
