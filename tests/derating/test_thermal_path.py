"""The way of the heat, against an independent package, published chains and its own laws."""

import ht
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.derating.still_air import Surface, sealed_air_c, surface_temperature_c
from service.derating.thermal_path import EMISSIVITY, GREASED, Step, ThermalPath, pad, sealed_air, surface
from service.facts.sourced import Known, Sourced


def typed(value, unit="1", *, low=None, high=None):
    """A number that somebody wrote down."""
    return Sourced(value=value, unit=unit, known=Known.TYPED, low=low, high=high)


def plate(emissivity=0.9):
    """100 x 100 mm, both sides free."""
    return Surface(area_m2=0.02, height_m=0.1, emissivity=typed(emissivity))


@pytest.mark.parametrize(("emissivity", "expected_kpw"), [(0.9, 3.61), (0.05, 7.68)])
def test_a_plate_of_a_hand_width_sheds_heat_as_the_handbook_found(emissivity, expected_kpw):
    """Section 11: 100 x 100 mm, both sides, 85 degC in 40 degC; the package ht with other air, so within 1.5 %."""
    power = 45 / expected_kpw
    warm = surface_temperature_c(plate(), power_w=power, air_c=40, emissivity=emissivity)

    assert (warm - 40) / power == pytest.approx(expected_kpw, rel=0.015)


@given(power=st.floats(0.2, 40), air=st.floats(-20, 55), emissivity=st.floats(0.05, 1))
def test_the_temperature_found_sheds_the_heat_by_an_independent_package(power, air, emissivity):
    """Package ht: Churchill and Chu, and radiation, at the temperature that we found, with textbook air at 60 degC for its properties."""
    warm = surface_temperature_c(plate(), power_w=power, air_c=air, emissivity=emissivity)
    film = (warm + air) / 2 + 273.15
    # Conductivity and kinematic viscosity of air fall together as powers of temperature; anchored at 333 K (0.0287 W/(m K), 1.92e-5 m2/s).
    conductivity, kinematic = 0.0287 * (film / 333) ** 0.82, 1.92e-5 * (film / 333) ** 1.74
    grashof = 9.81 / film * (warm - air) * 0.1**3 / kinematic**2
    convected = ht.Nu_vertical_plate_Churchill(0.705, grashof) * conductivity / 0.1 * 0.02 * (warm - air)

    assert convected + ht.q_rad(emissivity, warm + 273.15, air + 273.15) * 0.02 == pytest.approx(power, rel=0.03)


def test_interfaces_and_surfaces_are_as_printed():
    """Flat greased: IRF1404 and others 0.50 K/W, IRFP1405 0.24 K/W; emissivities of NXP AN11113 rev 2, Table 1."""
    assert {name: fact.value for name, fact in GREASED.items()} == {"TO-220": 0.50, "TO-247": 0.24}
    assert [fact.value for fact in EMISSIVITY.values()] == [0.95, 0.8, 0.04]


def test_a_plate_that_only_convects_has_the_band_of_its_convection():
    """Laminar convection grows as the fourth root of the rise, so a factor f on it makes f^-0.8 of the resistance: 1.2 and 0.8."""
    bare = surface(plate(0.0), power_w=4, air_c=25, shared_by=2).resistance

    assert bare.least / bare.value == pytest.approx(1.2**-0.8, rel=0.01)
    assert bare.most / bare.value == pytest.approx(0.8**-0.8, rel=0.01)


def test_a_path_adds_up_as_published():
    """CV54: Nexperia AN90003 Table 9, steps of 0.8, 12.2, 4, 15 and 27.4 K/W make 59.4 K/W."""
    steps = tuple(Step(name=f"step {i}", resistance=typed(kpw, "K/W")) for i, kpw in enumerate((0.8, 12.2, 4, 15, 27.4)))

    assert ThermalPath(steps=steps).per_switch.value == pytest.approx(59.4, abs=0.05)


def test_a_shared_step_warms_each_switch_by_the_heat_of_all():
    """By hand: 0.5 K/W alone and 2 K/W shared by six is 12.5 K for a watt of each."""
    path = ThermalPath(
        steps=(
            Step(name="junction to case", resistance=typed(0.5, "K/W")),
            Step(name="plate to air", resistance=typed(2.0, "K/W", low=1.5, high=2.5), shared_by=6),
        )
    )

    assert (path.per_switch.least, path.per_switch.value, path.per_switch.most) == pytest.approx((9.5, 12.5, 15.5))


def test_a_path_becomes_a_boards_cooling():
    """Steps of one switch and shared ones go to their places; junction to case stays with the part."""
    tab = Sourced(value=1.5e-4, unit="m2", known=Known.TYPED)
    insulator = pad(thickness_m=typed(0.178e-3), conductivity_wpmk=typed(0.9), area_m2=tab, contact_kpw=typed(0.3, low=0.1, high=0.6))
    shared = surface(plate(), power_w=10, air_c=40, shared_by=6)
    steps = (Step(name="junction to case", resistance=typed(0.5, "K/W")), Step(name="case to pad", resistance=GREASED["TO-220"]), insulator, shared)
    cooling = ThermalPath(steps=steps).cooling(ambient=typed(40.0, "degC"))

    # By hand: 0.50 greased + 1.3185 pad + 0.3 contacts (0.1 to 0.6).
    assert cooling.case_to_board_kpw.value == pytest.approx(2.1185, abs=1e-3)
    assert (cooling.case_to_board_kpw.least, cooling.case_to_board_kpw.most) == pytest.approx((1.9185, 2.4185), abs=1e-3)
    assert cooling.board_to_air_kpw.value == pytest.approx(shared.resistance.value)
    assert shared.resistance.least < shared.resistance.value < shared.resistance.most


def test_a_path_without_a_shared_step_is_no_board():
    """The error says what to use instead."""
    path = ThermalPath(steps=(Step(name="junction to air", resistance=typed(50.0, "K/W")),))

    with pytest.raises(ValueError, match="use per_switch"):
        path.cooling(ambient=typed(40.0, "degC"))


def test_heat_that_cannot_leave_is_refused_in_words():
    """Half a kilowatt from a fingernail."""
    with pytest.raises(ValueError, match="cannot leave 1 cm2"):
        surface_temperature_c(Surface(area_m2=1e-4, height_m=0.01, emissivity=typed(0.9)), power_w=500, air_c=25, emissivity=0.9)


@given(power=st.floats(1, 60), outside=st.floats(-10, 45))
def test_air_in_a_closed_case_is_warmer_than_its_wall_and_warms_with_the_heat(power, outside):
    """Two films lie behind each other, and each needs its drop."""
    case = Surface(area_m2=0.25, height_m=0.2, emissivity=EMISSIVITY["black plastic"])
    wall = surface_temperature_c(case, power_w=power, air_c=outside, emissivity=0.95)
    inside = sealed_air_c(case, power_w=power, outside_c=outside, emissivity=0.95)

    assert outside < wall < inside
    assert sealed_air_c(case, power_w=1.2 * power, outside_c=outside, emissivity=0.95) > inside


def test_the_air_in_a_case_has_a_band():
    """A warmer outside and a duller draught make the upper end."""
    case = Surface(area_m2=0.25, height_m=0.2, emissivity=EMISSIVITY["black plastic"])
    air = sealed_air(case, power_w=20, outside_c=typed(30.0, "degC", low=25.0, high=35.0))

    assert air.least < air.value < air.most
    assert air.most - air.least > 10
