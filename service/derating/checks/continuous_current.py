"""Can the switches carry the claimed current for hours?"""

from service.derating.both_banks import each_bank
from service.derating.case import BankCase, Case, Corner
from service.derating.check import Check
from service.derating.formulas.network import network_loop_gain
from service.derating.formulas.settling import Settled
from service.derating.holding import least_switches, over_banks, over_discharge_path
from service.derating.quantity import Point
from service.derating.spoken import spoken
from service.derating.stated import prolonged, stated
from service.derating.thermal import Limits, highest_ambient_c, largest_current_a, limits_of, slack_k
from service.derating.values import both_ends
from service.derating.weighing import not_determined, weigh
from service.facts.finding import BothEnds, Figure, Finding

NAME = "continuous_current"
CHAIN = "Tj = Ta + RthBA x heat of all + (RthJC + RthCB) x (I/n)^2 x RDS(on) x k(Tj), for each bank"
SIMPLE = "Tj = Ta + RthJA x (I/n)^2 x RDS(on) x k(Tj)"


def run(case: Case) -> tuple[Finding, ...]:
    """Judge each bank."""
    return each_bank(case, _judge)


def _judge(case: Case, bank: BankCase) -> Finding:
    """One bank."""
    claimed = bank.claimed_a.value
    subject = f"{claimed:g} A for hours through {bank.switches} switches of the {bank.name} bank"
    missing = case.lacks_conduction(bank)
    if missing:
        return not_determined(check=NAME, bank=bank.name, text=subject, missing=missing)
    worst = case.point(Corner.WORST)
    demand, limit = _demand_and_limit(case, bank, worst)
    weighed = weigh(case, lambda point: _margin(case, bank, point), slack=lambda point: _slack_k(case, bank, point), at=f"at {claimed:g} A")
    return weighed.finding(
        check=NAME,
        bank=bank.name,
        text=f"{subject}: {_said(demand, limit, weighed.margin.worst * claimed)}{prolonged(case, bank, _settled(case, bank, worst).junctions_c[0])}",
        demand=demand,
        limit=limit,
        formula=CHAIN if case.is_chain else SIMPLE,
        values=_values(case, bank),
        inputs=stated(bank),
    )


def _margin(case: Case, bank: BankCase, point: Point) -> float:
    """Largest current over the claimed one."""
    return _largest_a(case, bank, point) / case.claimed_a(bank, point)


def _slack_k(case: Case, bank: BankCase, point: Point) -> float:
    """Distance to the nearest limit at the claimed current."""
    return slack_k(case.network(bank, point), limits_of(case, bank, point), current_a=case.claimed_a(bank, point))


def _largest_a(case: Case, bank: BankCase, point: Point) -> float:
    """Largest current by junction and board."""
    return largest_current_a(case.network(bank, point), limits_of(case, bank, point))


def _by_junction_a(case: Case, bank: BankCase, point: Point) -> float:
    """Largest current by the junction limit alone."""
    return largest_current_a(case.network(bank, point), Limits(junction_c=case.junction_limit_c(bank, point)))


def _ambient_c(case: Case, bank: BankCase, point: Point) -> float:
    """Highest ambient at the claimed current."""
    return highest_ambient_c(case.network(bank, point), limits_of(case, bank, point), current_a=case.claimed_a(bank, point))


def _demand_and_limit(case: Case, bank: BankCase, point: Point) -> tuple[Figure, Figure]:
    """The temperature that comes nearest to its limit, or the currents where nothing settles."""
    settled, limits = _settled(case, bank, point), limits_of(case, bank, point)
    if not settled.exists:
        largest = _largest_a(case, bank, point)
        return Figure(quantity="continuous_a", value=case.claimed_a(bank, point), unit="A"), Figure(quantity="largest_a", value=largest, unit="A")
    junction = (Figure(quantity="junction_degc", value=t, unit="degC") for t in (settled.junctions_c[0], limits.junction_c))
    if limits.board_c is None or _by_junction_a(case, bank, point) <= _largest_a(case, bank, point):
        return next(junction), next(junction)
    board = (Figure(quantity="board_degc", value=t, unit="degC") for t in (settled.board_c, limits.board_c))
    return next(board), next(board)


def _said(demand: Figure, limit: Figure, largest_a: float) -> str:
    """The worst end in words."""
    carries = f"{largest_a:.4g} A would settle within all limits"
    if demand.unit == "A":
        return f"at the worst the temperature never settles; at most {carries}"
    what = "junction" if demand.quantity == "junction_degc" else "board"
    return f"the {what} reaches {spoken(demand.value, 'degC')} of {spoken(limit.value, 'degC')} at the worst; {carries}"


def _values(case: Case, bank: BankCase) -> dict[str, BothEnds]:
    """Figures of both ends."""

    def junction(point: Point) -> float:
        return _settled(case, bank, point).junctions_c[0]

    def board(point: Point) -> float | None:
        # Why none in the simple form: there the board's temperature is not modelled, and the air's would mislead.
        return _settled(case, bank, point).board_c if case.is_chain else None

    def gain(point: Point) -> float | None:
        settled = _settled(case, bank, point)
        network, amperes = case.network(bank, point), case.claimed_a(bank, point)
        return network_loop_gain(network, current_a=amperes, junctions_c=settled.junctions_c) if settled.exists else None

    def cold_junction(point: Point) -> float:
        settled, die = _settled(case, bank, point), case.network(bank, point).dies[0]
        heat = settled.currents_a[0] ** 2 * die.cold_resistance_ohm
        return (settled.board_c if case.is_chain else point["ambient"]) + die.to_board_kpw * heat

    return {
        "junction_degc": both_ends(case, "degC", junction),
        "board_degc": both_ends(case, "degC", board),
        "junction_limit_degc": both_ends(case, "degC", lambda point: case.junction_limit_c(bank, point)),
        "switch_current_a": both_ends(case, "A", lambda point: case.claimed_a(bank, point) / bank.switches),
        "bank_loss_w": both_ends(case, "W", lambda point: bank.switches * _settled(case, bank, point).losses_w[0]),
        "bank_drop_v": both_ends(case, "V", lambda point: _settled(case, bank, point).drops_v[0]),
        "largest_a": both_ends(case, "A", lambda point: _largest_a(case, bank, point)),
        "loop_gain": both_ends(case, "1", gain),
        "junction_at_cold_resistance_degc": both_ends(case, "degC", cold_junction),
    }


def _settled(case: Case, bank: BankCase, point: Point) -> Settled:
    """The state of rest at the claimed current."""
    return case.settle(bank, point, current_a=case.claimed_a(bank, point))


CHECK = Check(
    name=NAME,
    question="Can the switches carry the claimed current for hours without passing their junction limit or the board's own?",
    method="The temperature at which heat and the resistance that grows with it settle, with both banks and the shunt warming a shared board; "
    "the largest current that keeps the limits is compared with the claimed one.",
    source="and90146 and an2112 section 6.4 for one switch; own for banks on one board; an90003 on the board's own limit",
    needs=("claim.continuous_a", "bank.switches", "switch.rds_on", "switch.tj_max", "cooling"),
    run=run,
    margin=lambda case, bank, point: None if case.lacks_conduction(bank) else _margin(case, bank, point),
    inverses={
        "continuous_a": lambda case: over_discharge_path(case, _largest_a),
        "continuous_a_junction": lambda case: over_discharge_path(case, _by_junction_a),
        "ambient_degc": lambda case: over_banks(case, _ambient_c),
        "switches": lambda case: least_switches(case, _margin),
    },
)
