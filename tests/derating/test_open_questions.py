"""What lies beyond the outcome: what to measure next, how often a board would hold, what an unknown part would have to be."""

from dataclasses import replace

import numpy as np
import pytest
from boards import FOUR_FIELDS, WHOLE, case_of

from service.derating.assess import assess
from service.derating.case import Corner
from service.derating.measure_next import measure_next
from service.derating.spread import drawn, spread
from service.derating.wanted import wanted
from service.facts.finding import Outcome


def test_the_way_to_air_is_the_first_thing_to_measure_on_the_four_field_board():
    """It decides the outcome alone, and takes less effort than the resistance."""
    first = measure_next(case_of(FOUR_FIELDS).board)[0]

    assert first.quantity == "junction_to_air"
    assert first.decides == 1.0
    assert (first.low, first.high) == (40, 60)
    assert "hottest switch" in first.how


def test_a_board_of_which_all_is_known_leaves_little_to_measure():
    """Nothing that could decide but the plug of the charger, which two packs in series could not bear the wrong way round."""
    assert [measure.quantity for measure in measure_next(case_of(WHOLE).board) if measure.decides] == ["charger_reversed"]


def test_what_a_finding_asks_for_is_worth_measuring_and_what_ifs_come_last():
    """The heat that the board holds, the shunt's rating, the charger's plug; then whether a blocked bank is closed again."""
    changes = {
        "claim": {"surge": "300 A for 5 s"},
        "cooling": {"board_heat_capacity": None},
        "board": {"shunt_rating": None, "recloses_on_current": None},
    }
    asked = [measure for measure in measure_next(case_of(WHOLE, changes).board) if measure.decides]

    assert [measure.quantity for measure in asked] == ["charger_reversed", "shunt_rating", "board_heat_capacity", "recloses_on_current"]
    assert all(measure.how.endswith((".", "?")) for measure in asked)
    assert (asked[1].low, asked[1].high, asked[1].unit) == (0, 15, "W")


def test_a_report_brings_the_list_along():
    """The page need not ask again."""
    board = case_of(FOUR_FIELDS).board

    assert assess(board).measure_next == measure_next(board)


def test_the_same_seed_draws_the_same_boards():
    """And another seed others, close to the same share."""
    board = case_of(FOUR_FIELDS, {"claim": {"continuous": "100 A"}}).board
    one, two, other = (spread(board, boards=20_000, seed=seed) for seed in (1, 1, 2))

    assert one == two
    assert one.holds != other.holds
    assert one.holds == pytest.approx(other.holds, abs=0.02)


def test_the_share_of_boards_is_that_of_judging_them_one_by_one():
    """A hundred boards put in as facts, each at its drawn values, fail and hold as the arrays say."""
    case = case_of(FOUR_FIELDS, {"claim": {"continuous": "105 A"}})
    point = drawn(case, boards=100, seed=7)
    found = spread(case.board, boards=100, seed=7)
    keeps = []
    for number in range(100):
        own = {key: float(value[number]) if isinstance(value, np.ndarray) else value for key, value in point.items()}
        limit = case.junction_limit_c(case.discharge, own)
        hottest = max(case.settle(case.discharge, own, current_a=105.0, low_switch=low).junctions_c[0] for low in (False, True))
        keeps.append(hottest <= limit)

    assert 0.05 < np.mean(keeps) < 0.95
    assert found.holds == pytest.approx(np.mean(keeps))


def test_a_board_that_holds_in_the_worst_corner_holds_however_the_dice_fall():
    """And one that fails in the best never does."""
    light, heavy = (case_of(FOUR_FIELDS, {"claim": {"continuous": amperes}}).board for amperes in ("50 A", "200 A"))

    assert spread(light, boards=5_000).holds == 1.0
    assert spread(heavy, boards=5_000).holds == 0.0


def test_the_ranking_names_what_moves_the_outcome_most():
    """A way to air from 20 to 60 K/W outweighs a resistance from 4 to 5 mohm; more of it is worse."""
    board = case_of(FOUR_FIELDS, {"cooling": {"junction_to_air": "20 K/W to 60 K/W"}}).board
    ranking = spread(board, boards=5_000).banks[0].ranking

    assert ranking[0][0] == "junction_to_air"
    assert ranking[0][1] < -0.8


def test_a_bank_without_a_bound_has_no_spread():
    """Nothing can be drawn."""
    assert spread(case_of(FOUR_FIELDS, {"typed.A": {"rds_on": None}}).board) is None


def test_drawn_resistances_follow_the_row_of_their_gate_voltage():
    """At 10 V between 3.3 and 4.0 mohm, below it between 4.4 and 5.6."""
    case = case_of(WHOLE, {"board": {"gate_voltage": None}})
    point = drawn(case, boards=4_000, seed=3)
    high = np.asarray(point["gate_voltage"]) >= 10
    ohms = np.asarray(point["on_resistance"])

    assert ohms[~high].min() >= 4.4e-3
    assert ohms[~high].max() <= 5.6e-3
    assert not high.any() or ohms[high].max() <= 4.0e-3


@pytest.mark.parametrize(
    "changes",
    [{}, {"claim": {"surge": "300 A for 5 s"}, "cooling": {"ambient": "30 °C", "junction_to_air": "30 K/W", "board_heat_capacity": "40 J/K"}}],
    ids=["for hours", "through a surge"],
)
def test_the_wanted_part_holds_and_one_a_little_worse_does_not(changes):
    """Put in as a typed part of the trial's own figures."""
    found = wanted(case_of(FOUR_FIELDS, changes).board)
    part = {"tj_max": {"max": "150 °C"}, "rth_jc": {"max": "1.5 K/W"}, "vds_max": {"max": f"{found.drain_voltage_v} V"}}
    outcomes = []
    for factor in (1.0, 1.01):
        rows = [{"max": f"{found.on_resistance_ohm * 1e3 * factor:.6f} mohm", "vgs": "10 V"}]
        report = assess(case_of(FOUR_FIELDS, {**changes, "typed.A": {**part, "rds_on": rows}}).board)
        checks = {"continuous_current", "current_sharing", "surge_current"}
        outcomes.append({finding.outcome for finding in report.findings if finding.check in checks})

    assert outcomes[0] == {Outcome.HOLDS}
    assert Outcome.HOLDS_IF in outcomes[1]


def test_the_wanted_voltage_is_the_string_over_the_factor():
    """CV61: 36.5 V for one pack of 8S by the trade rule; 38.93 V by EEE-INST-002, rounded up."""
    board = case_of(FOUR_FIELDS).board

    assert wanted(board, rule_set="trade-80").drain_voltage_v == pytest.approx(36.5)
    assert wanted(board, rule_set="eee-inst-002").drain_voltage_v == pytest.approx(38.94)


def test_where_no_part_is_good_enough_none_is_named():
    """Air as hot as the junction limit that is supposed."""
    board = case_of(FOUR_FIELDS, {"cooling": {"ambient": "150 °C"}}).board

    assert wanted(board).on_resistance_ohm is None


def test_the_part_that_a_board_names_is_left_aside():
    """Another part changes nothing of what is wanted."""
    board = case_of(FOUR_FIELDS).board
    bare = replace(board.discharge_bank, switch=replace(board.discharge_bank.switch, values=()))

    assert wanted(replace(board, discharge_bank=bare, charge_bank=bare)) == wanted(board)


def test_nominal_lies_between_the_ends():
    """Typical resistance and the centre of each band."""
    case = case_of(FOUR_FIELDS)

    assert case.point(Corner.NOMINAL)["junction_to_air"] == 50
    assert case.point(Corner.NOMINAL)["on_resistance"] == pytest.approx(4e-3)
