"""What the pictures of a result show: the same physics as the findings, seen along a line."""

import pytest
from boards import FOUR_FIELDS, WHOLE, case_of

from service.derating.surge_over_time import NO_MASS, surge_over_time
from service.derating.temperature_curve import temperature_curve
from service.derating.thermal_chain import thermal_chain

HOT = {"claim": {"continuous": "300 A"}}
NO_RESISTANCE = {"typed": {"A": {"vds_max": {"max": "80 V"}}}}


def line(curve, label, corner):
    """One line of a curve."""
    return next(series.points for series in curve.series if (series.label, series.corner) == (label, corner))


def all_high_c(amperes, junction_c):
    """The contract's board at 60 K/W with six switches of 5 mohm, written out: 40 + 60 x (I/6)^2 x R x ((Tj + 273.15)/298.15)^2.3."""
    return 40 + 60 * (amperes / 6) ** 2 * 5e-3 * ((junction_c + 273.15) / 298.15) ** 2.3


def test_the_junction_settles_where_heat_and_resistance_agree():
    """Cold, a low switch among high ones is the hottest; from the claimed 80 A on all high ones are, as in the contract's board."""
    points = line(temperature_curve(case_of(FOUR_FIELDS)), "junction", "worst")

    assert all(junction_c >= all_high_c(amperes, junction_c) - 0.01 for amperes, junction_c in points)
    for amperes, junction_c in points[-2:]:
        assert junction_c == pytest.approx(all_high_c(amperes, junction_c), abs=0.01)


def test_the_claim_and_the_limits_are_marked():
    """80 A claimed, 175 degC of the sheet, 79.66 A that hold (worked by hand in the contract)."""
    marks = {mark.label: mark.x if mark.y is None else mark.y for mark in temperature_curve(case_of(FOUR_FIELDS)).marks}

    assert marks == {"junction limit": 175, "claimed": 80, "largest in the worst case": pytest.approx(79.66, abs=0.01)}


def test_a_line_ends_where_nothing_settles_and_the_picture_says_so():
    """Three hundred amperes through six small switches run away."""
    curve = temperature_curve(case_of(FOUR_FIELDS, HOT))

    assert line(curve, "junction", "worst")[-1][0] < 100
    assert "never settles beyond" in curve.note


def test_a_shared_board_is_drawn_with_its_own_limit():
    """The board stays cooler than the junction that heats it, and warms the bank with fewer switches most."""
    curve = temperature_curve(case_of(WHOLE))
    pairs = zip(line(curve, "junction", "worst"), line(curve, "board", "worst"), strict=True)

    assert all(junction[1] >= board[1] for junction, board in pairs)
    assert {mark.label for mark in curve.marks} >= {"junction limit", "board limit"}
    assert curve.bank == "charge"


def test_without_a_known_mass_a_short_surge_may_be_no_larger_than_a_long_one():
    """Nothing holds heat, so 79.66 A (worked by hand in the contract) bounds a surge of any length."""
    curve = surge_over_time(case_of(FOUR_FIELDS))

    assert [amperes for _, amperes in line(curve, "largest surge", "worst")] == pytest.approx([79.66] * 9, abs=0.01)
    assert curve.note == NO_MASS


def test_a_longer_surge_is_a_smaller_one():
    """The claimed spot is marked at its own time, which is one of the points."""
    curve = surge_over_time(case_of(WHOLE))
    points = line(curve, "largest surge", "worst")

    assert [amperes for _, amperes in points] == sorted((amperes for _, amperes in points), reverse=True)
    assert (curve.marks[0].x, curve.marks[0].y) == (5, 180)
    assert 5 in [seconds for seconds, _ in points]


def test_the_links_of_the_chain_fit_together():
    """Each link's rise is its K/W times its watts, and the next begins where it ends, down to the air of 35 degC."""
    chain = thermal_chain(case_of(WHOLE))

    assert [step.start for step in chain.steps] == ["junction", "case", "board"]
    assert chain.steps[-1].end_c == 35
    assert (chain.limit_c, chain.board_limit_c) == (120, 110)
    for step in chain.steps:
        assert step.start_c - step.end_c == pytest.approx(step.worst_kpw * step.heat_w)
    assert [one.end_c for one in chain.steps[:-1]] == [one.start_c for one in chain.steps[1:]]


def test_the_simple_chain_is_parted_at_the_case():
    """0.75 K/W of the 60 lie inside the part; 59.25 outside it, whatever the heat."""
    inner, outer = thermal_chain(case_of(FOUR_FIELDS)).steps

    assert (inner.worst_kpw, outer.worst_kpw, outer.favourable_kpw) == (0.75, 59.25, 39.25)
    assert outer.start_c - outer.end_c == pytest.approx(outer.worst_kpw * outer.heat_w)


def test_where_the_claim_runs_away_the_chain_is_drawn_at_what_settles():
    """79.66 A settle where 300 A do not."""
    assert thermal_chain(case_of(FOUR_FIELDS, HOT)).current_a == pytest.approx(79.66, rel=2e-3)


def test_a_part_without_any_on_resistance_has_no_pictures():
    """No bound on its heat exists, so nothing is drawn."""
    case = case_of(FOUR_FIELDS, NO_RESISTANCE)

    assert temperature_curve(case) is None
    assert surge_over_time(case) is None
    assert thermal_chain(case) is None
