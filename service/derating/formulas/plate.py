"""A plate, board or case wall in still air: heat by natural convection and by radiation."""

from service.derating.formulas.air import air_conductivity_wpmk, air_density_kgpm3, air_prandtl, air_viscosity_pas

GRAVITY_MPS2 = 9.80665
STEFAN_BOLTZMANN = 5.670374419e-8
KELVIN_OF_ZERO_C = 273.15


def grashof(*, surface_c: float, air_c: float, height_m: float) -> float:
    """Grashof number of a surface in air, with the properties of the air at the mean of both temperatures.

    Args:
        surface_c: Of the plate. [degC]
        air_c: Away from the plate. [degC]
        height_m: Of the plate. [m]

    Returns:
        Grashof number. [1]

    Valid for a surface warmer than the air, near sea level.

    Source: incropera chapter 9, definition; air from us-atmosphere-1976.
    """
    film_k = (surface_c + air_c) / 2 + KELVIN_OF_ZERO_C
    kinematic = air_viscosity_pas(kelvin=film_k) / air_density_kgpm3(kelvin=film_k)
    return GRAVITY_MPS2 / film_k * (surface_c - air_c) * height_m**3 / kinematic**2


def vertical_plate_nusselt(*, prandtl: float, grashof_number: float) -> float:
    """Nusselt number of a vertical plate over the whole range of Rayleigh numbers.

    Args:
        prandtl: Of the fluid. [1]
        grashof_number: On the plate's height. [1]

    Returns:
        Mean Nusselt number. [1]

    Valid for any Rayleigh number up to 1e12.

    Source: churchill-chu-1975; incropera eq. 9.26.
    """
    shape: float = (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)
    number: float = (0.825 + 0.387 * (prandtl * grashof_number) ** (1 / 6) / shape) ** 2
    return number


def convection_wpm2k(*, surface_c: float, air_c: float, height_m: float) -> float:
    """Natural convection from a vertical surface.

    Args:
        surface_c: Of the plate. [degC]
        air_c: Away from the plate. [degC]
        height_m: Of the plate. [m]

    Returns:
        Heat transfer coefficient in W/(m2 K). [W/m**2/K]

    Valid for a surface warmer than free still air.

    Source: churchill-chu-1975 with air from us-atmosphere-1976.
    """
    film_k = (surface_c + air_c) / 2 + KELVIN_OF_ZERO_C
    number = vertical_plate_nusselt(
        prandtl=air_prandtl(kelvin=film_k),
        grashof_number=grashof(surface_c=surface_c, air_c=air_c, height_m=height_m),
    )
    return number * air_conductivity_wpmk(kelvin=film_k) / height_m


def radiation_wpm2k(*, surface_c: float, surroundings_c: float, emissivity: float) -> float:
    """Radiation to surroundings of one temperature, as a heat transfer coefficient.

    Args:
        surface_c: Of the plate. [degC]
        surroundings_c: Of what the plate sees. [degC]
        emissivity: Of the surface. [1]

    Returns:
        Heat transfer coefficient in W/(m2 K). [W/m**2/K]

    Valid for a surface that sees much larger surroundings.

    Source: incropera eq. 1.9.
    """
    hot_k = surface_c + KELVIN_OF_ZERO_C
    cold_k = surroundings_c + KELVIN_OF_ZERO_C
    return emissivity * STEFAN_BOLTZMANN * (hot_k + cold_k) * (hot_k**2 + cold_k**2)


def surface_resistance_kpw(*, transfer_wpm2k: float, area_m2: float) -> float:
    """Thermal resistance of a surface to what it gives its heat to.

    Args:
        transfer_wpm2k: Sum of its heat transfer coefficients in W/(m2 K). [W/m**2/K]
        area_m2: That gives heat, both sides where both are free. [m**2]

    Returns:
        Resistance. [K/W]

    Valid for one surface temperature.

    Source: own, definition.
    """
    return 1 / (transfer_wpm2k * area_m2)


def layer_resistance_kpw(*, thickness_m: float, conductivity_wpmk: float, area_m2: float) -> float:
    """Thermal resistance of a layer, such as an insulating pad or a board between two surfaces.

    Args:
        thickness_m: In the direction of the heat. [m]
        conductivity_wpmk: Of the material in W/(m K). [W/m/K]
        area_m2: That the heat passes. [m**2]

    Returns:
        Resistance without contacts. [K/W]

    Valid for heat that goes straight through.

    Source: own, Fourier's law.
    """
    return thickness_m / (conductivity_wpmk * area_m2)


def step_resistance_kpw(*, hot_c: float, cold_c: float, power_w: float) -> float:
    """Thermal resistance between two measured temperatures.

    Args:
        hot_c: Nearer to the source of heat. [degC]
        cold_c: Further from it. [degC]
        power_w: That flows from one to the other. [W]

    Returns:
        Resistance. [K/W]

    Valid once both have settled.

    Source: an90003 Table 9.
    """
    return (hot_c - cold_c) / power_w


def allowed_loss_w(*, limit_c: float, ambient_c: float, resistance_kpw: float) -> float:
    """Heat that a thermal path sheds when its warm end is at a limit.

    Args:
        limit_c: Of the warm end. [degC]
        ambient_c: Of the cold end. [degC]
        resistance_kpw: Of the path. [K/W]

    Returns:
        Heat. [W]

    Valid once settled.

    Source: an90003 eq. 9.
    """
    return (limit_c - ambient_c) / resistance_kpw
