"""Published rule sets: their printed factors, and that they are applied where they belong and never blended."""

import pytest
from boards import FOUR_FIELDS, case_of

from service.derating.assess import assess
from service.derating.case import Corner
from service.derating.checks import CHECKS, package_current, power_rating
from service.derating.rules import RULE_SETS, rule_set
from service.facts.finding import Outcome


def test_the_factors_of_eee_inst_002_are_those_of_its_table():
    """CV48: NASA EEE-INST-002 (May 2003), Section S1, Table 4."""
    rules = rule_set("eee-inst-002")

    assert (rules.gate_voltage_factor, rules.drain_voltage_factor, rules.power_factor, rules.current_factor) == (0.60, 0.75, 0.60, 0.75)


@pytest.mark.parametrize(("rated_c", "allowed_c"), [(175, 125), (150, 110)])
def test_the_junction_limit_of_eee_inst_002_is_the_least_of_three(rated_c, allowed_c):
    """CV47: the same table, note 2: 0.80 of the rating, 125 degC, and 40 K below the rating."""
    assert rule_set("eee-inst-002").junction_limit_c(rated_c) == pytest.approx(allowed_c)


def test_the_trade_rule_is_about_voltage_alone():
    """Common practice, no source: 0.80 of the drain-source voltage, all else as the maker says."""
    rules = rule_set("trade-80")

    assert (rules.drain_voltage_factor, rules.gate_voltage_factor, rules.power_factor, rules.current_factor) == (0.80, 1, 1, 1)
    assert rules.junction_limit_c(175) == 175


@pytest.mark.parametrize(
    ("rating", "maker", "trade", "eee"),
    [
        ("80 V", Outcome.HOLDS, Outcome.HOLDS, Outcome.HOLDS),
        ("75 V", Outcome.HOLDS, Outcome.HOLDS, Outcome.FAILS),
        ("60 V", Outcome.HOLDS, Outcome.FAILS, Outcome.FAILS),
    ],
)
def test_sixteen_cells_by_each_rule_set(rating, maker, trade, eee):
    """By hand: 58.4 V is 0.73 of 80 V, 0.779 of 75 V, 0.973 of 60 V."""
    changes = {"cells": {"in_series": 16}, "typed.A": {"vds_max": {"max": rating}}}
    found = [CHECKS[0].run(case_of(FOUR_FIELDS, changes, rules=name))[0].outcome for name in RULE_SETS]

    assert found == [maker, trade, eee]


def test_twelve_volts_on_a_gate_of_twenty_are_exactly_at_the_limit_of_eee_inst_002():
    """By hand: 0.60 x 20 V = 12.0 V, and equality keeps the limit; the text says so."""
    changes = {"board": {"gate_voltage": "12 V"}, "typed.A": {"vgs_max": {"max": "20 V"}}}
    finding = CHECKS[1].run(case_of(FOUR_FIELDS, changes, rules="eee-inst-002"))[0]

    assert finding.outcome is Outcome.HOLDS
    assert "exactly at the limit" in finding.text


def test_a_limit_of_the_user_wins_where_it_is_lower():
    """120 degC below the sheet's 175, but not below the 125 of EEE-INST-002 where the user allows 150."""
    strict = case_of(FOUR_FIELDS, {"limits": {"junction": "120 °C"}})
    loose = case_of(FOUR_FIELDS, {"limits": {"junction": "150 °C"}}, rules="eee-inst-002")

    assert strict.junction_limit_c(strict.discharge, strict.point(Corner.WORST)) == 120
    assert loose.junction_limit_c(loose.discharge, loose.point(Corner.WORST)) == 125


def test_the_power_factor_takes_from_what_is_left_at_the_real_case():
    """By hand at 40 A: Tj from 40 + 60 x (40/6)^2 x 5 mohm x k; EEE allows 0.60 of what the maker allows at that case."""
    allowed = [
        power_rating.CHECK.run(case_of(FOUR_FIELDS, {"claim": {"continuous": "40 A"}}, rules=name))[0].limit.value
        for name in ("maker", "eee-inst-002")
    ]

    assert allowed[1] == pytest.approx(0.60 * allowed[0])


def test_the_current_factor_takes_from_the_smaller_of_silicon_and_package():
    """By hand: 0.75 of a package of 75 A."""
    ids = [{"max": "200 A", "tc": "25 °C", "limited_by": "silicon"}, {"max": "75 A", "tc": "25 °C", "limited_by": "package"}]
    changes = {"claim": {"continuous": "30 A"}, "typed.A": {"id_cont": ids}}
    finding = package_current.CHECK.run(case_of(FOUR_FIELDS, changes, rules="eee-inst-002"))[0]

    assert finding.limit.value == pytest.approx(56.25)
    assert finding.limit.quantity == "package_current_a"


@pytest.mark.parametrize("name", RULE_SETS)
def test_a_report_answers_for_all_rule_sets_whichever_is_chosen(name):
    """The answers of all three are the same from each."""
    board = case_of(FOUR_FIELDS).board
    chosen, maker = assess(board, rule_set=name), assess(board)

    assert chosen.rule_set == name
    assert {key: answer.by_rule_set for key, answer in chosen.inverse.items()} == {key: a.by_rule_set for key, a in maker.inverse.items()}
    assert chosen.inverse["continuous_a"].value == maker.inverse["continuous_a"].by_rule_set[name]
