"""Bounds before giving up: outcomes, thresholds on the safe side, defaults that flip, data that are missing."""

from dataclasses import replace

import pytest
from boards import FOUR_FIELDS, WHOLE, case_of
from hypothesis import given
from hypothesis import strategies as st

from service.derating.assess import assess
from service.derating.case import Corner
from service.derating.checks import continuous_current, drain_source_voltage, package_current, power_rating
from service.derating.spoken import rounded_down, rounded_up, spoken
from service.derating.weighing import outcome_of, weigh
from service.facts.finding import Margin, Outcome, Relation


@pytest.mark.parametrize(
    ("worst", "favourable", "outcome"),
    [(1.0, 1.2, Outcome.HOLDS), (0.99, 1.0, Outcome.HOLDS_IF), (0.5, 0.999, Outcome.FAILS), (1.0, 1.0, Outcome.HOLDS)],
)
def test_the_two_ends_make_the_outcome(worst, favourable, outcome):
    """Equality keeps the limit."""
    assert outcome_of(Margin(worst=worst, favourable=favourable)) is outcome


def test_a_margin_reads_what_it_rests_on():
    """Inputs and assumptions are those quantities that the margin touched, no others."""
    case = case_of(FOUR_FIELDS)
    weighed = weigh(case, lambda point: 50.0 / point["junction_to_air"])

    assert [assumption.name for assumption in weighed.assumptions] == ["junction_to_air"]
    assert weighed.inputs == ()
    assert weighed.outcome is Outcome.HOLDS_IF
    assert weighed.conditions[0].value == 50.0


def test_a_threshold_outside_its_band_is_still_said():
    """No value of the band is enough, but a better heat path would be: others at their worst."""
    case = case_of(FOUR_FIELDS)

    def margin(point):
        return 0.9 * (200 / point["on_resistance"] * 1e-3) / point["junction_to_air"] * 1.2 - 0.0

    weighed = weigh(case, margin)
    named = {condition.quantity: condition.value for condition in weighed.conditions}

    assert named["junction_to_air"] == pytest.approx(43.2)
    assert named["on_resistance"] == pytest.approx(0.0036)
    assert weighed.conditions[0].quantity == "junction_to_air"


def test_what_is_known_to_fail_at_its_best_fails():
    """And each default says how far it would have to move."""
    finding = continuous_current.CHECK.run(case_of(FOUR_FIELDS, {"claim": {"continuous": "200 A"}}))[0]
    flips = {assumption.name: assumption.flips_at for assumption in finding.assumptions}

    assert finding.outcome is Outcome.FAILS
    assert finding.condition is None
    assert flips["junction_to_air"] < 40


def test_what_holds_at_its_worst_says_how_far_a_default_may_move():
    """A way to air that is so bad would flip it."""
    finding = continuous_current.CHECK.run(case_of(FOUR_FIELDS, {"claim": {"continuous": "50 A"}}))[0]
    flips = {assumption.name: assumption.flips_at for assumption in finding.assumptions}

    assert finding.outcome is Outcome.HOLDS
    assert flips["junction_to_air"] > 60


def test_a_yes_or_no_fact_is_a_condition_too():
    """75 V bear two packs, or one with the charger reversed on top."""
    finding = drain_source_voltage.CHECK.run(case_of(WHOLE))[1]

    assert finding.outcome is Outcome.HOLDS_IF
    assert finding.condition.relation is Relation.IS
    assert finding.condition.value is False
    assert finding.demand.value == pytest.approx(58.4 + 29.4)


@given(value=st.floats(1e-6, 1e6))
def test_rounding_goes_to_the_safe_side_and_no_further(value):
    """Four digits: never above, never below, and close."""
    assert rounded_down(value) <= value * (1 + 1e-9)
    assert rounded_up(value) >= value * (1 - 1e-9)
    assert rounded_down(value) == pytest.approx(value, rel=1.1e-3)
    assert rounded_up(value) == pytest.approx(value, rel=1.1e-3)


def test_numbers_are_spoken_with_a_fitting_prefix():
    """Milliohms below an ohm."""
    assert spoken(0.004957, "ohm") == "4.957 m\N{GREEK CAPITAL LETTER OMEGA}"
    assert spoken(2.0, "ohm") == "2 \N{GREEK CAPITAL LETTER OMEGA}"
    assert spoken(59.48, "K/W") == "59.48 K/W"
    assert rounded_down(59.4857) == 59.48
    assert rounded_up(43.0) == 43.0


@pytest.mark.parametrize(
    ("taken_away", "check", "datum"),
    [
        ("rds_on", continuous_current, "rds_on"),
        ("rds_on", power_rating, "rds_on"),
        ("vds_max", drain_source_voltage, "vds_max"),
        ("rth_jc", power_rating, "rth_jc"),
        ("rth_jc", package_current, "id_cont"),
    ],
)
def test_what_has_no_bound_names_the_missing_datum(taken_away, check, datum):
    """Not determined is no shrug."""
    finding = check.CHECK.run(case_of(FOUR_FIELDS, {"typed.A": {taken_away: None}}))[0]

    assert finding.outcome is Outcome.NOT_DETERMINED
    assert any(datum in missing for missing in finding.missing)
    assert "not determined" in finding.text


@pytest.mark.parametrize("text", [FOUR_FIELDS, WHOLE], ids=["four fields", "whole"])
@pytest.mark.parametrize("gone", [{"rds_on"}, {"vds_max", "tj_max"}, {"rth_jc"}, {"rth_jc", "pd"}, {"id_cont", "id_pulse", "vsd", "eas"}, None])
def test_a_board_with_holes_is_judged_without_an_error(text, gone):
    """Figures of the sheet taken away, some at a time and all together."""
    board = case_of(text).board
    switch = board.discharge_bank.switch
    values = tuple(value for value in switch.values if gone is not None and value.key not in gone)
    bank = replace(board.discharge_bank, switch=replace(switch, values=values))
    report = assess(replace(board, discharge_bank=bank, charge_bank=bank))

    assert {finding.check for finding in report.findings} >= {"drain_source_voltage", "continuous_current", "package_current"}


def test_the_board_limit_of_laminate_is_assumed_where_a_board_is_shared():
    """Silicon survives what a laminate does not: AN90003 allows 120 to 140 degC."""
    case = case_of(WHOLE, {"cooling": {"board_limit": None}})
    assumed = case.quantities["board_limit"]

    assert (assumed.worst, assumed.favourable) == (120, 140)
    assert assumed.is_default


def test_a_gap_in_the_chain_becomes_a_threshold():
    """Nobody knows how the cases reach the board: the answer names what would do."""
    changes = {"cooling": {"case_to_board": None, "board_limit": "140 °C"}, "claim": {"continuous": "190 A"}, "limits": {"junction": None}}
    finding = continuous_current.CHECK.run(case_of(WHOLE, changes))[1]
    named = {condition.quantity for condition in (finding.condition, *finding.conditions) if condition}

    assert finding.outcome in {Outcome.HOLDS_IF, Outcome.FAILS, Outcome.HOLDS}
    assert "case_to_board" in {assumption.name for assumption in finding.assumptions}
    assert named <= set(case_of(WHOLE, changes).quantities)


def test_a_moved_gate_voltage_takes_its_own_row_along():
    """At the worst end 6 V stand for 5.6 mohm, 10 V for 4."""
    case = case_of(WHOLE, {"board": {"gate_voltage": None}})

    assert case.point(Corner.WORST)["on_resistance"] == pytest.approx(5.6e-3)
    assert case.point(Corner.WORST, {"gate_voltage": 10.0})["on_resistance"] == pytest.approx(4.0e-3)


def test_a_gate_voltage_that_decides_is_the_first_thing_to_measure():
    """A voltmeter is less effort than a thermometer."""
    changes = {"board": {"gate_voltage": None}, "claim": {"continuous": "110 A"}, "limits": {"junction": None}}
    finding = continuous_current.CHECK.run(case_of(WHOLE, changes))[0]

    assert finding.outcome is Outcome.HOLDS_IF
    assert finding.condition.quantity == "gate_voltage"
    assert finding.condition.value == 10.0
    assert finding.condition.relation is Relation.AT_LEAST


def test_a_charge_current_that_nobody_claims_is_an_open_quantity_of_its_own_port():
    """Two switches would not bear the discharge claim; what they do bear, by hand 2/6 of 79.66 A, is said instead."""
    tables = {"board": {"port": "separate"}, "charge_bank": {"part": "typed:A", "switches": 2}, "claim": {"continuous": "70 A"}}
    finding = continuous_current.CHECK.run(case_of(FOUR_FIELDS, tables))[1]

    assert finding.outcome is Outcome.HOLDS_IF
    assert finding.condition.quantity == "charge_current"
    assert finding.condition.value == pytest.approx(79.656 / 3, abs=0.01)
    assert finding.condition.text == "Holds if charging takes 26.55 A or less."


def test_a_junction_beyond_the_printed_curve_is_marked_as_extrapolated():
    """A curve that ends at 60 degC carries its last slope on; one that reaches says nothing."""
    short = {"typed.A": {"rds_on_vs_tj": [[-40, 0.70], [25, 1.0], [60, 1.2]]}}

    assert "extrapolated, because the sheet's curve of on-resistance ends at 60" in continuous_current.CHECK.run(case_of(WHOLE, short))[0].text
    assert "extrapolated" not in continuous_current.CHECK.run(case_of(WHOLE))[0].text
