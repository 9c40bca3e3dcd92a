"""Published and independently solved figures of safe area, avalanche, short circuit and loop inductance."""

import numpy as np
import pytest
from scipy.integrate import dblquad, quad

from service.derating.formulas import avalanche, inductance, interruption, safe_area
from service.derating.formulas.ladder import drawn_capacities_jpk, ladder_to_foster
from service.derating.formulas.transient import foster_impedance_kpw

OHMS, TAUS = (0.6086, 0.9926, 0.5203), (0.00026, 0.001228, 0.00812)  # printed in Fig 13 of the IRFR3806 sheet (PD-97313)


def test_direct_current_on_the_power_line():
    """CV05: NXP/Nexperia AN11158 rev 4 (2014) eq. 12, 40 V and 2.93 K/W."""
    assert safe_area.power_line_current_a(limit_c=175, case_c=25, impedance_kpw=2.93, voltage_v=40) == pytest.approx(1.28, abs=0.005)


def test_a_safe_area_line_at_a_warm_case():
    """CV36: TI SLUAAO2 eq. 2, 7.3 A at 25 degC."""
    assert safe_area.current_at_case_a(current_25_a=7.3, case_c=100, limit_c=150) == pytest.approx(2.9, abs=0.05)


def test_a_pulse_length_between_two_lines():
    """CV37: TI SLUAAO2 eq. 8-10, 7.3 A at 10 ms and 4.1 A at 100 ms."""
    lines = {"first_a": 7.3, "first_s": 0.01, "second_a": 4.1, "second_s": 0.1}
    between = safe_area.current_between_pulses_a(**lines, pulse_s=0.02)

    assert safe_area.pulse_slope(**lines) == pytest.approx(-0.25, abs=0.001)
    assert between == pytest.approx(6.1, abs=0.06)
    assert safe_area.current_at_case_a(current_25_a=between, case_c=100, limit_c=150) == pytest.approx(2.4, abs=0.06)


def test_the_square_pulse_that_stands_for_a_ramp():
    """CV38: TI SLUAAO2 eq. 22-23, 12 V to zero in 20 ms at 6 A: 72 W for 10 ms."""
    energy = safe_area.falling_voltage_energy_j(start_v=12, current_a=6, ramp_s=0.02)

    assert energy == pytest.approx(0.72)
    assert safe_area.equivalent_pulse_s(energy_j=energy, peak_power_w=72) == pytest.approx(0.010)


def test_a_safe_area_voltage_at_a_warm_case():
    """CV39: NXP/Nexperia AN11158 rev 4 (2014) p.26, 20 V at 25 degC."""
    assert safe_area.voltage_at_case_v(voltage_25_v=20, case_c=100, limit_c=175) == pytest.approx(10)


def test_the_ends_of_a_direct_current_line():
    """CV40: onsemi AND9093/D rev 1, 1 W, 33.5 mohm, 30 V."""
    corner = safe_area.resistance_line_current_a(power_w=1, hot_resistance_ohm=0.0335)

    assert safe_area.power_line_current_a(limit_c=150, case_c=25, impedance_kpw=125, voltage_v=30) == pytest.approx(0.03, abs=0.005)
    assert corner == pytest.approx(5.5, abs=0.05)
    assert corner * 0.0335 == pytest.approx(0.18, abs=0.005)


@pytest.mark.parametrize(
    ("part", "circuit", "expected_mj"),
    [
        ("IRF510", {"inductance_h": 910e-6, "current_a": 5.6, "supply_v": 25, "breakdown_v": 100}, 19),
        ("IRF540", {"inductance_h": 440e-6, "current_a": 28, "supply_v": 25, "breakdown_v": 100}, 230),
        ("IRFP450", {"inductance_h": 7.9e-3, "current_a": 14, "supply_v": 50, "breakdown_v": 500}, 860),
        ("IRFP240", {"inductance_h": 1.9e-3, "current_a": 20, "supply_v": 50, "breakdown_v": 200}, 510),
    ],
)
def test_energies_printed_with_the_supply(part, circuit, expected_mj):
    """CV41: Fairchild Rev. B sheets (2002), note 4."""
    assert avalanche.energy_with_supply_j(**circuit) * 1e3 == pytest.approx(expected_mj, rel=0.01), part


@pytest.mark.parametrize(
    ("part", "inductance_h", "current_a", "expected_mj", "tolerance"),
    [
        ("CV42: IRF1404", 85e-6, 121, 620, {"rel": 0.006}),
        ("CV42: IRF3205", 138e-6, 62, 264, {"rel": 0.006}),
        ("CV42: IRFZ44N", 0.48e-3, 25, 150, {"rel": 0.006}),
        ("CV42: IRFZ48N", 0.37e-3, 32, 190, {"rel": 0.006}),
        ("CV43: CSD19535KTT", 1e-4, 95, 451, {"abs": 0.5}),
        ("CV43: CSD18510KTT", 1e-4, 81, 328, {"abs": 0.5}),
        ("CV43: CSD19505KCS", 1e-4, 101, 510, {"abs": 0.5}),
        ("CV43: CSD19501KCS", 1e-4, 65, 211, {"abs": 0.5}),
        ("CV43: SiR418DP", 1e-4, 30, 45, {"abs": 0.5}),
    ],
)
def test_energies_printed_without_the_supply(part, inductance_h, current_a, expected_mj, tolerance):
    """CV42 and CV43: IR, TI and Vishay datasheets."""
    energy = avalanche.energy_without_supply_j(inductance_h=inductance_h, current_a=current_a)

    assert energy * 1e3 == pytest.approx(expected_mj, **tolerance), part


@pytest.mark.parametrize(("current_a", "time_s", "expected_mj"), [(61.8, 60e-6, 133), (40, 200e-6, 286)])
def test_energy_of_a_triangle(current_a, time_s, expected_mj):
    """CV44: NXP/Nexperia AN11158 rev 4 (2014) p.10, 71.5 V."""
    assert avalanche.triangle_energy_j(breakdown_v=71.5, current_a=current_a, time_s=time_s) * 1e3 == pytest.approx(expected_mj, abs=0.6)


@pytest.mark.parametrize(("start_c", "expected_mj"), [(25, 73.2), (50, 59.6), (75, 46.7), (100, 34.3), (125, 22.4), (150, 10.9)])
def test_the_thermal_form_meets_the_printed_temperature_curve(start_c, expected_mj):
    """CV45: IRFR3806 PD-97313 Fig 15, digitised, 25 A, 1.3 x 60 V, its impedance read as the ladder that the sheet draws."""
    capacities = drawn_capacities_jpk(resistances_kpw=OHMS, time_constants_s=TAUS)
    ohms, taus = ladder_to_foster(resistances_kpw=OHMS, capacities_jpk=capacities)
    energy = avalanche.thermal_energy_j(
        start_c=start_c,
        limit_c=175,
        breakdown_v=78,
        current_a=25,
        impedance=lambda t: foster_impedance_kpw(time_s=t, resistances_kpw=ohms, time_constants_s=taus),
    )

    assert energy * 1e3 == pytest.approx(expected_mj, rel=0.015)


@pytest.mark.parametrize(("start_c", "printed_mj"), [(50, 59.6), (75, 46.7), (100, 34.3), (125, 22.4), (150, 10.9)])
def test_the_straight_rule_stays_below_the_printed_temperature_curve(start_c, printed_mj):
    """CV45 again: a rule without the sheet's curve must not promise more than the curve, nor less than four fifths of it."""
    energy = avalanche.linear_energy_j(rated_j=73e-3, start_c=start_c, limit_c=175) * 1e3

    assert 0.8 * printed_mj <= energy <= printed_mj


def test_the_impedance_that_an_avalanche_may_meet():
    """By hand: 150 K, 78 V, 25 A: 2 x 150 / 1950 = 0.15385 K/W."""
    assert avalanche.allowed_impedance_kpw(start_c=25, limit_c=175, breakdown_v=78, current_a=25) == pytest.approx(0.15385, abs=1e-5)


def test_how_long_an_avalanche_lasts():
    """CV46: formula of Fairchild note 4 with IRF510's numbers, ODE and ngspice: 67.95 us and 19.03 mJ."""
    circuit = {"inductance_h": 910e-6, "current_a": 5.6, "breakdown_v": 100, "supply_v": 25}

    assert avalanche.avalanche_time_s(**circuit) * 1e6 == pytest.approx(67.95, rel=0.002)
    assert avalanche.energy_with_supply_j(**circuit) * 1e3 == pytest.approx(19.03, rel=0.002)


def test_the_prospective_current_of_a_strong_pack():
    """SC-01: Ohm's law, 26.6 V over 4 mohm."""
    assert interruption.prospective_current_a(supply_v=26.6, loop_ohm=0.004) == pytest.approx(6650, abs=1)


@pytest.mark.parametrize(("time_s", "expected_a", "expected_mj"), [(61e-6, 538.6, 217.5), (244e-6, 1700.1, 2167.7)])
def test_the_current_during_the_protection_delay(time_s, expected_a, expected_mj):
    """CV51: closed form and ODE, 14.4 V, 4.176 mohm, 1.5 uH; and back again."""
    loop = {"supply_v": 14.4, "loop_ohm": 4.176e-3, "inductance_h": 1.5e-6}
    current = interruption.fault_current_a(**loop, time_s=time_s)

    assert current == pytest.approx(expected_a, rel=5e-4)
    assert avalanche.energy_without_supply_j(inductance_h=1.5e-6, current_a=current) * 1e3 == pytest.approx(expected_mj, rel=5e-4)
    assert interruption.time_to_current_s(**loop, current_a=expected_a) == pytest.approx(time_s, rel=5e-4)


@pytest.mark.parametrize(("time_s", "expected_a2s"), [(15e-6, 0.10), (61e-6, 6.15), (100e-6, 25.1), (244e-6, 276), (488e-6, 1450)])
def test_what_a_short_circuit_lets_through(time_s, expected_a2s):
    """Section 9, table: numerical integration of the same loop."""
    let_through = interruption.let_through_a2s(supply_v=14.4, loop_ohm=4.176e-3, inductance_h=1.5e-6, time_s=time_s)

    assert let_through == pytest.approx(expected_a2s, rel=0.005, abs=0.005)
    assert let_through == pytest.approx(quad(lambda t: (14.4 / 4.176e-3 * (1 - np.exp(-t * 4.176e-3 / 1.5e-6))) ** 2, 0, time_s)[0], rel=1e-6)


def test_heat_of_one_switch_during_the_delay():
    """By hand: 276 A2s over six switches of 4.5 mohm: 276 / 36 x 0.0045 = 0.0345 J."""
    assert interruption.conduction_energy_j(let_through_a2s=276, resistance_ohm=0.0045, switches=6) == pytest.approx(0.0345)


def test_overshoot_and_the_gentlest_fall():
    """By hand: 1.5 uH and 600 A in 30 us make 30 V; to stay 20 V above the supply takes 45 us."""
    assert interruption.overshoot_v(inductance_h=1.5e-6, current_a=600, fall_s=30e-6) == pytest.approx(30)
    assert interruption.gentlest_fall_s(inductance_h=1.5e-6, current_a=600, breakdown_v=60, supply_v=40) == pytest.approx(45e-6)


def test_inductance_of_a_wire_a_pair_and_a_rectangle():
    """CV49: closed forms checked by Neumann integrals; 25 mm2 wire."""
    wire = {"radius_m": 2.82095e-3}

    assert inductance.straight_wire_h(length_m=1, **wire) * 1e6 == pytest.approx(1.16277, rel=1e-4)
    assert inductance.wire_pair_h(length_m=1, spacing_m=0.02, **wire) * 1e6 == pytest.approx(0.88346, rel=1e-4)
    assert inductance.rectangle_h(width_m=1, height_m=0.3, **wire) * 1e6 == pytest.approx(2.39090, rel=1e-4)


@pytest.mark.parametrize(
    ("form", "sizes"),
    [
        (inductance.straight_wire_h, {"length_m": 1}),
        (inductance.wire_pair_h, {"length_m": 1, "spacing_m": 0.02}),
        (inductance.rectangle_h, {"width_m": 1, "height_m": 0.3}),
        (inductance.circular_loop_h, {"loop_radius_m": 0.25}),
    ],
)
def test_a_loop_of_twice_the_size_has_twice_the_inductance(form, sizes):
    """Inductance grows in proportion when everything grows, the wire too (dimensional analysis)."""
    small = form(**sizes, radius_m=2.82095e-3)

    assert form(**{name: 2 * size for name, size in sizes.items()}, radius_m=2 * 2.82095e-3) == pytest.approx(2 * small)


def test_inductance_of_a_round_loop():
    """Section 9: R 0.25 m of the same wire is 1.512 uH."""
    assert inductance.circular_loop_h(loop_radius_m=0.25, radius_m=2.82095e-3) * 1e6 == pytest.approx(1.512, abs=5e-4)


def neumann_uh(*, length_m, distance_m):
    """Mutual inductance of two parallel filaments by Neumann's double integral."""
    return 0.1 * dblquad(lambda x, y: 1 / np.hypot(x - y, distance_m), 0, length_m, 0, length_m)[0]


def test_a_straight_wire_agrees_with_neumanns_integral():
    """Self inductance is the mutual one at the wire's geometric mean distance, r exp(-1/4)."""
    expected = neumann_uh(length_m=0.2, distance_m=5e-3 * np.exp(-0.25))

    assert inductance.straight_wire_h(length_m=0.2, radius_m=5e-3) * 1e6 == pytest.approx(expected, rel=0.02)
