"""The transient impedance that a judgement takes from a part: pairs, points, or the bound alone."""

import numpy as np
import pytest

from service.derating.case_impedance import case_impedance, has_impedance
from service.facts.switch import Switch

PAIRS = ((0.1, 0.3e-3), (0.3, 3e-3), (0.4, 20e-3))
TIMES = np.geomspace(1e-7, 10, 60)


def part(*, pairs=(), points=()):
    """A part of which only the impedance matters."""
    return Switch(marking="A", transient_foster=pairs, transient_points=points)


def test_without_a_curve_the_settled_resistance_bounds_every_time():
    """0.8 K/W at any time."""
    assert not has_impedance(part())
    assert case_impedance(part(), settled_kpw=0.8)(TIMES) == pytest.approx(np.full(60, 0.8))


def test_pairs_are_the_foster_sum_by_hand():
    """At 3 ms: 0.1 (1 - e^-10) + 0.3 (1 - e^-1) + 0.4 (1 - e^-0.15) = 0.0999955 + 0.1896362 + 0.0557168 = 0.3453485 K/W."""
    assert case_impedance(part(pairs=PAIRS), settled_kpw=0.8)(np.array(3e-3)) == pytest.approx(0.3453485, abs=1e-6)


def test_pairs_that_fall_short_are_raised_to_the_settled_resistance():
    """Typical pairs of 0.8 K/W under a largest resistance of 1 K/W grow by a quarter."""
    assert case_impedance(part(pairs=PAIRS), settled_kpw=1.0)(np.array(100.0)) == pytest.approx(1.0)
    assert case_impedance(part(pairs=PAIRS), settled_kpw=1.0)(np.array(3e-3)) == pytest.approx(1.25 * 0.3453485, abs=1e-6)


def test_below_their_shortest_time_pairs_follow_the_square_root():
    """At a hundredth of the shortest time constant: a tenth of the impedance there, by hand 0.1 (1 - 1/e) + 0.3 x 0.095163 + 0.4 x 0.014888."""
    at_shortest = 0.0632121 + 0.0285488 + 0.0059551

    assert case_impedance(part(pairs=PAIRS), settled_kpw=0.8)(np.array(3e-6)) == pytest.approx(at_shortest / 10, rel=1e-4)


POINTS = ((1e-5, 0.02), (1e-3, 0.2), (0.1, 0.7))


@pytest.mark.parametrize("switch", [part(pairs=PAIRS), part(points=POINTS), part()], ids=["pairs", "points", "bound"])
def test_every_form_rises_and_ends_at_the_settled_resistance(switch):
    """An impedance never falls and never passes RthJC."""
    curve = case_impedance(switch, settled_kpw=0.8)(TIMES)

    assert np.all(np.diff(curve) >= -1e-12)
    assert np.all(curve <= 0.8 + 1e-12)
    assert curve[-1] == pytest.approx(0.8)
