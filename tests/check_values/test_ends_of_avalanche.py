"""Where the energy of an avalanche has no middle: nothing is left, or nothing is reached within a second."""

from service.derating.formulas import avalanche


def test_a_junction_at_its_limit_has_no_energy_left():
    """By hand: no kelvin to rise, so no impedance is small enough."""
    assert avalanche.thermal_energy_j(start_c=175, limit_c=175, breakdown_v=60, current_a=10, impedance=lambda seconds: 0.1 + seconds) == 0.0


def test_an_impedance_that_stays_below_what_is_allowed_within_a_second_sets_no_bound():
    """By hand: 2 x 150 K / (60 V x 10 A) = 0.5 K/W is allowed; 0.45 K/W a second reaches 0.45 at one second and 0.5 only later."""
    found = avalanche.thermal_energy_j(start_c=25, limit_c=175, breakdown_v=60, current_a=10, impedance=lambda seconds: 0.45 * seconds)

    assert found == float("inf")
