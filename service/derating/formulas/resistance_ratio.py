"""How the on-resistance grows with junction temperature: its ratio to the value at 25 degC."""

import numpy as np

ZERO_C_IN_K = 273.15
REFERENCE_K = 298.15
REFERENCE_C = 25.0


def power_law_ratio(*, junction_c: float, exponent: float) -> float:
    """On-resistance over its value at 25 degC by a power law in kelvin.

    Args:
        junction_c: Junction temperature. [degC]
        exponent: About 1.5 for 30 V parts to 2.6 for 100 V parts. [1]

    Returns:
        Ratio, 1 at 25 degC. [1]

    Valid from -40 to 175 degC, where it met eight published curves within 0.09.

    Source: own, least squares on published curves, among them irfr3806 Fig 4 and buk9637-100e Fig 12.
    """
    ratio: float = ((junction_c + ZERO_C_IN_K) / REFERENCE_K) ** exponent
    return ratio


def power_law_slope_per_k(*, junction_c: float, exponent: float) -> float:
    """How fast the power-law ratio grows.

    Args:
        junction_c: Junction temperature. [degC]
        exponent: Of the power law. [1]

    Returns:
        Change of the ratio for a kelvin. [1/K]

    Valid where the power law is.

    Source: own, derivative of the power law.
    """
    return exponent * power_law_ratio(junction_c=junction_c, exponent=exponent) / (junction_c + ZERO_C_IN_K)


def linear_ratio(*, junction_c: float, slope_per_k: float) -> float:
    """On-resistance over its value at 25 degC along a straight line.

    Args:
        junction_c: Junction temperature. [degC]
        slope_per_k: Growth for a kelvin. [1/K]

    Returns:
        Ratio, 1 at 25 degC. [1]

    Valid roughly: misses published curves by up to 0.15 between 25 and 175 degC.

    Source: own, definition of a linear temperature coefficient.
    """
    return 1 + slope_per_k * (junction_c - REFERENCE_C)


def quadratic_ratio(*, junction_c: float, slope_per_k: float, curvature_per_k2: float) -> float:
    """On-resistance over its value at 25 degC along a parabola, the best fit to published curves.

    Args:
        junction_c: Junction temperature. [degC]
        slope_per_k: Growth for a kelvin at 25 degC. [1/K]
        curvature_per_k2: Growth for a kelvin squared. [1/K**2]

    Returns:
        Ratio, 1 at 25 degC. [1]

    Valid from 25 to 175 degC, within 0.013 of six published curves.

    Source: irfr3806 Fig 4, fitted.
    """
    beyond_k = junction_c - REFERENCE_C
    return 1 + slope_per_k * beyond_k + curvature_per_k2 * beyond_k**2


def exponent_through(*, hot_c: float, hot_ratio: float) -> float:
    """Exponent of the power law through 25 degC and one printed hot value.

    Args:
        hot_c: Junction temperature of the hot value. [degC]
        hot_ratio: Hot value over the one at 25 degC. [1]

    Returns:
        Exponent. [1]

    Valid for a hot temperature above 25 degC.

    Source: own, logarithm of the power law.
    """
    exponent: float = np.log(hot_ratio) / np.log((hot_c + ZERO_C_IN_K) / REFERENCE_K)
    return exponent


def hot_ratio_from_rating(*, power_w: float, current_a: float, on_resistance_ohm: float) -> float:
    """Ratio that a sheet's power, current and on-resistance imply at the highest junction temperature.

    Args:
        power_w: Rated power at a case of 25 degC. [W]
        current_a: Rated silicon current at a case of 25 degC. [A]
        on_resistance_ohm: Largest value at 25 degC. [ohm]

    Returns:
        Ratio at the highest junction temperature. [1]

    Valid for a current that the silicon limits, not the package.

    Source: an11158 eq. 5.
    """
    return power_w / (current_a**2 * on_resistance_ohm)
