"""Dry air at the sea-level pressure of the standard atmosphere: what natural convection needs to know of it."""

GAS_CONSTANT_JPKGK = 287.053
SEA_LEVEL_PA = 101325.0
HEAT_CAPACITY_JPKGK = 1004.7


def air_conductivity_wpmk(*, kelvin: float) -> float:
    """Thermal conductivity of air.

    Args:
        kelvin: Absolute temperature, as a plain number. [1]

    Returns:
        Conductivity in W/(m K), as a plain number. [1]

    Valid from 200 to 500 K.

    Source: us-atmosphere-1976 eq. 53, an empirical formula in kelvin.
    """
    conductivity: float = 2.64638e-3 * kelvin**1.5 / (kelvin + 245.4 * 10 ** (-12 / kelvin))
    return conductivity


def air_viscosity_pas(*, kelvin: float) -> float:
    """Dynamic viscosity of air.

    Args:
        kelvin: Absolute temperature, as a plain number. [1]

    Returns:
        Viscosity in Pa s, as a plain number. [1]

    Valid from 200 to 500 K.

    Source: us-atmosphere-1976 eq. 51, Sutherland's formula in kelvin.
    """
    viscosity: float = 1.458e-6 * kelvin**1.5 / (kelvin + 110.4)
    return viscosity


def air_density_kgpm3(*, kelvin: float) -> float:
    """Density of air.

    Args:
        kelvin: Absolute temperature, as a plain number. [1]

    Returns:
        Density in kg/m3, as a plain number. [1]

    Valid for a pack near sea level; at 2000 m it is a fifth less.

    Source: us-atmosphere-1976, ideal gas at 101325 Pa.
    """
    return SEA_LEVEL_PA / (GAS_CONSTANT_JPKGK * kelvin)


def air_prandtl(*, kelvin: float) -> float:
    """Prandtl number of air.

    Args:
        kelvin: Absolute temperature, as a plain number. [1]

    Returns:
        Prandtl number. [1]

    Valid from 200 to 500 K.

    Source: us-atmosphere-1976 eq. 51 and 53; heat capacity 3.5 times the gas constant.
    """
    return air_viscosity_pas(kelvin=kelvin) * HEAT_CAPACITY_JPKGK / air_conductivity_wpmk(kelvin=kelvin)
