"""How much heat and voltage does the path through the switches cost?"""

from service.derating.case import BankCase, Case
from service.derating.check import Check
from service.derating.formulas.conduction import parallel_resistance_ohm, path_resistance_ohm, switch_loss_w
from service.derating.quantity import Point
from service.derating.stated import stated
from service.derating.values import both_ends
from service.derating.weighing import noted, watched
from service.facts.finding import BothEnds, Finding

NAME = "conduction_loss"
# Middle of the discharge plateau of LiFePO4; common practice, no source.
NOMINAL_CELL_V = 3.2
FORMULA = "V = I x (sum of RDS(on) x k(Tj)/n + shunt + joints), P = V x I"


def run(case: Case) -> tuple[Finding, ...]:
    """The path of the discharge current; with separate ports that of the charge current too."""
    path = case.conducting(case.discharge)
    paths = (path,) if len(path) > 1 else (path, case.conducting(case.charge))
    return tuple(_account(case, each) for each in paths)


def _account(case: Case, path: tuple[BankCase, ...]) -> Finding:
    """Heat and drop of one path; there is no limit to keep."""
    claimed, bank = path[0].claimed_a.value, "both" if len(path) > 1 else path[0].name
    missing = tuple(dict.fromkeys(item for each in path for item in case.lacks_conduction(each)))
    subject = f"{claimed:g} A through the {bank if bank != 'both' else 'common'} path"
    if missing:
        return Finding(check=NAME, bank=bank, outcome=None, text=f"{subject}: no bound, for want of {', '.join(missing)}", missing=missing)
    read: set[str] = set()
    values = _values(case, path, read)
    inputs, assumptions = noted(case, read)
    uncounted = tuple(name for name in ("shunt_resistance", "joints") if name not in case.quantities)
    return Finding(
        check=NAME,
        bank=bank,
        outcome=None,
        text=f"{subject}: {_said(values)}{_left_out(uncounted)}",
        formula=FORMULA,
        inputs=(*(item for each in path for item in stated(each)), *inputs),
        assumptions=assumptions,
        values=values,
        missing=uncounted,
    )


def _hot_ohm(case: Case, bank: BankCase, point: Point) -> float:
    """One switch at its junction temperature; infinite where nothing settles."""
    settled = case.settle(bank, point, current_a=case.claimed_a(bank, point))
    return settled.losses_w[0] / settled.currents_a[0] ** 2


def _values(case: Case, path: tuple[BankCase, ...], read: set[str]) -> dict[str, BothEnds]:
    """Figures of both ends."""

    def amperes(point: Point) -> float:
        return case.claimed_a(path[0], point)

    def banks_ohm(point: Point) -> float:
        seen = watched(point, read)
        return sum(parallel_resistance_ohm(on_resistance_ohm=_hot_ohm(case, bank, seen), switches=bank.switches) for bank in path)

    def path_ohm(point: Point) -> float:
        seen = watched(point, read)
        shunt_ohm, joints_ohm = seen.get("shunt_resistance", 0.0), seen.get("joints", 0.0)
        return path_resistance_ohm(banks_ohm=banks_ohm(point), shunt_ohm=shunt_ohm, joints_ohm=joints_ohm)

    def loss_w(point: Point, ohm: float) -> float:
        return switch_loss_w(current_a=amperes(point), on_resistance_ohm=ohm)

    string_v = case.board.cells.in_series * NOMINAL_CELL_V
    return {
        "path_resistance_ohm": both_ends(case, "ohm", path_ohm),
        "path_drop_v": both_ends(case, "V", lambda point: amperes(point) * path_ohm(point)),
        "path_loss_w": both_ends(case, "W", lambda point: loss_w(point, path_ohm(point))),
        "banks_loss_w": both_ends(case, "W", lambda point: loss_w(point, banks_ohm(point))),
        "shunt_loss_w": both_ends(case, "W", lambda point: loss_w(point, point.get("shunt_resistance", 0.0))),
        "joints_loss_w": both_ends(case, "W", lambda point: loss_w(point, point.get("joints", 0.0))),
        "share_of_power": both_ends(case, "1", lambda point: amperes(point) * path_ohm(point) / string_v),
    }


def _said(values: dict[str, BothEnds]) -> str:
    """Both ends in words."""
    loss, drop = values["path_loss_w"], values["path_drop_v"]
    if loss.worst is None or drop.worst is None or loss.favourable is None or drop.favourable is None:
        return "at the worst the temperature never settles"
    return f"{loss.favourable:.3g} to {loss.worst:.3g} W of heat, {drop.favourable * 1e3:.3g} to {drop.worst * 1e3:.3g} mV of drop"


def _left_out(names: tuple[str, ...]) -> str:
    """What is not counted because nobody knows it."""
    said = {"shunt_resistance": "shunt", "joints": "joints"}
    return f"; not counted, because unknown: {' and '.join(said[name] for name in names)}" if names else ""


CHECK = Check(
    name=NAME,
    question="How much heat and voltage does the path through the switches, the shunt and the joints cost at the claimed current?",
    method="All resistances of the path in series, the switches at the temperature at which they settle; there is no limit to keep.",
    source="own, resistors in series; lattice-2008 p.15-3 for equal switches in parallel",
    needs=("claim.continuous_a", "bank.switches", "switch.rds_on", "board.shunt_ohm", "board.joints_ohm"),
    run=run,
)
