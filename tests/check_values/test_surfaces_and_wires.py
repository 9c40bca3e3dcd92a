"""Published and independently solved figures of surfaces in air, thermal chains, copper wire, shunts and body diodes."""

from itertools import pairwise

import pytest

from service.derating.formulas import body_diode, conductor, plate, shunt
from service.derating.formulas.air import air_conductivity_wpmk, air_density_kgpm3, air_prandtl, air_viscosity_pas

OHM_PER_1000_FT = 304.8


def test_one_watt_on_a_plain_board():
    """CV53: Nexperia AN90003 eq. 9, 130 degC, 80 degC, 50 K/W."""
    assert plate.allowed_loss_w(limit_c=130, ambient_c=80, resistance_kpw=50) == pytest.approx(1.0)


def test_a_measured_chain_splits_into_its_steps():
    """CV54: Nexperia AN90003 Table 9, 0.5 W from 95.1 degC down to 65.4 degC."""
    degrees = [95.1, 94.7, 88.6, 86.6, 79.1, 65.4]
    steps = [plate.step_resistance_kpw(hot_c=hot, cold_c=cold, power_w=0.5) for hot, cold in pairwise(degrees)]

    assert steps == pytest.approx([0.8, 12.2, 4, 15, 27.4], abs=0.05)
    assert sum(steps) == pytest.approx(59.4, abs=0.05)


@pytest.mark.parametrize(("power_w", "expected_kpw"), [(5.05, 30.69), (9.6, 16.15)])
def test_junction_to_air_implied_by_a_published_limit(power_w, expected_kpw):
    """CV55: Nexperia AN90003 Tables 10 and 12, junction 175 degC in air of 20 degC."""
    assert plate.step_resistance_kpw(hot_c=175, cold_c=20, power_w=power_w) == pytest.approx(expected_kpw, abs=0.05)


def test_churchill_and_chu_on_a_printed_example():
    """CV56: Incropera 6th edition, example 9.2, as carried by the Python package ht 1.2.0."""
    assert plate.vertical_plate_nusselt(prandtl=0.69, grashof_number=2.63e9) == pytest.approx(147.16185, rel=1e-6)


def test_a_pad_under_a_tab():
    """Section 11: 0.178 mm of 0.9 W/(m K) under 10 x 15 mm is 1.32 K/W."""
    pad = plate.layer_resistance_kpw(thickness_m=0.178e-3, conductivity_wpmk=0.9, area_m2=1.5e-4)

    assert pad == pytest.approx(1.32, abs=0.005)


@pytest.mark.parametrize(("surface_c", "air_c", "emissivity", "expected"), [(85, 40, 0.9, 7.75), (85, 40, 0.05, 0.43), (60, 25, 0.9, 6.44)])
def test_radiation_of_a_plate(surface_c, air_c, emissivity, expected):
    """Section 11, own figures by hand from the law of Stefan and Boltzmann."""
    radiated = plate.radiation_wpm2k(surface_c=surface_c, surroundings_c=air_c, emissivity=emissivity)

    assert radiated == pytest.approx(expected, abs=0.005)


@pytest.mark.parametrize(("surface_c", "air_c", "expected"), [(85, 40, 6.08), (60, 25, 5.82)])
def test_convection_of_a_plate(surface_c, air_c, expected):
    """Section 11, package ht with textbook air; other air tables move it by less than 2 %."""
    assert plate.convection_wpm2k(surface_c=surface_c, air_c=air_c, height_m=0.1) == pytest.approx(expected, rel=0.02)


def test_the_resistance_of_a_black_plate():
    """Section 11: 100 x 100 mm, both sides, 85 degC in air of 40 degC, emissivity 0.9: 3.61 K/W, from 6.08 + 7.75 W/(m2 K)."""
    assert plate.surface_resistance_kpw(transfer_wpm2k=6.08 + 7.75, area_m2=0.02) == pytest.approx(3.61, abs=0.01)


def test_grashof_of_a_plate():
    """Section 11: Rayleigh 2.43e6 for 0.1 m, 85 degC in 40 degC; two tables of air differ by 2 % in viscosity, so 4 % here."""
    rayleigh = plate.grashof(surface_c=85, air_c=40, height_m=0.1) * air_prandtl(kelvin=335.65)

    assert rayleigh == pytest.approx(2.43e6, rel=0.04)


def test_air_of_the_standard_atmosphere():
    """U.S. Standard Atmosphere 1976, sea level, 288.15 K, as quoted by several programs that test against its table III."""
    assert air_density_kgpm3(kelvin=288.15) == pytest.approx(1.2250, abs=5e-5)
    assert air_viscosity_pas(kelvin=288.15) == pytest.approx(1.7894e-5, abs=5e-10)
    assert air_conductivity_wpmk(kelvin=288.15) == pytest.approx(2.5326e-2, abs=5e-6)


@pytest.mark.parametrize(("gauge", "expected_mm", "tolerance_mm"), [(12, 2.0525, 5e-4), (36, 0.127, 0), (-3, 11.684, 1e-3)])
def test_wire_gauge_diameters(gauge, expected_mm, tolerance_mm):
    """AWG-01, AWG-02, AWG-03: wire tables and the definition in ASTM B258-02."""
    assert conductor.gauge_diameter_m(gauge=gauge) * 1e3 == pytest.approx(expected_mm, abs=tolerance_mm + 1e-12)


@pytest.mark.parametrize(
    ("gauge", "expected", "tolerance"),
    [(12, 1.588, 1e-3), (10, 0.9989, 2e-4), (16, 4.016, 1e-3), (2, 0.1563, 1e-4), (-3, 0.0490, 1e-4)],
)
def test_wire_gauge_resistances(gauge, expected, tolerance):
    """AWG-04, AWG-05, AWG-06: published wire tables, ohm per 1000 ft at 20 degC."""
    area = conductor.round_area_m2(diameter_m=conductor.gauge_diameter_m(gauge=gauge))

    assert conductor.wire_resistance_ohm(length_m=OHM_PER_1000_FT, area_m2=area, rise_k=0) == pytest.approx(expected, abs=tolerance)


def test_copper_of_the_wire_tables():
    """RES-01: NBS Handbook 100 (1966): 0.017241 ohm mm2/m at 20 degC."""
    assert conductor.wire_resistance_ohm(length_m=1, area_m2=1e-6, rise_k=0) == pytest.approx(0.017241, abs=1e-6)


@pytest.mark.parametrize(("degrees_c", "expected_ohm_per_km"), [(75, 6.3371), (105, 6.9515)])
def test_warm_wire(degrees_c, expected_ohm_per_km):
    """RES-02: NBS Handbook 100 with the annealed-copper coefficient, 12 AWG."""
    area = conductor.round_area_m2(diameter_m=conductor.gauge_diameter_m(gauge=12))

    assert conductor.wire_resistance_ohm(length_m=1000, area_m2=area, rise_k=degrees_c - 20) == pytest.approx(expected_ohm_per_km, abs=1e-3)


def test_drop_of_four_wires():
    """RES-03: four of 10 AWG, 0.15 m, 80 A at 20 degC: 9.831 mV and 0.7865 W; AWG-07: 21.045 mm2."""
    area = 4 * conductor.round_area_m2(diameter_m=conductor.gauge_diameter_m(gauge=10))
    resistance = conductor.wire_resistance_ohm(length_m=0.15, area_m2=area, rise_k=0)

    assert area * 1e6 == pytest.approx(21.045, abs=0.01)
    assert 80 * resistance * 1e3 == pytest.approx(9.831, abs=0.01)
    assert 80**2 * resistance == pytest.approx(0.7865, abs=1e-3)


@pytest.mark.parametrize(("degrees_c", "factor"), [(5, 1.064), (25, 0.980), (50, 0.893), (75, 0.820), (100, 0.758)])
def test_the_standards_own_temperature_correction(degrees_c, factor):
    """KT-01: IEC 60228 table of factors that bring a resistance back to 20 degC."""
    warm = conductor.rated_wire_resistance_ohm(length_m=1, ohm_per_m=0.780e-3, rise_k=degrees_c - 20)

    assert 0.780e-3 / warm == pytest.approx(factor, abs=5e-4)


def test_a_longer_rated_conductor_has_more_resistance():
    """By hand: 2.5 m of 0.780 mohm/m at 45 degC is 1.95 x 1.1 = 2.145 mohm."""
    assert conductor.rated_wire_resistance_ohm(length_m=2.5, ohm_per_m=0.780e-3, rise_k=25) == pytest.approx(2.145e-3)


def test_radius_of_a_bundle():
    """By hand: four conductors of pi mm2 count as one of 4 pi mm2, radius 2 mm."""
    assert conductor.outer_radius_m(area_m2=3.14159265e-6, conductors=4) == pytest.approx(2e-3)


def test_shunt_figures_by_hand():
    """By hand: 80 A through 0.25 mohm is 1.6 W; 5 W is 141.42 A; 50 mV trips at 200 A; 50 ppm/K over 100 K is half a percent."""
    assert shunt.shunt_power_w(current_a=80, resistance_ohm=0.25e-3) == pytest.approx(1.6)
    assert shunt.largest_shunt_current_a(power_w=5, resistance_ohm=0.25e-3) == pytest.approx(141.42, abs=0.005)
    assert shunt.trip_current_a(trip_v=0.05, resistance_ohm=0.25e-3) == pytest.approx(200)
    assert shunt.warm_resistance_ohm(resistance_ohm=1.0, coefficient_per_k=50e-6, rise_k=100) == pytest.approx(1.005)


def test_body_diode_against_channel():
    """CV60: exact rational arithmetic, 80 A, 0.8 V, six parts of 3 mohm x 1.5, 40 K/W, 60 K allowed."""
    part = body_diode.part_diode_loss_w(current_a=80, diode_v=0.8, switches=6)
    channel = body_diode.part_channel_loss_w(current_a=80, hot_resistance_ohm=4.5e-3, switches=6)

    assert body_diode.bank_diode_loss_w(current_a=80, diode_v=0.8) == pytest.approx(64, abs=1e-3)
    assert part == pytest.approx(10.667, abs=1e-3)
    assert channel == pytest.approx(0.800, abs=1e-3)
    assert part / channel == pytest.approx(13.333, abs=1e-3)
    assert part * 40 == pytest.approx(426.667, abs=0.02)
    assert body_diode.safe_diode_current_a(allowed_rise_k=60, resistance_kpw=40, diode_v=0.8) == pytest.approx(1.875, abs=1e-3)


def test_time_until_a_body_has_warmed():
    """By hand: half of the settled rise is reached after ln 2 time constants; 2 K/W x 50 J/K x 0.693147 = 69.3147 s."""
    heating = {"power_w": 30, "resistance_kpw": 2, "capacity_jpk": 50}

    assert body_diode.time_to_rise_s(allowed_rise_k=30, **heating) == pytest.approx(69.3147, abs=1e-4)
    assert body_diode.time_to_rise_s(allowed_rise_k=61, **heating) == float("inf")
