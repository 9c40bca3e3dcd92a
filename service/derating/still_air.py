"""Temperatures of surfaces that give their heat to still air: found where convection and radiation carry away just what comes in."""

from dataclasses import dataclass

from scipy.optimize import brentq

from service.derating.formulas.plate import convection_wpm2k, radiation_wpm2k
from service.facts.sourced import Sourced

_LEAST_RISE_K, _MOST_RISE_K = 1e-6, 1000.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """What gives heat to air.

    Attributes:
        area_m2: All of it that air can reach, both sides where both are free. [m2]
        height_m: How far the air climbs along it. [m]
        emissivity: Of its surface. [1]
    """

    area_m2: float
    height_m: float
    emissivity: Sourced


def surface_temperature_c(face: Surface, *, power_w: float, air_c: float, emissivity: float, convection: float = 1.0) -> float:
    """Temperature at which a surface sheds a given heat.

    Args:
        face: Its size.
        power_w: All heat that leaves it, above zero. [W]
        air_c: Still air and surroundings. [degC]
        emissivity: Of its surface. [1]
        convection: Factor on convection, for bands. [1]

    Returns:
        Surface temperature. [degC]

    Raises:
        ValueError: No temperature below 1000 K above the air sheds so much heat.
    """

    def left_over(rise_k: float) -> float:
        films = convection * convection_wpm2k(surface_c=air_c + rise_k, air_c=air_c, height_m=face.height_m)
        films += radiation_wpm2k(surface_c=air_c + rise_k, surroundings_c=air_c, emissivity=emissivity)
        return films * face.area_m2 * rise_k - power_w

    if left_over(_MOST_RISE_K) < 0:
        raise ValueError(f"{power_w:g} W cannot leave {face.area_m2 * 1e4:g} cm2 in still air; give a larger area or less heat")
    return air_c + brentq(left_over, _LEAST_RISE_K, _MOST_RISE_K, xtol=1e-9)


def sealed_air_c(case: Surface, *, power_w: float, outside_c: float, emissivity: float, convection: float = 1.0) -> float:
    """Air inside a closed case: the wall over the outside, and the air inside over the wall by convection alone.

    Args:
        case: Its outer faces; the inner ones count as equal.
        power_w: All heat made inside. [W]
        outside_c: Air around the case. [degC]
        emissivity: Of its outer surface. [1]
        convection: Factor on convection, for bands. [1]

    Returns:
        Temperature of the air inside. [degC]
    """
    wall_c = surface_temperature_c(case, power_w=power_w, air_c=outside_c, emissivity=emissivity, convection=convection)
    return surface_temperature_c(case, power_w=power_w, air_c=wall_c, emissivity=0.0, convection=convection)
