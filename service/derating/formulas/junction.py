"""Junction temperature at rest: from heat and thermal resistance, and the feedback of a resistance that grows with it."""

import numpy as np

from service.derating.formulas.resistance_ratio import REFERENCE_C, ZERO_C_IN_K


def junction_c(*, reference_c: float, power_w: float, thermal_resistance_kpw: float) -> float:
    """Junction temperature above a point whose temperature is known.

    Args:
        reference_c: Ambient, board or case. [degC]
        power_w: Heat of the switch. [W]
        thermal_resistance_kpw: From the junction to that point. [K/W]

    Returns:
        Junction temperature. [degC]

    Valid at rest.

    Source: and90146.
    """
    return reference_c + power_w * thermal_resistance_kpw


def highest_ambient_c(*, limit_c: float, current_a: float, hot_resistance_ohm: float, thermal_resistance_kpw: float) -> float:
    """Highest ambient at which one switch keeps its junction limit.

    Args:
        limit_c: Junction limit. [degC]
        current_a: Through the switch. [A]
        hot_resistance_ohm: Its on-resistance at the limit. [ohm]
        thermal_resistance_kpw: From junction to ambient. [K/W]

    Returns:
        Ambient. [degC]

    Valid below the fold (see ``fold_temperature_c``).

    Source: and90146.
    """
    return limit_c - thermal_resistance_kpw * current_a**2 * hot_resistance_ohm


def largest_current_a(*, limit_c: float, ambient_c: float, hot_resistance_ohm: float, thermal_resistance_kpw: float) -> float:
    """Largest steady current of one switch; no iteration is needed.

    Args:
        limit_c: Junction limit. [degC]
        ambient_c: Air around it. [degC]
        hot_resistance_ohm: Its on-resistance at the limit. [ohm]
        thermal_resistance_kpw: From junction to ambient. [K/W]

    Returns:
        Current. [A]

    Valid for a limit below the fold (see ``fold_temperature_c``).

    Source: own, inverse of and90146.
    """
    current: float = ((limit_c - ambient_c) / (thermal_resistance_kpw * hot_resistance_ohm)) ** 0.5
    return current


def loop_gain(*, current_a: float, on_resistance_ohm: float, thermal_resistance_kpw: float, ratio_slope_per_k: float) -> float:
    """How much of a small rise comes back as further rise through the growing resistance; below 1 the temperature settles.

    Args:
        current_a: Through the switch. [A]
        on_resistance_ohm: At 25 degC. [ohm]
        thermal_resistance_kpw: From junction to ambient. [K/W]
        ratio_slope_per_k: Growth of the resistance ratio at the junction temperature. [1/K]

    Returns:
        Gain. [1]

    Valid for one switch, or for equal ones of which each has its own way to the air.

    Source: an2112 section 6.4 eq. 1, applied to a switch that is fully on.
    """
    return current_a**2 * on_resistance_ohm * thermal_resistance_kpw * ratio_slope_per_k


def linear_fixed_point_c(*, ambient_c: float, cold_rise_k: float, slope_per_k: float) -> float:
    """Settled junction temperature when the resistance grows along a straight line.

    Args:
        ambient_c: Air around the switch. [degC]
        cold_rise_k: Rise that the resistance at 25 degC would make. [K]
        slope_per_k: Growth of the ratio for a kelvin. [1/K]

    Returns:
        Junction temperature. [degC]

    Valid while cold_rise_k * slope_per_k is below 1; from there on nothing settles.

    Source: own, solved for the temperature; ngspice agrees.
    """
    return (ambient_c + cold_rise_k * (1 - REFERENCE_C * slope_per_k)) / (1 - cold_rise_k * slope_per_k)


def linear_runaway_current_a(*, on_resistance_ohm: float, thermal_resistance_kpw: float, slope_per_k: float) -> float:
    """Current from which nothing settles when the resistance grows along a straight line.

    Args:
        on_resistance_ohm: At 25 degC. [ohm]
        thermal_resistance_kpw: From junction to ambient. [K/W]
        slope_per_k: Growth of the ratio for a kelvin. [1/K]

    Returns:
        Current through the switch. [A]

    Valid for one switch.

    Source: own, loop gain of 1.
    """
    current: float = (on_resistance_ohm * thermal_resistance_kpw * slope_per_k) ** -0.5
    return current


def quadratic_fixed_point_c(*, ambient_c: float, cold_rise_k: float, slope_per_k: float, curvature_per_k2: float) -> float:
    """Settled junction temperature when the resistance grows along a parabola: the smaller, stable root.

    Args:
        ambient_c: Air around the switch. [degC]
        cold_rise_k: Rise that the resistance at 25 degC would make. [K]
        slope_per_k: Growth of the ratio for a kelvin at 25 degC. [1/K]
        curvature_per_k2: Growth for a kelvin squared. [1/K**2]

    Returns:
        Junction temperature; not a number where nothing settles. [degC]

    Valid for a positive curvature.

    Source: own, quadratic equation; scipy agrees.
    """
    bend = cold_rise_k * curvature_per_k2
    fall = 1 - cold_rise_k * slope_per_k
    inside = fall**2 - 4 * bend * (cold_rise_k + ambient_c - REFERENCE_C)
    root: float = np.sqrt(inside) if inside >= 0 * inside and fall > 0 * fall else np.nan
    return REFERENCE_C + (fall - root) / (2 * bend)


def fold_temperature_c(*, ambient_c: float, exponent: float) -> float:
    """Junction temperature at which a power-law resistance turns from settling to running away.

    Args:
        ambient_c: Air around the switch. [degC]
        exponent: Of the power law, above 1. [1]

    Returns:
        Junction temperature at the fold. [degC]

    Valid for an exponent above 1; below, there is no fold.

    Source: own, maximum of (T - Ta) / T^a in kelvin.
    """
    return (ambient_c + ZERO_C_IN_K) * exponent / (exponent - 1) - ZERO_C_IN_K
