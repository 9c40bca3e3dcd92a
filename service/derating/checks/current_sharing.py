"""Does unequal sharing push one of the parallel switches past its limit?"""

from service.derating import figures
from service.derating.both_banks import each_bank
from service.derating.case import BankCase, Case, Corner
from service.derating.check import Check
from service.derating.formulas.settling import Settled
from service.derating.formulas.sharing import low_switch_current_ratio
from service.derating.holding import least_switches, over_banks, over_discharge_path
from service.derating.quantities import quantity
from service.derating.quantity import Point
from service.derating.spoken import spoken
from service.derating.stated import prolonged, stated
from service.derating.thermal import highest_ambient_c, largest_current_a, limits_of, slack_k
from service.derating.values import both_ends
from service.derating.weighing import not_determined, weigh
from service.facts.finding import BothEnds, Figure, Finding

NAME = "current_sharing"
EVEN_TRACKS = figures.default(0.0, "ohm", "copper of equal length to every switch; 0.2 mohm would be 7 % of a 3 mohm switch", low=0.0, high=0.2e-3)


def run(case: Case) -> tuple[Finding, ...]:
    """Judge each bank."""
    own = case.with_quantities((quantity("track_asymmetry", figures.single(EVEN_TRACKS)),))
    return each_bank(own, _judge)


def _judge(case: Case, bank: BankCase) -> Finding:
    """One bank."""
    claimed = bank.claimed_a.value
    subject = f"{claimed:g} A shared by {bank.switches} switches of the {bank.name} bank"
    missing = case.lacks_conduction(bank)
    if missing:
        return not_determined(check=NAME, bank=bank.name, text=subject, missing=missing)
    worst = case.point(Corner.WORST)
    hottest_c = _hottest_c(case, bank, worst)
    limit_c = case.junction_limit_c(bank, worst)
    weighed = weigh(case, lambda point: _margin(case, bank, point), slack=lambda point: _slack_k(case, bank, point), at=f"at {claimed:g} A")
    return weighed.finding(
        check=NAME,
        bank=bank.name,
        text=f"{subject}: {_said(case, bank, worst, hottest_c)}{prolonged(case, bank, hottest_c)}",
        demand=Figure(quantity="hottest_junction_degc", value=hottest_c, unit="degC") if hottest_c < float("inf") else None,
        limit=Figure(quantity="junction_degc", value=limit_c, unit="degC"),
        formula="V = I / sum(1/Ri(Tj,i)), Pi = V^2/Ri; all at maximum, and one low with all others at maximum: the hotter counts",
        values=_values(case, bank),
        inputs=stated(bank),
    )


def _margin(case: Case, bank: BankCase, point: Point) -> float:
    """Largest current over the claimed one."""
    return _largest_a(case, bank, point) / case.claimed_a(bank, point)


def _slack_k(case: Case, bank: BankCase, point: Point) -> float:
    """Distance to the nearest limit at the claimed current for both ways to share: the smaller one."""
    limits, amperes = limits_of(case, bank, point), case.claimed_a(bank, point)
    ways = _ways(bank, point)
    return min(slack_k(case.network(bank, point, low_switch=low), limits, current_a=amperes) for low in ways)


def _largest_a(case: Case, bank: BankCase, point: Point) -> float:
    """Largest current of both ways to share: the smaller one."""
    limits = limits_of(case, bank, point)
    return min(largest_current_a(case.network(bank, point, low_switch=low), limits) for low in _ways(bank, point))


def _ambient_c(case: Case, bank: BankCase, point: Point) -> float:
    """Highest ambient at the claimed current for both ways to share: the lower one."""
    limits, amperes = limits_of(case, bank, point), case.claimed_a(bank, point)
    ways = _ways(bank, point)
    return min(highest_ambient_c(case.network(bank, point, low_switch=low), limits, current_a=amperes) for low in ways)


def _ways(bank: BankCase, point: Point) -> tuple[bool, ...]:
    """All alike, and where there is more than one switch and a spread, one low beside high others."""
    uneven = point[bank.prefix + "current_spread"] > 1 or point.get("track_asymmetry", 0.0) > 0
    return (False, True) if bank.switches > 1 and uneven else (False,)


def _hottest_c(case: Case, bank: BankCase, point: Point) -> float:
    """Hottest junction of both ways to share [degC]."""
    return max(_settled(case, bank, point, low).junctions_c[0] for low in _ways(bank, point))


def _settled(case: Case, bank: BankCase, point: Point, low_switch: bool) -> Settled:  # noqa: FBT001 - one of the two ways to share
    """The state of rest at the claimed current."""
    return case.settle(bank, point, current_a=case.claimed_a(bank, point), low_switch=low_switch)


def _said(case: Case, bank: BankCase, point: Point, hottest_c: float) -> str:
    """The worst end in words."""
    if bank.switches == 1:
        return "one switch alone has nothing to share"
    if hottest_c == float("inf"):
        return "at the worst the temperature never settles"
    low_a = max(_settled(case, bank, point, low).currents_a[0] for low in _ways(bank, point))
    said = f"the hottest junction reaches {spoken(hottest_c, 'degC')}; a low switch carries {low_a:.4g} A"
    package = point.get(bank.prefix + "package_current")
    return f"{said}, more than its package's {package:g} A" if package is not None and low_a > package else said


def _values(case: Case, bank: BankCase) -> dict[str, BothEnds]:
    """Figures of both ends."""

    def low_a(point: Point) -> float:
        return _settled(case, bank, point, low_switch=True).currents_a[0]

    def cold_ratio(point: Point) -> float:
        return low_switch_current_ratio(spread=point[bank.prefix + "current_spread"], switches=bank.switches)

    return {
        "hottest_junction_degc": both_ends(case, "degC", lambda point: _hottest_c(case, bank, point)),
        "all_maximum_junction_degc": both_ends(case, "degC", lambda point: _settled(case, bank, point, low_switch=False).junctions_c[0]),
        "low_switch_junction_degc": both_ends(case, "degC", lambda point: _settled(case, bank, point, low_switch=True).junctions_c[0]),
        "low_switch_current_a": both_ends(case, "A", low_a),
        "low_switch_current_cold_ratio": both_ends(case, "1", cold_ratio),
        "current_spread": both_ends(case, "1", lambda point: point[bank.prefix + "current_spread"]),
        "largest_a": both_ends(case, "A", lambda point: _largest_a(case, bank, point)),
    }


CHECK = Check(
    name=NAME,
    question="Does unequal sharing push one of the parallel switches past its limit?",
    method="The bank is settled twice: all switches at their largest resistance, and one low switch among largest others; the hotter case counts.",
    source="own, conductances in parallel; buk7y3r5-40h for the widest printed spread; an558 on positive temperature coefficients",
    needs=("claim.continuous_a", "bank.switches", "switch.rds_on", "cooling"),
    run=run,
    margin=lambda case, bank, point: None if case.lacks_conduction(bank) else _margin(case, bank, point),
    inverses={
        "continuous_a": lambda case: over_discharge_path(case, _largest_a),
        "ambient_degc": lambda case: over_banks(case, _ambient_c),
        "switches": lambda case: least_switches(case, _margin),
    },
)
