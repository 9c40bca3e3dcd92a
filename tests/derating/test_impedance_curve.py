"""Laws of an impedance read off points."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.derating.formulas.impedance_curve import impedance_from_points_kpw

POINTS = {"times_s": (1e-5, 1e-3, 1e-1), "impedances_kpw": (0.02, 0.21, 0.7)}


@given(early=st.floats(1e-7, 10), longer=st.floats(1, 1000), bound=st.floats(0.3, 2))
def test_it_never_falls_and_never_passes_the_bound(early, longer, bound):
    """RthJC bounds every impedance to the case."""
    first = impedance_from_points_kpw(time_s=early, **POINTS, bound_kpw=bound)
    later = impedance_from_points_kpw(time_s=early * longer, **POINTS, bound_kpw=bound)

    assert first <= later * (1 + 1e-12)
    assert later <= bound * (1 + 1e-12)


@given(share=st.floats(0, 1))
def test_a_power_law_is_met_exactly_between_its_points(share):
    """A straight line on double-logarithmic paper stays straight."""
    time = 1e-5 * 1e4**share
    points = {"times_s": (1e-5, 1e-1), "impedances_kpw": (0.01, 1.0)}

    assert impedance_from_points_kpw(time_s=time, **points, bound_kpw=5) == pytest.approx(0.01 * (time / 1e-5) ** 0.5)
