"""A plate in air against an independent package of heat-transfer correlations."""

import ht
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.derating.formulas.plate import convection_wpm2k, radiation_wpm2k, vertical_plate_nusselt


@given(prandtl=st.floats(0.6, 0.8), grashof=st.floats(1e3, 1e11))
def test_nusselt_agrees_with_an_independent_package(prandtl, grashof):
    """PyPI ``ht``, Nu_vertical_plate_Churchill, over the whole range."""
    expected = ht.Nu_vertical_plate_Churchill(prandtl, grashof)

    assert vertical_plate_nusselt(prandtl=prandtl, grashof_number=grashof) == pytest.approx(expected, rel=1e-9)


@given(surface=st.floats(30, 140), air=st.floats(-20, 29), emissivity=st.floats(0.05, 1))
def test_radiation_agrees_with_an_independent_package(surface, air, emissivity):
    """PyPI ``ht``, q_rad, divided by the difference of temperature."""
    expected = ht.q_rad(emissivity, surface + 273.15, air + 273.15) / (surface - air)

    assert radiation_wpm2k(surface_c=surface, surroundings_c=air, emissivity=emissivity) == pytest.approx(expected, rel=1e-5)


@given(air=st.floats(-20, 60), rise=st.floats(1, 80), height=st.floats(0.02, 0.5))
def test_a_hotter_plate_convects_better_and_a_taller_one_worse(air, rise, height):
    """Convection grows with the rise and falls, or stays, with height."""
    here = convection_wpm2k(surface_c=air + rise, air_c=air, height_m=height)

    assert convection_wpm2k(surface_c=air + 1.2 * rise, air_c=air, height_m=height) > here
    assert 1 < here < 25
