"""Tests on the bench: what they say, how far they may be believed, and what they allow for the whole."""

import pytest
from boards import FOUR_FIELDS, case_of
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from service.derating.case import Corner
from service.derating.heat_test import HeatTest, Spot
from service.derating.measurement import (
    allowed_current,
    board_to_air,
    junction_to_air,
    path_resistance,
    switch_resistance,
    with_measured_air,
    with_measured_board,
    with_measured_switches,
)
from service.derating.open_case import open_case
from service.facts.sourced import Known, Sourced

CASE = case_of(FOUR_FIELDS)
BANK = CASE.discharge


def read(value, unit, *, give_or_take=0.0):
    """A reading of an instrument with its uncertainty."""
    return Sourced(value=value, unit=unit, known=Known.MEASURED, low=value - give_or_take, high=value + give_or_take)


def heat_test(*, amperes=40.0, probe_c=62.0, air_c=22.0, spot=Spot.TAB, lid_on=True, doubt_k=0.0):
    """Half of the claim for an hour."""
    return HeatTest(
        current_a=read(amperes, "A"),
        probe_c=read(probe_c, "degC", give_or_take=doubt_k),
        air_c=read(air_c, "degC"),
        spot=spot,
        lid_on=lid_on,
    )


def test_a_heat_test_gives_a_band_that_holds_the_truth():
    """A switch of 4.6 mohm at 25 degC, 48 K/W to the air and 0.5 K/W inside: by hand it shows 22 + 47.5 x P on its tab."""
    warm = 22.0
    for _ in range(60):
        heat = (40 / 6) ** 2 * 4.6e-3 * ((warm + 273.15) / 298.15) ** 2.0
        warm = 22 + 48 * heat
    found = junction_to_air(CASE, BANK, heat_test(probe_c=22 + 47.5 * heat))

    assert found.least < 48 < found.most
    assert found.known is Known.MEASURED
    assert "closed case" in found.name


def test_the_rise_of_a_test_by_hand():
    """62 +- 1 degC in 22 +- 0.5 degC: at least 61 - 22.5 = 38.5 K; at most 63 - 21.5 = 41.5 K, of which a probe may have missed a tenth."""
    test = HeatTest(
        current_a=read(40, "A"),
        probe_c=read(62, "degC", give_or_take=1),
        air_c=read(22, "degC", give_or_take=0.5),
        spot=Spot.TAB,
        lid_on=True,
    )

    assert test.rise_k == pytest.approx((38.5, 46.111), abs=1e-3)


def test_both_ends_of_a_heat_test_by_hand():
    """60 A through six, tab at 75 degC in 35 degC: 40 K over the heat of 5 mohm, and 44.4 K over that of 4 mohm, with 0.75 K/W inside.

    The largest heat is that of a junction which the 0.75 K/W put above the tab; the smallest, that of one as cool as the tab.
    """
    found = junction_to_air(CASE, BANK, heat_test(amperes=60, probe_c=75, air_c=35))
    largest_w = brentq(lambda watts: 100 * 5e-3 * ((348.15 + 0.75 * watts) / 298.15) ** 2.3 - watts, 0.1, 5)
    typical_w = 100 * 4e-3 * ((75 + 40 / 9 + 273.15) / 298.15) ** 1.7

    assert found.least == pytest.approx(40 / largest_w, rel=1e-5)
    assert found.most == pytest.approx(40 / 0.9 / typical_w + 0.75)


def test_a_probe_farther_from_the_silicon_proves_less():
    """What lies between the spot and the junction comes on top of the rise."""
    proven = [allowed_current(CASE, BANK, heat_test(spot=spot), limit_c=175).least for spot in (Spot.TAB, Spot.BOARD)]

    assert proven[1] < proven[0]


def test_an_air_above_the_limit_allows_nothing():
    """A limit of 30 degC in air of 40 degC."""
    assert allowed_current(CASE, BANK, heat_test(), limit_c=30).least == 0


def test_an_open_case_says_what_it_did_not_cover():
    """The air inside the closed case is then the ambient to take."""
    assert "air inside the closed one" in junction_to_air(CASE, BANK, heat_test(lid_on=False)).name


def test_where_the_probe_sat_widens_the_band_upwards():
    """Farther from the silicon, less is known of it."""
    tops = [junction_to_air(CASE, BANK, heat_test(spot=spot)).most for spot in (Spot.TAB, Spot.TOP, Spot.BOARD)]

    assert tops == sorted(tops)
    assert tops[0] < tops[2]


def test_a_rise_within_the_doubt_is_refused():
    """A test that says nothing must not replace a default."""
    with pytest.raises(ValueError, match="says nothing"):
        junction_to_air(CASE, BANK, heat_test(probe_c=23.0, doubt_k=2.0))
    with pytest.raises(ValueError, match="says nothing"):
        allowed_current(CASE, BANK, heat_test(probe_c=23.0, doubt_k=2.0), limit_c=175)


def test_a_measured_board_is_judged_again_with_the_measurement():
    """The measured band takes the default's place."""
    measured = junction_to_air(CASE, BANK, heat_test())
    board = with_measured_air(CASE.board, measured)

    assert board.cooling.junction_to_air_kpw is measured
    assert board.cooling.board_to_air_kpw is None


def test_millivolts_give_milliohms_with_their_band():
    """By hand: 34.2 +- 0.2 mV at 20 +- 0.5 A lies between 34.0 / 20.5 and 34.4 / 19.5 mohm."""
    found = path_resistance(drop_v=read(0.0342, "V", give_or_take=0.0002), current_a=read(20, "A", give_or_take=0.5))

    assert (found.least, found.value, found.most) == pytest.approx((1.65854e-3, 1.71e-3, 1.76410e-3), rel=1e-5)


def test_millivolts_over_a_warm_bank_give_the_cold_switch():
    """By hand: 50 mV at 60 A over six switches is 5 mohm each warm; at 75 degC, (348.15 / 298.15)^2 = 1.36353 colder: 3.667 mohm."""
    found = switch_resistance(CASE, BANK, drop_v=read(0.05, "V"), current_a=read(60, "A"), junction_c=read(75, "degC"))

    assert found.value == pytest.approx(3.667e-3, abs=1e-6)
    assert found.least < found.value < found.most


def test_measured_switches_replace_the_sheets_in_their_bank_alone():
    """Both ends are the band's; the other bank keeps its sheet."""
    measured = Sourced(value=3.6e-3, unit="ohm", known=Known.MEASURED, low=3.5e-3, high=3.7e-3)
    again = open_case(with_measured_switches(CASE.board, "discharge", measured))
    found, kept = (again.quantities[f"{bank}_on_resistance"] for bank in ("discharge", "charge"))

    assert (found.favourable, found.worst) == (3.5e-3, 3.7e-3)
    assert found.sourced.known is Known.MEASURED
    assert (kept.favourable, kept.worst) == (4.0e-3, 5.0e-3)


@given(ohm=st.floats(4.0e-3, 5.0e-3), kpw=st.floats(30, 60), amperes=st.floats(30, 50))
def test_a_test_at_half_the_current_never_promises_more_than_the_board_bears(ohm, kpw, amperes):
    """For a switch anywhere within its sheet the lower end lies below the true limit current, and the upper one above it."""
    exponent, air, limit = 2.0, 40.0, 175.0
    warm = air
    for _ in range(200):
        heat = (amperes / 6) ** 2 * ohm * ((warm + 273.15) / 298.15) ** exponent
        warm = air + kpw * heat
    test = heat_test(amperes=amperes, probe_c=air + (kpw - 0.75) * heat, air_c=air)
    true = 6 * ((limit - air) / (kpw * ohm * ((limit + 273.15) / 298.15) ** exponent)) ** 0.5
    found = allowed_current(CASE, BANK, test, limit_c=limit)

    assert found.least <= true <= found.most
    assert CASE.point(Corner.WORST)["ambient"] == air


ON_ONE_BOARD = case_of(FOUR_FIELDS, {"cooling": {"case_to_board": "4 K/W"}, "board": {"shunt": "0.5 mohm"}})


def test_a_board_at_a_known_current_gives_its_way_to_the_air_by_hand():
    """60 A through two banks of six and 0.5 mohm: 30 K over the heat of 5 mohm at 70 degC and 4.75 K/W, 33.3 K over that of 4 mohm at 73.3."""
    found = board_to_air(ON_ONE_BOARD, ON_ONE_BOARD.discharge, heat_test(amperes=60, probe_c=70, air_c=40, spot=Spot.BOARD))
    hot_w = brentq(lambda watts: 100 * 5e-3 * ((343.15 + 4.75 * watts) / 298.15) ** 2.3 - watts, 0.1, 5)
    cool_w = 100 * 4e-3 * ((40 + 30 / 0.9 + 273.15) / 298.15) ** 1.7

    assert found.least == pytest.approx(30 / (12 * hot_w + 1.8), rel=1e-4)
    assert found.most == pytest.approx(30 / 0.9 / (12 * cool_w + 1.8), rel=1e-4)
    assert found.known is Known.MEASURED


@given(ohm=st.floats(4.0e-3, 5.0e-3), kpw=st.floats(0.5, 3), amperes=st.floats(30, 60), on_tab=st.booleans(), seen=st.floats(0.9, 1.0))
def test_a_measured_way_of_the_board_holds_the_truth_wherever_the_probe_sat(ohm, kpw, amperes, on_tab, seen):
    """For switches anywhere within their sheet and a probe that misses up to a tenth; exponent 2.0, 0.75 and 4 K/W inside, by hand."""
    warm, heat = 40.0, 0.0
    for _ in range(200):
        heat = (amperes / 6) ** 2 * ohm * ((warm + 273.15) / 298.15) ** 2.0
        board = 40 + kpw * (12 * heat + amperes**2 * 0.5e-3)
        warm = board + 4.75 * heat
    rise = board + 4 * heat * on_tab - 40
    test = heat_test(amperes=amperes, probe_c=40 + seen * rise, air_c=40, spot=Spot.TAB if on_tab else Spot.BOARD)
    found = board_to_air(ON_ONE_BOARD, ON_ONE_BOARD.discharge, test)

    assert found.least <= kpw <= found.most


def test_switches_that_share_no_board_have_no_way_of_it():
    """Then a heat test gives junction to air."""
    with pytest.raises(ValueError, match="junction to air"):
        board_to_air(CASE, BANK, heat_test())


def test_a_measured_board_keeps_its_own_limit_in_judgement():
    """Junction to air would lose it: laminate gives in before silicon does."""
    measured = board_to_air(ON_ONE_BOARD, ON_ONE_BOARD.discharge, heat_test(amperes=60, probe_c=70, air_c=40, spot=Spot.BOARD))
    again = open_case(with_measured_board(ON_ONE_BOARD.board, measured))

    assert (again.point(Corner.FAVOURABLE)["board_to_air"], again.point(Corner.WORST)["board_to_air"]) == (measured.least, measured.most)
    assert again.quantities["board_limit"].worst == 120
    assert again.quantities["case_to_board"].worst == 4
