"""Copper conductors: their resistance, from the bare geometry or from what a standard guarantees."""

import numpy as np

COPPER_OHM_M = 1 / 58e6
COPPER_PER_K = 0.00393


def gauge_diameter_m(*, gauge: int) -> float:
    """Diameter of a solid wire of American wire gauge.

    Args:
        gauge: The number; 1/0 is 0, 2/0 is -1, 4/0 is -3. [1]

    Returns:
        Diameter. [m]

    Valid from 4/0 to 40.

    Source: astm-b258: No. 36 is 0.127 mm and 39 equal ratios lead to 92 times that at 4/0.
    """
    diameter_m: float = 0.127e-3 * 92 ** ((36 - gauge) / 39)
    return diameter_m


def round_area_m2(*, diameter_m: float) -> float:
    """Cross-section of a round wire.

    Args:
        diameter_m: Of the copper. [m]

    Returns:
        Area. [m**2]

    Valid for solid wire.

    Source: own, geometry.
    """
    return np.pi / 4 * diameter_m**2


def wire_resistance_ohm(
    *,
    length_m: float,
    area_m2: float,
    rise_k: float,
    resistivity_ohm_m: float = COPPER_OHM_M,
    coefficient_per_k: float = COPPER_PER_K,
) -> float:
    """Resistance of a copper conductor from its geometry.

    Args:
        length_m: Of the conductor. [m]
        area_m2: Of the copper. [m**2]
        rise_k: Temperature over 20 degC. [K]
        resistivity_ohm_m: At 20 degC; annealed copper where nothing is said. [ohm*m]
        coefficient_per_k: At 20 degC; annealed copper where nothing is said. [1/K]

    Returns:
        Resistance. [ohm]

    Valid for annealed copper between -50 and 150 degC.

    Source: nbs-100, 1/58 ohm mm2/m; coefficient 0.00393 per kelvin.
    """
    return resistivity_ohm_m * length_m / area_m2 * (1 + coefficient_per_k * rise_k)


def rated_wire_resistance_ohm(*, length_m: float, ohm_per_m: float, rise_k: float, coefficient_per_k: float = 0.004) -> float:
    """Largest resistance of a conductor that a standard's class guarantees, at its own temperature.

    Args:
        length_m: Of the conductor. [m]
        ohm_per_m: Largest at 20 degC. [ohm/m]
        rise_k: Temperature over 20 degC. [K]
        coefficient_per_k: The standard's own. [1/K]

    Returns:
        Resistance. [ohm]

    Valid for copper conductors of IEC 60228.

    Source: iec-60228, correction k = 250 / (230 + t), which is 1 / (1 + 0.004 (t - 20)).
    """
    return ohm_per_m * length_m * (1 + coefficient_per_k * rise_k)


def outer_radius_m(*, area_m2: float, conductors: int) -> float:
    """Radius of the round bundle that several equal conductors of one polarity make when laid side by side without gaps.

    Args:
        area_m2: Copper of one conductor. [m**2]
        conductors: How many. [1]

    Returns:
        Radius that counts for the loop's inductance. [m]

    Valid as a lower bound of the bundle's size, so the inductance comes out on the large side.

    Source: own; parallel conductors count by their outer geometry, not 1/n.
    """
    root: float = (area_m2 * conductors / np.pi) ** 0.5
    return root
