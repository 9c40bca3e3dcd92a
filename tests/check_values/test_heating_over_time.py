"""Published and independently solved figures of transient heating; the expected numbers are copied from their sources, never computed here."""

import numpy as np
import pytest

from service.derating.formulas.impedance_curve import impedance_from_points_kpw
from service.derating.formulas.ladder import drawn_capacities_jpk, foster_to_ladder, ladder_to_foster
from service.derating.formulas.transient import (
    current_ramp_rise_k,
    falling_triangle_rise_k,
    foster_impedance_kpw,
    foster_train_peak_k,
    foster_train_valley_k,
    four_term_impedance_kpw,
    pulse_rise_k,
    short_time_impedance_kpw,
    superposed_rise_k,
    two_term_impedance_kpw,
)

# The pairs printed in Fig 13 of the IRFR3806 sheet (PD-97313) and in Fig 11 of the IRFP1405 sheet (PD-95810).
IRFR3806 = {"resistances_kpw": (0.6086, 0.9926, 0.5203), "time_constants_s": (0.00026, 0.001228, 0.00812)}
IRFP1405 = {"resistances_kpw": (0.2529, 0.2368), "time_constants_s": (0.0008, 0.014283)}


def as_drawn(network: dict[str, tuple[float, ...]]) -> dict[str, tuple[float, ...]]:
    """The pairs of a network that its sheet draws as a ladder."""
    capacities = drawn_capacities_jpk(**network)
    ohms, taus = ladder_to_foster(resistances_kpw=network["resistances_kpw"], capacities_jpk=capacities)
    return {"resistances_kpw": ohms, "time_constants_s": taus}


@pytest.mark.parametrize(
    ("power_w", "impedance_kpw", "start_c", "expected_c"),
    [
        pytest.param(800, 0.4, 25, 345, id="CV26: NXP/Nexperia AN11158 rev 4 (2014) 3.1.2.1, duty 0.2"),
        pytest.param(800, 0.1, 25, 105, id="CV27: NXP/Nexperia AN11158 rev 4 (2014) 3.1.2.1, single pulse"),
        pytest.param(1, 35, 55, 90, id="CV28: Fairchild AN-558, 0.14 x 250 K/W"),
    ],
)
def test_a_pulse_heats_as_the_application_notes_print(power_w, impedance_kpw, start_c, expected_c):
    """Power times impedance above the start."""
    assert start_c + pulse_rise_k(power_w=power_w, impedance_kpw=impedance_kpw) == pytest.approx(expected_c)


def test_a_foster_step_meets_the_simulated_figures():
    """CV29: own closed form and ngspice on the IRFR3806 pairs, 100 W."""
    rises = 100 * foster_impedance_kpw(time_s=np.array([1e-4, 1e-3, 1e-2, 1e-1]), **IRFR3806)

    assert rises == pytest.approx([27.831, 120.883, 196.936, 212.150], rel=1e-4)


def test_a_pulse_train_meets_the_simulated_figures():
    """CV30: closed form, superposition and ngspice on the IRFR3806 pairs, 50 W for 1 ms of every 10 ms."""
    train = {"power_w": 50, "pulse_s": 1e-3, "period_s": 1e-2, **IRFR3806}

    assert foster_train_peak_k(**train) == pytest.approx(61.692, rel=1e-4)
    assert foster_train_valley_k(**train) == pytest.approx(1.4233, rel=1e-4)


def test_the_duty_rules_lie_where_the_handbook_found_them():
    """Same train: two terms give 65.00 K and four terms 62.00 K against the exact 61.692 K (own, section 6)."""
    z = {name: foster_impedance_kpw(time_s=t, **IRFR3806) for name, t in {"pulse": 1e-3, "period": 1e-2, "both": 1.1e-2}.items()}
    two = two_term_impedance_kpw(duty=0.1, steady_kpw=2.1215, pulse_kpw=z["pulse"])
    four = four_term_impedance_kpw(duty=0.1, steady_kpw=2.1215, pulse_kpw=z["pulse"], period_kpw=z["period"], period_and_pulse_kpw=z["both"])

    assert 50 * two == pytest.approx(65.00, abs=0.005)
    assert 50 * four == pytest.approx(62.00, abs=0.005)


def test_foster_pairs_become_the_ladder_of_the_continued_fraction():
    """CV31: continued fraction in 60 digits and matrix exponential."""
    ohms, farads = foster_to_ladder(**IRFR3806)

    assert ohms == pytest.approx([1.067769, 0.708774, 0.344957], rel=1e-5)
    assert farads == pytest.approx([3.112209e-4, 1.492476e-3, 2.137970e-2], rel=1e-5)


@pytest.mark.parametrize(
    ("network", "time_s", "expected_kpw", "rel"),
    [
        pytest.param(IRFR3806, 12e-6, 0.02745, 5e-4, id="CV32: IRFR3806 PD-97313 Fig 13 as a ladder, ngspice"),
        pytest.param(IRFR3806, 12e-6, 0.02761, 0.01, id="CV32: the printed curve itself, digitised"),
        pytest.param(IRFP1405, 100.1e-6, 0.02958, 0.01, id="CV33: IRFP1405 PD-95810 Fig 11 digitised, 100 us"),
        pytest.param(IRFP1405, 1.597e-3, 0.22464, 0.01, id="CV33: IRFP1405 PD-95810 Fig 11 digitised, 1.6 ms"),
        pytest.param(IRFP1405, 13.04e-3, 0.37905, 0.01, id="CV33: IRFP1405 PD-95810 Fig 11 digitised, 13 ms"),
    ],
)
def test_pairs_drawn_as_a_ladder_meet_the_printed_curve(network, time_s, expected_kpw, rel):
    """What the maker drew is what the maker's curve shows."""
    assert foster_impedance_kpw(time_s=time_s, **as_drawn(network)) == pytest.approx(expected_kpw, rel=rel)


@pytest.mark.parametrize(
    ("network", "expected_kpw"),
    [pytest.param(IRFR3806, 2.12, id="CV34: IRFR3806"), pytest.param(IRFP1405, 0.49, id="CV34: IRFP1405")],
)
def test_after_a_long_time_the_pairs_add_up_to_the_printed_resistance(network, expected_kpw):
    """CV34: datasheet tables against the sheets' RthJC."""
    assert foster_impedance_kpw(time_s=100, **network) == pytest.approx(expected_kpw, abs=0.005)


@pytest.mark.parametrize(("duty", "time_s", "expected_kpw"), [(0.01, 1.2e-6, 0.02407), (0.02, 12e-6, 0.07028)])
def test_the_two_term_rule_meets_the_printed_duty_curves(duty, time_s, expected_kpw):
    """CV35: IRFR3806 PD-97313 Fig 13, digitised."""
    single = foster_impedance_kpw(time_s=time_s, **as_drawn(IRFR3806))

    assert two_term_impedance_kpw(duty=duty, steady_kpw=2.1215, pulse_kpw=single) == pytest.approx(expected_kpw, rel=0.02)


def test_shape_factors_of_a_ramp_and_a_triangle():
    """CV50: analytic and numerical integration of Z = sqrt(t)."""
    assert current_ramp_rise_k(peak_power_w=1, impedance_kpw=1) == pytest.approx(0.53333, abs=1e-5)
    assert falling_triangle_rise_k(peak_power_w=1, impedance_kpw=1) == pytest.approx(0.47140, abs=1e-5)


def test_short_times_follow_the_square_root():
    """Section 6: from its own 100 us point the IRFR3806 extrapolates to 0.088 K/W at 10 us."""
    known = foster_impedance_kpw(time_s=1e-4, **IRFR3806)

    assert short_time_impedance_kpw(time_s=1e-5, known_s=1e-4, known_kpw=known) == pytest.approx(0.088, abs=5e-4)


def test_a_staircase_is_the_sum_of_its_steps():
    """By hand, with an impedance of 2 K/W per second: 10 W for 3 s, then 4 W for 2 s: 2 * (10 * 5 - 6 * 2) = 76 K."""
    rise = superposed_rise_k(time_s=5.0, powers_w=[10.0, 4.0], starts_s=[0.0, 3.0], impedance=lambda t: 2.0 * t)

    assert rise == pytest.approx(76.0)


@pytest.mark.parametrize(
    ("time_s", "expected_kpw"),
    [
        pytest.param(1e-3, 0.2, id="on a point"),
        pytest.param(10e-3, 0.4, id="by hand: half way in the logarithms between 0.2 and 0.8"),
        pytest.param(1e-5, 0.2, id="before the first point its own value bounds"),
        pytest.param(1.0, 1.0, id="after the last point RthJC bounds"),
    ],
)
def test_typed_points_are_joined_in_the_logarithms(time_s, expected_kpw):
    """Two points, 0.2 K/W at 1 ms and 0.8 K/W at 100 ms, RthJC 1 K/W."""
    points = {"times_s": (1e-3, 100e-3), "impedances_kpw": (0.2, 0.8), "bound_kpw": 1.0}

    assert impedance_from_points_kpw(time_s=time_s, **points) == pytest.approx(expected_kpw)
