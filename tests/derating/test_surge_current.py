"""The surge check against a stiff integrator, and its bounds, thresholds and inverses."""

import numpy as np
import pytest
from boards import FOUR_FIELDS, WHOLE, case_of
from scipy.integrate import solve_ivp

from service.derating.case import Corner
from service.derating.checks.surge_current import CHECK
from service.derating.surge_inverse import largest_surge_s
from service.derating.surging import surge_curve
from service.facts.finding import Outcome

PAIRS = ((0.1, 0.3e-3), (0.3, 3e-3), (0.4, 20e-3))


def ratio(junction_c):
    """The typed curve of the contract's board."""
    return np.interp(junction_c, [-40, 25, 100, 175], [0.70, 1.0, 1.52, 2.20])


def integrated(low_ohm, *, surge_a, seconds, heat_jpk=55.0):
    """The contract's board by scipy's Radau: low switch, nine others, seven of the charge bank; 4 mohm, 4 K/W to a board of 2.5 K/W at 35 degC."""
    cold, many, bank = np.array([low_ohm, 4e-3, 4e-3]), np.array([1, 9, 7]), np.array([0, 0, 1])

    def heats(junctions, amperes):
        ohms = cold * ratio(junctions)
        volts = [amperes / (many[bank == b] / ohms[bank == b]).sum() for b in (0, 1)]
        return np.array([volts[b] for b in bank]) ** 2 / ohms

    def junctions(pair_rises, board_c, amperes):
        warm = np.full(3, board_c)
        for _ in range(25):
            warm = board_c + 4.0 * heats(warm, amperes) + pair_rises.sum(axis=1)
        return warm

    def rates(state, amperes):
        rises, board_c = state[:9].reshape(3, 3), state[9]
        power = heats(junctions(rises, board_c, amperes), amperes)
        inner = [(power[k] * r - rises[k, i]) / tau for k in range(3) for i, (r, tau) in enumerate(PAIRS)]
        return [*inner, ((many * power).sum() + amperes**2 * 0.45e-3 - (board_c - 35) / 2.5) / heat_jpk]

    settled = [0.0] * 9 + [35.0]
    for _ in range(80):
        power = heats(junctions(np.reshape(settled[:9], (3, 3)), settled[9], 90.0), 90.0)
        settled = [*(p * r for p in power for r, _ in PAIRS), 35 + 2.5 * ((many * power).sum() + 90**2 * 0.45e-3)]
    end = solve_ivp(lambda _, s: rates(s, surge_a), (0, seconds), settled, method="Radau", rtol=1e-6, atol=1e-6).y[:, -1]
    return junctions(end[:9].reshape(3, 3), end[9], surge_a)[0], end[9]


def only(case, bank="discharge"):
    """The finding of one bank."""
    return next(finding for finding in CHECK.run(case) if finding.bank == bank)


def test_nothing_is_said_of_a_surge_that_nobody_claims():
    """No claim, no finding."""
    assert CHECK.run(case_of(FOUR_FIELDS)) == ()


@pytest.mark.parametrize(("surge", "surge_a", "seconds"), [("180 A for 5 s", 180, 5.0), ("320 A for 50 ms", 320, 0.05)])
def test_the_contracts_board_ends_where_a_stiff_integrator_ends(surge, surge_a, seconds):
    """Scipy's Radau within 0.1 K: the junction of one low switch of 3.3 mohm, and the board under ten high ones of 4.0 mohm."""
    values = only(case_of(WHOLE, {"claim": {"surge": surge}})).values
    junction, _ = integrated(3.3e-3, surge_a=surge_a, seconds=seconds)
    _, board = integrated(4.0e-3, surge_a=surge_a, seconds=seconds)

    assert values["junction_degc"].worst == pytest.approx(junction, abs=0.1)
    assert values["board_degc"].worst == pytest.approx(board, abs=0.1)


def test_a_bound_inside_the_limit_holds():
    """Without a curve RthJC bounds the impedance; what stays inside the limit with it holds."""
    finding = only(case_of(WHOLE, {"typed.A": {"zth_foster": None}}))

    assert finding.outcome is Outcome.HOLDS
    assert "transient_impedance" in {assumption.name for assumption in finding.assumptions}


def test_an_unknown_heat_capacity_becomes_a_threshold_that_decides():
    """Put in as a fact, a little more holds and a little less does not."""
    claim = {"claim": {"surge": "300 A for 8 s"}}
    open_board = only(case_of(WHOLE, {**claim, "cooling": {"board_heat_capacity": None}}))
    needed = next(c for c in (open_board.condition, *open_board.conditions) if c.quantity == "board_heat_capacity")

    assert open_board.outcome is Outcome.HOLDS_IF
    assert only(case_of(WHOLE, {**claim, "cooling": {"board_heat_capacity": f"{needed.value * 1.002} J/K"}})).outcome is Outcome.HOLDS
    assert only(case_of(WHOLE, {**claim, "cooling": {"board_heat_capacity": f"{needed.value * 0.99} J/K"}})).outcome is not Outcome.HOLDS


def test_an_unknown_impedance_becomes_a_threshold_in_a_short_surge():
    """1200 A for 10 ms is too much for RthJC alone; the finding says which Zth would do, and typed points just inside it hold."""
    short = {"claim": {"surge": "1200 A for 10 ms"}, "cooling": {"case_to_board": "0.1 K/W"}, "typed.A": {"zth_foster": None}}
    finding = only(case_of(WHOLE, short))
    wanted = next(c for c in (finding.condition, *finding.conditions) if c.quantity == "transient_impedance")
    points = {"zth_foster": None, "zth": [["1 us", f"{wanted.value * 0.999} K/W"], ["20 ms", f"{wanted.value * 0.999} K/W"]]}

    assert finding.outcome is Outcome.HOLDS_IF
    assert "after 0.01 s" in wanted.text
    assert only(case_of(WHOLE, {**short, "typed.A": points})).outcome is Outcome.HOLDS


def test_the_largest_surge_current_just_holds():
    """Claimed instead, it sits on the limit."""
    largest = only(case_of(WHOLE)).limit.value
    again = only(case_of(WHOLE, {"claim": {"surge": f"{largest} A for 5 s"}}))

    assert again.margin.worst == pytest.approx(1, abs=1e-4)


def test_the_longest_surge_just_holds():
    """Claimed instead, the weaker of both banks sits on its limit; a smaller current may flow for ever."""
    longest = largest_surge_s(case_of(WHOLE))
    again = CHECK.run(case_of(WHOLE, {"claim": {"surge": f"180 A for {longest} s"}}))

    assert min(finding.margin.worst for finding in again) == pytest.approx(1, abs=1e-3)
    assert largest_surge_s(case_of(WHOLE, {"claim": {"surge": "95 A for 5 s"}})) is None


def test_a_limit_for_surges_goes_before_the_one_for_hours_and_never_above_the_rules():
    """150 degC is the user's for a surge; EEE-INST-002 allows 125 degC of a 175 degC part."""
    limits = [only(case_of(WHOLE, rules=rules)).values["junction_limit_degc"].worst for rules in ("maker", "eee-inst-002")]

    assert limits == [150, 125]


def test_a_surge_passes_both_banks_of_a_common_port_and_one_of_a_separate():
    """A separate port's charge bank never sees it."""
    banks = [[f.bank for f in CHECK.run(case_of(WHOLE, {"board": {"port": port}}))] for port in ("common", "separate")]

    assert banks == [["discharge", "charge"], ["discharge"]]


def test_without_on_resistance_a_surge_is_not_determined():
    """The finding names what is missing."""
    finding = only(case_of(WHOLE, {"typed.A": {"rds_on": None}}))

    assert finding.outcome is Outcome.NOT_DETERMINED
    assert "rds_on" in finding.missing[0]


def test_more_time_bears_less_current():
    """The curve for the page falls, and its favourable end lies above its worst."""
    case = case_of(WHOLE)
    times = (0.01, 1.0, 30.0)
    worst, best = (surge_curve(case, case.discharge, corner, times_s=times) for corner in (Corner.WORST, Corner.FAVOURABLE))

    assert [a for _, a in worst] == sorted((a for _, a in worst), reverse=True)
    assert all(low < high for (_, low), (_, high) in zip(worst, best, strict=True))


def test_heat_beyond_the_pulsed_current_is_said_to_lie_outside_the_sheet():
    """Section 13.1: the pulsed current's own check fails, others go on and say so."""
    finding = only(case_of(WHOLE, {"typed.A": {"id_pulse": {"max": "20 A"}}}))

    assert "outside the sheet" in finding.text
    assert "outside the sheet" not in only(case_of(WHOLE)).text


def test_switches_on_their_own_copper_end_where_a_stiff_integrator_ends():
    """Scipy's Radau: 40 K/W each, 60 J/K shared by twelve switches, RthJC 0.75 K/W without mass; a low switch of 4 mohm beside five of 5."""
    board = {"claim": {"surge": "160 A for 10 s"}, "cooling": {"junction_to_air": "40 K/W", "board_heat_capacity": "60 J/K"}}
    cold, many = np.array([4e-3, 5e-3]), np.array([1, 5])

    def heats(copper_c, amperes):
        warm = np.array(copper_c)
        for _ in range(60):
            ohms = cold * ((warm + 273.15) / 298.15) ** 2.3
            power = (amperes / (many / ohms).sum()) ** 2 / ohms
            warm = copper_c + 0.75 * power
        return power

    copper = np.array([40.0, 40.0])
    for _ in range(400):
        copper = 40 + 39.25 * heats(copper, 80.0)
    course = solve_ivp(lambda _, c: (heats(c, 160.0) - (c - 40) / 39.25) / 5, (0, 10), copper, method="Radau", rtol=1e-8, atol=1e-8)
    end = course.y[:, -1]

    values = only(case_of(FOUR_FIELDS, board)).values
    assert values["junction_degc"].worst == pytest.approx(end[0] + 0.75 * heats(end, 160.0)[0], abs=0.1)
    assert values["board_degc"].worst is None


def test_the_margin_is_the_largest_over_the_claimed_current():
    """Limit over demand, at the worst end."""
    finding = only(case_of(WHOLE))

    assert finding.margin.worst == pytest.approx(finding.limit.value / 180)
    assert finding.margin.worst > 1
    assert finding.values["largest_surge_a"].favourable == pytest.approx(finding.margin.favourable * 180)


def test_a_running_state_without_room_says_what_heat_capacity_would_do_elsewhere():
    """Four fields at 60 K/W are past their limit before the surge begins; with all else nominal a few joules a kelvin would do."""
    finding = only(case_of(FOUR_FIELDS, {"claim": {"surge": "160 A for 10 s"}}))

    assert finding.outcome is Outcome.HOLDS_IF
    assert "with all else at its nominal figure a board that holds" in finding.text


def test_air_above_the_limit_bears_no_surge():
    """160 degC around a limit of 150 degC."""
    finding = only(case_of(WHOLE, {"cooling": {"ambient": "160 °C"}}))

    assert finding.outcome is Outcome.FAILS
    assert finding.limit.value == 0


def test_a_surge_that_not_even_the_bound_of_an_instant_bears_has_no_longest_time():
    """Without heat capacity 900 A are too much at once; nothing is proven."""
    assert largest_surge_s(case_of(WHOLE, {"claim": {"surge": "900 A for 1 s"}, "cooling": {"board_heat_capacity": None}})) == 0


def test_of_a_band_of_limits_the_lower_end_counts():
    """Whoever gives 140 to 150 degC must not be promised 150."""
    finding = CHECK.run(case_of(WHOLE, {"limits": {"junction_surge": "140 °C to 150 °C"}}))[0]

    assert finding.values["junction_limit_degc"].worst == 140
