"""What is taken from a sheet, and what stands in where it is silent: the table of defaults, row by row."""

import pytest
from boards import FOUR_FIELDS, case_of

from service.derating.case import Corner
from service.derating.checks import gate_drive, package_current
from service.derating.conduction_figures import on_resistance
from service.derating.gate_rows import gate_rows, row_at
from service.facts.finding import Outcome
from service.facts.sourced import Known


def quantity(name, part=None, **tables):
    """One quantity of the four-field board with a changed part."""
    return case_of(FOUR_FIELDS, {"typed.A": part or {}, **tables}).quantities[name]


def test_a_typical_value_alone_is_taken_one_and_a_half_times_at_the_worst():
    """Largest over typical was 1.14 to 1.46 on five sheets."""
    item = quantity("on_resistance", {"rds_on": [{"typ": "4 mohm", "vgs": "10 V"}]})

    assert (item.favourable, item.nominal, item.worst) == pytest.approx((4e-3, 4e-3, 6e-3))
    assert item.is_default


def test_a_largest_value_alone_gives_the_typical_one():
    """1.25 times less at the favourable end."""
    item = quantity("on_resistance", {"rds_on": [{"max": "5 mohm", "vgs": "10 V"}]})

    assert (item.favourable, item.worst) == pytest.approx((4e-3, 5e-3))


def test_the_row_of_the_nearest_lower_gate_voltage_counts():
    """9 V take the row of 6 V; nothing is interpolated."""
    rows = [{"max": "4 mohm", "vgs": "10 V"}, {"max": "6 mohm", "vgs": "6 V"}]

    assert quantity("on_resistance", {"rds_on": rows}, board={"gate_voltage": "9 V"}).worst == pytest.approx(6e-3)
    assert quantity("on_resistance", {"rds_on": rows}, board={"gate_voltage": "12 V"}).worst == pytest.approx(4e-3)


def test_an_unknown_gate_voltage_takes_the_next_lower_row_at_the_worst_end():
    """10 V at the favourable end, the row of 4.5 V at the worst."""
    rows = [{"typ": "3 mohm", "max": "4 mohm", "vgs": "10 V"}, {"typ": "5 mohm", "max": "7 mohm", "vgs": "4.5 V"}]
    item = quantity("on_resistance", {"rds_on": rows})

    assert (item.favourable, item.worst) == pytest.approx((3e-3, 7e-3))
    assert quantity("gate_voltage", {"rds_on": rows}).worst == 4.5


def test_a_part_with_a_lower_row_alone_takes_that():
    """A logic-level part printed at 4.5 V."""
    item = quantity("on_resistance", {"rds_on": [{"max": "7 mohm", "vgs": "4.5 V"}]})

    assert item.worst == pytest.approx(7e-3)
    assert not quantity("gate_voltage", {"rds_on": [{"max": "7 mohm", "vgs": "4.5 V"}]}).is_open


def test_a_gate_that_gets_less_than_any_row_leaves_no_bound():
    """On-resistance at 4 V is nowhere printed: not determined, and the datum is named."""
    case = case_of(FOUR_FIELDS, {"board": {"gate_voltage": "4 V"}})
    finding = gate_drive.CHECK.run(case)[0]

    assert finding.outcome is Outcome.NOT_DETERMINED
    assert "rds_on at a gate voltage that the board reaches" in finding.missing[0]


def test_a_printed_hot_value_goes_before_a_curve_and_before_the_class():
    """CV13: PSMN022-30PL prints 22 and 41.8 mohm: a ratio of 1.900 at 175 degC."""
    rows = [{"max": "22 mohm", "vgs": "10 V"}, {"max": "41.8 mohm", "vgs": "10 V", "tj": "175 °C"}]
    case = case_of(FOUR_FIELDS, {"typed.A": {"rds_on": rows, "rds_on_vs_tj": [[25, 1.0], [175, 2.2]]}})

    assert case.ratio(case.discharge, case.point(Corner.WORST)).value(175) == pytest.approx(1.900, abs=1e-9)


def test_a_curve_goes_before_the_class_and_is_set_to_one_at_25_degrees():
    """Digitised curves read up to 1.025 there."""
    case = case_of(FOUR_FIELDS, {"typed.A": {"rds_on_vs_tj": [[25, 1.02], [175, 2.244]]}})

    assert case.ratio(case.discharge, case.point(Corner.WORST)).value(175) == pytest.approx(2.2)


@pytest.mark.parametrize(("rating", "exponent"), [("40 V", 1.7), ("41 V", 2.0), ("80 V", 2.0), ("81 V", 2.6), ("150 V", 2.6)])
def test_the_class_exponent_follows_the_voltage(rating, exponent):
    """Handbook section 3: 1.7 up to 40 V, 2.0 up to 80 V, 2.6 up to 150 V, with 0.3 either way."""
    item = quantity("on_resistance_exponent", {"vds_max": {"max": rating}})

    assert (item.favourable, item.nominal, item.worst) == pytest.approx((exponent - 0.3, exponent, exponent + 0.3))


def test_below_25_degrees_the_smaller_exponent_makes_the_larger_resistance():
    """Both ends lie on their own side of 1 everywhere."""
    case = case_of(FOUR_FIELDS)
    worst, favourable = (case.ratio(case.discharge, case.point(corner)) for corner in (Corner.WORST, Corner.FAVOURABLE))

    assert worst.value(100) > favourable.value(100)
    assert worst.value(-20) > favourable.value(-20)


def test_the_thermal_resistance_comes_from_watts_at_a_case():
    """FET-01: 250 W and 175 degC make 0.600 K/W."""
    item = quantity("junction_case", {"rth_jc": None, "pd": [{"max": "250 W", "tc": "25 °C"}]})

    assert item.worst == pytest.approx(0.600)
    assert item.sourced.known is Known.CLASS_DEFAULT


def test_watts_at_an_ambient_say_nothing_of_the_case():
    """SiR418DP: 5 W at an ambient of 25 degC are no 25 K/W to the case."""
    case = case_of(FOUR_FIELDS, {"typed.A": {"rth_jc": None, "pd": [{"max": "5 W", "ta": "25 °C"}]}})

    assert "junction_case" not in case.quantities


def test_watts_without_a_junction_limit_take_the_larger_thermal_resistance():
    """150 / PD on the 175 degC basis, and the limit stays at 150 degC."""
    part = {"rth_jc": None, "tj_max": None, "pd": [{"max": "100 W", "tc": "25 °C"}]}

    assert quantity("junction_case", part).worst == pytest.approx(1.5)
    assert quantity("junction_max", part).worst == 150


@pytest.mark.parametrize(
    ("package", "low_a", "high_a"),
    [("TO-220AB", 75, 75), ("D-PAK (TO-252)", 20, 40), ("SO-8", 20, 40)],
)
def test_packages_that_often_limit_are_capped(package, low_a, high_a):
    """Section 13: 75 A for TO-220, 20 to 40 A for small packages with leads."""
    item = quantity("package_current", {"package": package})

    assert (item.worst, item.favourable) == (low_a, high_a)


@pytest.mark.parametrize("package", ["D2PAK", "TO-263", "PowerPAK SO-8", "LFPAK56", "TOLL"])
def test_other_packages_have_no_cap_and_say_so(package):
    """The silicon's current is taken, and the package stands among the assumptions."""
    case = case_of(FOUR_FIELDS, {"typed.A": {"package": package}})
    finding = package_current.CHECK.run(case)[0]

    assert "package_current" not in case.quantities
    assert any("package limit unknown" in assumption.basis for assumption in finding.assumptions)


def test_a_printed_package_limit_wins_over_a_larger_headline():
    """CV12: IRF1404 headline 202 A, package 75 A."""
    ids = [{"max": "202 A", "tc": "25 °C", "limited_by": "silicon"}, {"max": "75 A", "tc": "25 °C", "limited_by": "package"}]
    finding = package_current.CHECK.run(case_of(FOUR_FIELDS, {"claim": {"continuous": "30 A"}, "typed.A": {"id_cont": ids}}))[0]

    assert finding.limit.value == 75


def test_rows_are_sorted_by_gate_voltage_and_headlines_give_way():
    """A headline rounds and drops its conditions."""
    rows = [{"max": "6 mohm", "vgs": "6 V"}, {"max": "4 mohm", "vgs": "10 V"}, {"max": "3 mohm", "vgs": "10 V", "where": "headline"}]
    found = gate_rows(case_of(FOUR_FIELDS, {"typed.A": {"rds_on": rows}}).discharge.switch)

    assert [row.gate_v for row in found] == [6, 10]
    assert on_resistance(found[1]).worst == pytest.approx(4e-3)
    assert row_at(found, 5.9) is None


def test_a_pack_that_is_empty_drives_no_gate_higher_than_itself():
    """Three cells of 2.5 V are 7.5 V: the row of 8 V does not count, that of 4.5 V does; without it there is no bound."""
    rows = [{"max": "5 mohm", "vgs": "10 V"}, {"max": "6 mohm", "vgs": "8 V"}, {"max": "8 mohm", "vgs": "4.5 V"}]
    three = {"cells": {"in_series": 3}}

    assert case_of(FOUR_FIELDS, {**three, "typed.A": {"rds_on": rows}}).point(Corner.WORST)["on_resistance"] == pytest.approx(8e-3)
    assert case_of(FOUR_FIELDS, {"typed.A": {"rds_on": rows}}).point(Corner.WORST)["on_resistance"] == pytest.approx(6e-3)
    assert case_of(FOUR_FIELDS, {**three, "typed.A": {"rds_on": rows[:2]}}).lacks_conduction(case_of(FOUR_FIELDS, three).discharge)
    assert not case_of(FOUR_FIELDS, {"cells": {"in_series": 4}}).lacks_conduction(case_of(FOUR_FIELDS, three).discharge)


def test_a_stated_gate_voltage_is_held_against_an_empty_pack_in_words():
    """Three cells of 2.5 V are 7.5 V: a stated 12 V needs a charge pump; eight are 20 V and need none."""
    stated = {"board": {"gate_voltage": "12 V"}, "typed.A": {"vgs_max": {"max": "20 V"}}}
    three, eight = (gate_drive.CHECK.run(case_of(FOUR_FIELDS, {**stated, "cells": {"in_series": cells}}))[0].text for cells in (3, 8))

    assert "an empty pack has only 7.5 V" in three
    assert "empty pack" not in eight
