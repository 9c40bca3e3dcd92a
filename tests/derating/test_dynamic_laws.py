"""Laws that hold for every board: both ends in order, more current never better, and thresholds that decide when put in as facts."""

from boards import WHOLE, case_of
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from service.derating.checks import body_diode, pulsed_current, short_circuit, shunt, surge_current
from service.facts.finding import Outcome

CHECKS = (pulsed_current, surge_current, shunt, short_circuit, body_diode)
SLOW = settings(deadline=None, max_examples=5, suppress_health_check=[HealthCheck.too_slow])


@st.composite
def boards(draw):
    """Changes that make an invented board of the contract's example."""
    maybe = draw(st.sampled_from([True, False]))
    chain = {
        "case_to_board": f"{draw(st.integers(1, 10))} K/W",
        "board_to_air": f"{draw(st.integers(1, 8))} K/W",
        "board_heat_capacity": f"{draw(st.integers(5, 200))} J/K" if maybe else None,
        "ambient": f"{draw(st.integers(-20, 50))} °C",
    }
    return {
        "claim": {
            "continuous": f"{draw(st.integers(20, 90))} A",
            "packs_in_series": draw(st.integers(1, 2)),
            "surge": f"{draw(st.integers(100, 400))} A for {draw(st.integers(1, 9000))} ms",
        },
        "discharge_bank": {"switches": draw(st.integers(1, 12))},
        "cooling": chain,
        "fault": {"protection_delay": f"{draw(st.integers(2, 400))} us"},
        "typed.A": {"zth_foster": None, "id_pulse": {"max": f"{draw(st.integers(30, 600))} A"}} if draw(st.booleans()) else {},
    }


@SLOW
@given(changes=boards())
def test_the_favourable_end_is_never_the_worse_one(changes):
    """For every check and every bank; and the word for the outcome fits the margin."""
    case = case_of(WHOLE, changes)

    for finding in (finding for check in CHECKS for finding in check.CHECK.run(case)):
        temperatures = finding.values.get("junction_degc")
        if temperatures is not None and None not in (temperatures.favourable, temperatures.worst):
            assert temperatures.favourable <= temperatures.worst + 1e-6, finding.text
        if finding.margin is not None:
            assert finding.margin.worst <= finding.margin.favourable * (1 + 1e-6), finding.text
            assert (finding.outcome is Outcome.HOLDS) == (finding.margin.worst >= 1 - 1e-9), finding.text
            assert (finding.outcome is Outcome.FAILS) == (finding.margin.favourable < 1 - 1e-9), finding.text


@SLOW
@given(changes=boards(), factor=st.floats(1.05, 1.5))
def test_a_larger_surge_never_has_the_larger_margin(changes, factor):
    """Of surge and pulse."""
    amperes = float(changes["claim"]["surge"].split()[0])
    longer = changes["claim"]["surge"].split(" for ")[1]
    larger = {**changes, "claim": {**changes["claim"], "surge": f"{amperes * factor:.3f} A for {longer}"}}

    for check in (surge_current, pulsed_current):
        before, after = (check.CHECK.run(case_of(WHOLE, board))[0] for board in (changes, larger))
        assert after.margin.worst <= before.margin.worst * (1 + 1e-6)


@SLOW
@given(amperes=st.integers(300, 420), seconds=st.integers(2, 30))
def test_the_heat_capacity_that_is_asked_for_decides(amperes, seconds):
    """Just inside it holds, just outside it does not."""
    claim = {"surge": f"{amperes} A for {seconds} s"}
    asked = surge_current.CHECK.run(case_of(WHOLE, {"claim": claim, "cooling": {"board_heat_capacity": None}}))[0]
    wanted = [c for c in (asked.condition, *asked.conditions) if c and c.quantity == "board_heat_capacity" and "all else" not in c.text]

    for condition in wanted:
        inside, outside = (
            surge_current.CHECK.run(case_of(WHOLE, {"claim": claim, "cooling": {"board_heat_capacity": f"{condition.value * by:.6f} J/K"}}))[0]
            for by in (1.001, 0.995)
        )
        assert inside.outcome is Outcome.HOLDS
        assert outside.outcome is not Outcome.HOLDS


@SLOW
@given(micro_henry=st.floats(0.3, 5), packs=st.integers(1, 2))
def test_the_delay_that_is_asked_for_decides(micro_henry, packs):
    """Just inside it holds, just outside it does not; where none is asked for, not even the fastest published step of 15 us holds."""
    loop = {"loop_inductance": f"{micro_henry:.4f} uH", "extra_inductance": None}
    claim = {"packs_in_series": packs}
    asked = short_circuit.CHECK.run(case_of(WHOLE, {"claim": claim, "fault": {**loop, "protection_delay": None}}))[0]
    wanted = [c for c in (asked.condition, *asked.conditions) if c and c.quantity == "protection_delay" and "all else" not in c.text]
    micro_s = wanted[0].value * 1e6 if wanted else 15.0

    assert (asked.outcome is Outcome.HOLDS_IF) == bool(asked.condition)
    for by, holds in ((0.999, bool(wanted)), (1.005, False)):
        found = short_circuit.CHECK.run(case_of(WHOLE, {"claim": claim, "fault": {**loop, "protection_delay": f"{micro_s * by:.7f} us"}}))[0]
        assert (found.outcome is Outcome.HOLDS) is holds
