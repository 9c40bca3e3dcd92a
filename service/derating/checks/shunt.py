"""Does the shunt bear the claimed current, and what do its millivolts mean?"""

from dataclasses import replace

from service.derating.case import Case, Corner
from service.derating.check import Check
from service.derating.figures import Ends, default, smaller_is_worse
from service.derating.formulas.shunt import largest_shunt_current_a, shunt_power_w, trip_current_a, warm_resistance_ohm
from service.derating.quantities import quantity
from service.derating.quantity import Point, Quantity, Wording
from service.derating.spoken import spoken
from service.derating.values import both_ends
from service.derating.weighing import not_determined, noted, weigh
from service.facts.finding import BothEnds, Figure, Finding, Input
from service.facts.sourced import Sourced

NAME = "shunt"
# The largest chip and strip shunts in common use; common practice, no source.
LARGEST_RATING_W = 15.0
# From low-drift alloys to pure copper, whose coefficient NBS Handbook 100 gives.
LEAST_DRIFT_PER_K, MOST_DRIFT_PER_K = 20e-6, 3.93e-3
WARMER_BY_K = 50.0
ONE_MILLIVOLT = 1e-3


def run(case: Case) -> tuple[Finding, ...]:
    """Judge the shunt, which both directions pass."""
    claim = case.board.claim
    claimed = max((claim.continuous_a, claim.continuous_charge_a or claim.continuous_a), key=lambda current: current.most)
    return (_judge(_with_own(case), claimed),)


def _judge(case: Case, claimed: Sourced) -> Finding:
    """The shunt at the larger continuous claim."""
    subject = f"{spoken(claimed.most, 'A')} for hours through the shunt"
    if "shunt_resistance" not in case.quantities:
        return not_determined(check=NAME, bank="both", text=subject, missing=("board.shunt",))

    def power_w(point: Point) -> float:
        return shunt_power_w(current_a=claimed.most, resistance_ohm=point["shunt_resistance"])

    def largest_a(point: Point) -> float:
        return largest_shunt_current_a(power_w=point["shunt_rating"], resistance_ohm=point["shunt_resistance"])

    worst = case.point(Corner.WORST)
    known = case.board.shunt_rating_w is not None
    limit_w = worst["shunt_rating"]
    against = f"of {spoken(limit_w, 'W')}" if known else "against a rating that nobody stated"
    weighed = weigh(case, lambda point: point["shunt_rating"] / power_w(point), at=f"at {spoken(claimed.most, 'A')}")
    weighed = replace(weighed, assumptions=(*weighed.assumptions, *noted(case, {"shunt_coefficient"})[1]))
    finding = weighed.finding(
        check=NAME,
        bank="both",
        text=f"{subject}: {spoken(power_w(worst), 'W')} {against}; {_meaning(worst['shunt_resistance'])}",
        demand=Figure(quantity="shunt_power_w", value=power_w(worst), unit="W"),
        limit=Figure(quantity="shunt_rating_w", value=limit_w, unit="W") if known else None,
        formula="I^2 x R <= rated power",
        values={
            "shunt_power_w": both_ends(case, "W", power_w),
            "largest_a": both_ends(case, "A", largest_a) if known else BothEnds(favourable=None, worst=None, unit="A"),
            "drop_v": both_ends(case, "V", lambda point: claimed.most * point["shunt_resistance"]),
            "trip_a_per_mv": both_ends(case, "A", lambda point: _per_millivolt_a(point["shunt_resistance"])),
            "drift_share": both_ends(case, "1", _drift),
            **_surge_values(case),
        },
        inputs=(Input(name="claimed_current", sourced=claimed),),
    )
    # Why no margin against an unknown rating: it would be zero, and name a shunt that is perhaps large enough as the weakest part.
    return finding if known else replace(finding, margin=None)


def continuous_a(case: Case) -> float | None:
    """Largest current that the shunt bears in the worst corner; None where shunt or rating are not known. [A]."""
    if case.board.shunt_ohm is None or case.board.shunt_rating_w is None:
        return None
    return largest_shunt_current_a(power_w=case.board.shunt_rating_w.least, resistance_ohm=case.board.shunt_ohm.most)


def _surge_values(case: Case) -> dict[str, BothEnds]:
    """Drop and heat of the claimed surge, where there is one."""
    surge = case.board.claim.surge_a
    if surge is None:
        return {}
    return {
        "surge_drop_v": both_ends(case, "V", lambda point: surge.most * point["shunt_resistance"]),
        "surge_power_w": both_ends(case, "W", lambda point: shunt_power_w(current_a=surge.most, resistance_ohm=point["shunt_resistance"])),
    }


def _per_millivolt_a(resistance_ohm: float) -> float:
    """Current that a millivolt of a trip threshold stands for."""
    return trip_current_a(trip_v=ONE_MILLIVOLT, resistance_ohm=resistance_ohm)


def _drift(point: Point) -> float:
    """How much a warm shunt's value has grown, so how much too early a protection trips."""
    warm = warm_resistance_ohm(resistance_ohm=1.0, coefficient_per_k=point["shunt_coefficient"], rise_k=WARMER_BY_K)
    return warm - 1


def _meaning(resistance_ohm: float) -> str:
    """What the shunt's millivolts mean."""
    return f"each millivolt of a trip threshold stands for {spoken(_per_millivolt_a(resistance_ohm), 'A')}"


def _with_own(case: Case) -> Case:
    """The case with rating and drift of the shunt."""
    name = f"from low-drift alloys to a track of copper, {WARMER_BY_K:g} K warmer than when it was trimmed"
    drift = default(MOST_DRIFT_PER_K, "1/K", name, low=LEAST_DRIFT_PER_K, high=MOST_DRIFT_PER_K)
    drift_ends = Ends(favourable=LEAST_DRIFT_PER_K, nominal=LEAST_DRIFT_PER_K, worst=MOST_DRIFT_PER_K, sourced=drift)
    return case.with_quantities((_rating(case), quantity("shunt_coefficient", drift_ends)))


def _rating(case: Case) -> Quantity:
    """The shunt's rated power; between nothing and the largest in use where nobody stated it."""
    stated = case.board.shunt_rating_w
    guess = default(0.0, "W", "nobody stated the shunt's rating", low=0.0, high=LARGEST_RATING_W)
    ends = smaller_is_worse(stated) if stated else Ends(favourable=LARGEST_RATING_W, nominal=0.0, worst=0.0, sourced=guess)
    return Quantity(
        key="shunt_rating",
        name="shunt_rating",
        unit="W",
        favourable=ends.favourable,
        nominal=ends.nominal,
        worst=ends.worst,
        sourced=ends.sourced,
        wording=Wording(
            phrase="the shunt is rated for {value} or more",
            how="Read the shunt's size and marking and look up the rated power of that series; several in parallel add up.",
            effort=2,
            lowest=0.0,
            highest=1e3,
        ),
    )


CHECK = Check(
    name=NAME,
    question="Does the shunt bear the claimed current, and what do its millivolts mean?",
    method="Square of the larger continuous claim times the shunt's resistance, against its rated power; beside it the drop, the drift of a "
    "warm shunt and the current that a millivolt of a trip threshold stands for.",
    source="own, Ohm's and Joule's laws; nbs-100 for the drift of copper",
    needs=("claim.continuous_a", "board.shunt_ohm", "board.shunt_rating_w"),
    run=run,
    inverses={"continuous_a": continuous_a},
)
