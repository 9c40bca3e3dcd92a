"""The board that the contract works by hand, and the words that a report must have."""

import pytest
from boards import FOUR_FIELDS, WHOLE, case_of

from service.derating.assess import assess
from service.derating.checks import CHECKS, drain_source_voltage
from service.facts.finding import Outcome, Relation

ORDER = [
    "drain_source_voltage",
    "gate_drive",
    "continuous_current",
    "current_sharing",
    "conduction_loss",
    "power_rating",
    "package_current",
    "pulsed_current",
    "surge_current",
    "shunt",
    "short_circuit",
    "body_diode",
]


@pytest.fixture(scope="module")
def report():
    """Eight cells, 80 A, six switches a bank, the typed part, everything else by default."""
    return assess(case_of(FOUR_FIELDS).board)


def only(report, check, bank="discharge"):
    """One finding."""
    return next(finding for finding in report.findings if finding.check == check and finding.bank == bank)


def test_the_checks_come_in_the_order_of_the_contract():
    """Twelve names, no more."""
    assert [check.name for check in CHECKS] == ORDER


def test_findings_keep_the_order_of_the_checks(report):
    """A reader finds every question where it was the last time."""
    places = [ORDER.index(finding.check) for finding in report.findings]

    assert places == sorted(places)


def test_the_continuous_current_holds_if_each_switch_sheds_heat_well_enough(report):
    """Contract: junction_to_air <= 59.48 K/W; (175 - 40)/((80/6)^2 x 0.005 x (448.15/298.15)^2.3) = 59.4857."""
    finding = only(report, "continuous_current")

    assert finding.outcome is Outcome.HOLDS_IF
    assert finding.condition.quantity == "junction_to_air"
    assert finding.condition.relation is Relation.AT_MOST
    assert finding.condition.value == 59.48
    assert finding.condition.unit == "K/W"
    assert finding.condition.text == "Holds at 80 A if each switch sheds heat at 59.48 K/W or better into air of 40 \N{DEGREE SIGN}C."


def test_the_largest_current_is_that_of_the_worst_way_to_air(report):
    """Contract: 79.66 A at 60 K/W; under EEE-INST-002 the junction alone allows 6 x sqrt(85/(60 x 0.005 x (398.15/298.15)^2.3)) = 72.42 A."""
    answer = report.inverse["continuous_a"]

    assert answer.value == pytest.approx(79.66, abs=0.005)
    assert answer.check == "continuous_current"
    assert report.limiting == "continuous_current"
    assert report.inverse["continuous_a_junction"].by_rule_set["eee-inst-002"] == pytest.approx(72.42, abs=0.005)
    assert only(report, "continuous_current").margin.worst == pytest.approx(79.66 / 80, abs=1e-4)


def test_the_string_voltage_holds_and_two_packs_may_be_stacked_by_every_rule_set(report):
    """Contract: 29.2 of 80 V; largest stack 2 under all three."""
    finding = only(report, "drain_source_voltage")

    assert finding.outcome is Outcome.HOLDS
    assert finding.demand.value == pytest.approx(29.2)
    assert finding.limit.value == 80
    assert report.inverse["packs_in_series"].by_rule_set == {"maker": 2, "trade-80": 2, "eee-inst-002": 2}


def test_a_finding_names_its_figures_at_both_ends(report):
    """Contract: at least these five in continuous_current."""
    values = only(report, "continuous_current").values

    assert {"junction_degc", "board_degc", "switch_current_a", "bank_loss_w", "bank_drop_v"} <= set(values)
    assert values["switch_current_a"].worst == pytest.approx(80 / 6)
    assert values["junction_degc"].favourable < values["junction_degc"].worst


def test_every_default_is_named_with_what_would_flip_the_outcome(report):
    """Ambient and way to air were assumed; each says where the outcome changes."""
    assumed = {assumption.name: assumption for assumption in only(report, "continuous_current").assumptions}

    assert assumed["junction_to_air"].flips_at == pytest.approx(59.4857, abs=1e-4)
    assert (assumed["junction_to_air"].low, assumed["junction_to_air"].high, assumed["junction_to_air"].used) == (40, 60, 60)
    # By hand: the heat at the limit, (80/6)^2 x 0.005 x (448.15/298.15)^2.3 = 2.26945 W, times 60 K/W below 175 degC.
    assert assumed["ambient"].flips_at == pytest.approx(175 - 60 * 135 / 59.4857, abs=1e-3)


def test_a_typed_part_keeps_a_result_provisional(report):
    """Nobody has seen a sheet."""
    assert report.provisional.value


def test_every_result_carries_cautions(report):
    """And nothing that claims certification."""
    assert any("not a certificate" in caution for caution in report.cautions)


def test_stacked_packs_list_what_else_sees_the_string():
    """A bare yes to stacking is never given."""
    report = assess(case_of(WHOLE).board)
    finding = only(report, "drain_source_voltage")

    assert {"monitor IC's voltage rating", "isolation of communication lines", "maker's word on stacking"} <= set(finding.missing)
    assert any("series" in caution for caution in report.cautions)


def test_a_report_judged_again_from_its_own_board_says_the_same():
    """Defaults filled in stay defaults."""
    first = assess(case_of(FOUR_FIELDS).board)

    assert assess(first.board) == first


def test_the_whole_board_of_the_contract_is_judged_without_a_gap():
    """Every check says something about a board of which everything is known."""
    report = assess(case_of(WHOLE).board)

    assert {finding.check for finding in report.findings} == set(ORDER)
    assert not [finding.check for finding in report.findings if finding.outcome is Outcome.NOT_DETERMINED]


def test_an_unknown_rule_set_is_refused_by_name():
    """The error names those that exist."""
    with pytest.raises(ValueError, match="maker, trade-80, eee-inst-002"):
        assess(case_of(FOUR_FIELDS).board, rule_set="navy")


def test_what_is_left_for_the_overshoot_says_how_slowly_a_current_must_fall():
    """By hand: 75 V less two packs of 29.2 V leave 16.6 V; 1.2 + 0.3 uH with 180 A take 1.5 x 180 / 16.6 = 16.27 us (AN-936 section 4)."""
    finding = drain_source_voltage.CHECK.run(case_of(WHOLE))[0]

    assert finding.values["gentlest_fall_s"].worst == pytest.approx(16.27e-6, abs=0.01e-6)
    assert "180 A to fall in 16.27 \N{MICRO SIGN}s or more in a loop of 1.5 \N{MICRO SIGN}H" in finding.text
