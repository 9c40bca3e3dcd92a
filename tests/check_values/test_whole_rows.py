"""Rows of several figures, each figure a test; what stands here and not in the data files are the figures that a row has besides its first."""

import math

import pytest

from service.derating.formulas import conduction, junction, rating, resistance_ratio, sharing, stacking
from service.derating.formulas.ratio_model import Curve, PowerLaw


@pytest.mark.parametrize(
    ("odd_mohm", "odd_a", "each_other_a"),
    [pytest.param(1.5916, 8.819, 23.727, id="SHR-01"), pytest.param(0.4277, 25.244, 18.252, id="SHR-02")],
)
def test_one_odd_path_beside_three_equal_ones(odd_mohm, odd_a, each_other_a):
    """SHR-01 and SHR-02: own example against a nodal linear solve, 80 A; the others have 0.5916 mohm each."""
    beside_odd, beside_other = 0.5916 / 3, 1 / (1 / odd_mohm + 2 / 0.5916)

    assert sharing.branch_current_a(total_a=80, branch_ohm=odd_mohm, others_ohm=beside_odd) == pytest.approx(odd_a, abs=0.01)
    assert sharing.branch_current_a(total_a=80, branch_ohm=0.5916, others_ohm=beside_other) == pytest.approx(each_other_a, abs=0.01)


def test_two_packs_of_eight_cells_on_a_part_of_80_volts():
    """STK-01: 58.4 V, 73.0 % of the rating, 21.6 V of static margin."""
    string = stacking.string_v(packs=2, cells=8, cell_v=3.65)

    assert string == pytest.approx(58.4, abs=0.1)
    assert 100 * rating.stress_ratio(applied=string, rated=80) == pytest.approx(73.0, abs=0.1)
    assert 80 - string == pytest.approx(21.6, abs=0.1)


@pytest.mark.parametrize(("rated_a", "printed_a"), [(202, 143), (43, 31), (33, 23)])
def test_the_printed_current_at_100_degrees(rated_a, printed_a):
    """CV10: IRF1404, IRFR3806 and IRF540NPbF datasheets."""
    found = rating.derated_current_a(rated_current_a=rated_a, rated_case_c=25, case_c=100, junction_max_c=175)

    assert found == pytest.approx(printed_a, abs=1)


def test_a_sheet_that_contradicts_itself():
    """CV11: IRFZ44N prints 94 W and 1.5 K/W: 141 K of 150, -6 %, beyond the 4 % from which the sheet is flagged."""
    residual = rating.power_residual(rated_power_w=94, rated_case_c=25, junction_case_kpw=1.5, junction_max_c=175)

    assert (1 + residual) * 150 == pytest.approx(141)
    assert 100 * residual == pytest.approx(-6)
    assert abs(residual) > 0.04


@pytest.mark.parametrize(
    ("cold_mohm", "hot_mohm", "hot_c", "printed"),
    [
        pytest.param(22, 41.8, 175, 1.900, id="CV13: PSMN022-30PL rev 02 at 175 degC"),
        pytest.param(22, 31, 100, 1.409, id="CV13: PSMN022-30PL rev 02 at 100 degC"),
        pytest.param(12, 27.6, 175, 2.30, id="CV14: BUK7Y12-55B, AN11158 Table 5"),
        pytest.param(37, 102, 175, 2.757, id="CV14: BUK9637-100E (2016)"),
    ],
)
def test_a_power_law_passes_through_the_printed_hot_value(cold_mohm, hot_mohm, hot_c, printed):
    """And through 1 at 25 degC."""
    exponent = resistance_ratio.exponent_through(hot_c=hot_c, hot_ratio=hot_mohm / cold_mohm)
    law = PowerLaw(exponent, exponent)

    assert law.value(hot_c) == pytest.approx(printed, abs=1e-3)
    assert law.value(25.0) == pytest.approx(1.0)


IRFR3806 = {"slope_per_k": 6.17e-3, "curvature_per_k2": 1.626e-5}
# Handbook's fit to the same figure: within 0.003 between 25 and 175 degC.
IRF1404 = {"slope_per_k": 4.87e-3, "curvature_per_k2": 1.356e-5}


@pytest.mark.parametrize(("degrees_c", "expected"), [(100, 1.554), (125, 1.779), (150, 2.026), (175, 2.290)])
def test_the_parabola_through_a_printed_curve(degrees_c, expected):
    """CV15: IRFR3806 PD-97313 Fig 4, digitised."""
    assert resistance_ratio.quadratic_ratio(junction_c=degrees_c, **IRFR3806) == pytest.approx(expected, abs=0.01)


@pytest.mark.parametrize(("degrees_c", "expected"), [(100, 1.443), (125, 1.621), (150, 1.822), (175, 2.033)])
def test_another_printed_curve_as_parabola_and_in_straight_lines(degrees_c, expected):
    """CV16: IRF1404 PD-91896F Fig 4, digitised; straight lines between 25, 100 and 175 degC miss the middle by their sagitta at most."""
    lines = Curve((25.0, 100.0, 175.0), (1.0, 1.443, 2.033))

    assert resistance_ratio.quadratic_ratio(junction_c=degrees_c, **IRF1404) == pytest.approx(expected, abs=0.02)
    assert lines.value(float(degrees_c)) == pytest.approx(expected, abs=0.02)


def test_losses_of_an_application_note():
    """CV17 and CV19: onsemi AND90146: 6 A in 14 mohm are 504.0 mW, in 25.9 mohm 932.4 mW."""
    assert conduction.switch_loss_w(current_a=6, on_resistance_ohm=14e-3) * 1e3 == pytest.approx(504.0, abs=0.05)
    assert conduction.switch_loss_w(current_a=6, on_resistance_ohm=25.9e-3) * 1e3 == pytest.approx(932.4, abs=0.1)


def test_a_parabola_has_its_last_state_at_the_critical_rise():
    """CV22: scipy; 66.218 K of cold rise is the last that settles, at 299.65 degC, where the curve is nearly flat."""
    at = {"ambient_c": 40, **IRFR3806}

    assert junction.quadratic_fixed_point_c(cold_rise_k=66.218 * (1 - 1e-5), **at) == pytest.approx(299.65, rel=0.01)
    assert math.isnan(junction.quadratic_fixed_point_c(cold_rise_k=66.218 * (1 + 1e-4), **at))


@pytest.mark.parametrize(("packs", "expected_v"), [(1, 18.25), (2, 36.5), (3, 54.75), (4, 73.0)])
def test_the_rating_that_packs_of_four_cells_need(packs, expected_v):
    """CV58: own arithmetic at 0.80."""
    string = stacking.string_v(packs=packs, cells=4, cell_v=3.65)

    assert stacking.needed_rating_v(open_v=string, factor=0.80) == pytest.approx(expected_v)


@pytest.mark.parametrize(("packs", "factor", "expected_v"), [(1, 0.80, 36.5), (2, 0.80, 73.0), (1, 0.75, 38.93), (2, 0.75, 77.87)])
def test_the_rating_that_packs_of_eight_cells_need(packs, factor, expected_v):
    """CV61: own arithmetic."""
    string = stacking.string_v(packs=packs, cells=8, cell_v=3.65)

    assert stacking.needed_rating_v(open_v=string, factor=factor) == pytest.approx(expected_v, abs=0.01)
