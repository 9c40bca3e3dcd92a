"""A plate in air against an independent package of heat-transfer correlations."""

import ht
import pytest
from fluids.atmosphere import ATMOSPHERE_1976
from hypothesis import given
from hypothesis import strategies as st

from service.derating.formulas.air import air_conductivity_wpmk, air_density_kgpm3, air_viscosity_pas
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


@given(kelvin=st.floats(230, 450))
def test_air_agrees_with_an_independent_package(kelvin):
    """PyPI ``fluids`` (which ``ht`` brings along), its own U.S. Standard Atmosphere 1976."""
    assert air_conductivity_wpmk(kelvin=kelvin) == pytest.approx(ATMOSPHERE_1976.thermal_conductivity(kelvin), rel=1e-6)
    assert air_viscosity_pas(kelvin=kelvin) == pytest.approx(ATMOSPHERE_1976.viscosity(kelvin), rel=1e-6)
    assert air_density_kgpm3(kelvin=kelvin) == pytest.approx(ATMOSPHERE_1976.density(kelvin, 101325), rel=1e-4)


@given(air=st.floats(-20, 60), rise=st.floats(1, 80), height=st.floats(0.02, 0.5))
def test_a_whole_film_agrees_with_independent_packages(air, rise, height):
    """Packages ``ht`` and ``fluids`` together: Nusselt number from air at the mean of surface and surroundings."""
    film = air + rise / 2 + 273.15
    conductivity, viscosity = ATMOSPHERE_1976.thermal_conductivity(film), ATMOSPHERE_1976.viscosity(film)
    kinematic = viscosity / ATMOSPHERE_1976.density(film, 101325)
    prandtl = viscosity * 3.5 * 287.053 / conductivity
    nusselt = ht.Nu_vertical_plate_Churchill(prandtl, 9.80665 / film * rise * height**3 / kinematic**2)

    assert convection_wpm2k(surface_c=air + rise, air_c=air, height_m=height) == pytest.approx(nusselt * conductivity / height, rel=1e-3)
