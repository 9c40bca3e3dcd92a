"""What the headline watts and amperes of a sheet mean, and what is left of them at the real case temperature."""


def rated_power_w(*, junction_max_c: float, case_c: float, junction_case_kpw: float) -> float:
    """Power that takes the junction to its limit while the case is held at a temperature.

    Args:
        junction_max_c: Highest junction temperature. [degC]
        case_c: Where the case (or ambient, with the resistance to ambient) is held. [degC]
        junction_case_kpw: Largest thermal resistance, junction to that point. [K/W]

    Returns:
        Power. [W]

    Valid at rest.

    Source: an11158 section 2.4.
    """
    return (junction_max_c - case_c) / junction_case_kpw


def derating_slope_wpk(*, power_w: float, junction_max_c: float, case_c: float) -> float:
    """Power that each kelvin of case temperature takes away: the linear derating factor.

    Args:
        power_w: Rated power. [W]
        junction_max_c: Highest junction temperature. [degC]
        case_c: Case temperature of the rating. [degC]

    Returns:
        Watt for a kelvin. [W/K]

    Valid up to the highest junction temperature.

    Source: mil-prf-19500-685 derating note.
    """
    return power_w / (junction_max_c - case_c)


def derated_power_w(*, rated_power_w: float, rated_case_c: float, case_c: float, junction_max_c: float) -> float:
    """Rated power at another case temperature than that of the rating.

    Args:
        rated_power_w: As rated. [W]
        rated_case_c: Case temperature of the rating, mostly 25 degC. [degC]
        case_c: The real case. [degC]
        junction_max_c: Highest junction temperature. [degC]

    Returns:
        Power. [W]

    Valid from the rating's case temperature to the highest junction temperature.

    Source: an11158 p.9.
    """
    return rated_power_w * (junction_max_c - case_c) / (junction_max_c - rated_case_c)


def derated_current_a(*, rated_current_a: float, rated_case_c: float, case_c: float, junction_max_c: float) -> float:
    """Rated silicon current at another case temperature than that of the rating.

    Args:
        rated_current_a: As rated. [A]
        rated_case_c: Case temperature of the rating, mostly 25 degC. [degC]
        case_c: The real case. [degC]
        junction_max_c: Highest junction temperature. [degC]

    Returns:
        Current. [A]

    Valid from the rating's case temperature to the highest junction temperature.

    Source: an11158 Table 3.
    """
    share: float = ((junction_max_c - case_c) / (junction_max_c - rated_case_c)) ** 0.5
    return rated_current_a * share


def silicon_current_a(*, power_w: float, hot_resistance_ohm: float) -> float:
    """Current whose heat is the rated power.

    Args:
        power_w: Rated power at the case temperature in question. [W]
        hot_resistance_ohm: Largest on-resistance at the highest junction temperature. [ohm]

    Returns:
        Current. [A]

    Valid where the package does not limit.

    Source: an11158 eq. 5.
    """
    current: float = (power_w / hot_resistance_ohm) ** 0.5
    return current


def junction_case_kpw(*, power_w: float, junction_max_c: float, case_c: float) -> float:
    """Thermal resistance that a rated power implies.

    Args:
        power_w: Rated power at a held case. [W]
        junction_max_c: Highest junction temperature. [degC]
        case_c: Case temperature of the rating. [degC]

    Returns:
        Junction to case. [K/W]

    Valid for a rating at a case temperature, never at an ambient.

    Source: an11158 section 2.4.
    """
    return (junction_max_c - case_c) / power_w


def power_residual(*, rated_power_w: float, rated_case_c: float, junction_case_kpw: float, junction_max_c: float) -> float:
    """How far a sheet's watts and its thermal resistance contradict each other.

    Args:
        rated_power_w: As rated. [W]
        rated_case_c: Case temperature of the rating, mostly 25 degC. [degC]
        junction_case_kpw: Largest thermal resistance. [K/W]
        junction_max_c: Highest junction temperature. [degC]

    Returns:
        Relative residual; beyond 0.04 the sheet is flagged. [1]

    Valid for a rating at a case temperature.

    Source: an11158 section 2.4; thirteen of fifteen sheets agree within 0.03.
    """
    return rated_power_w * junction_case_kpw / (junction_max_c - rated_case_c) - 1


def stress_ratio(*, applied: float, rated: float) -> float:
    """How much of a rating is used.

    Args:
        applied: The stress. [1]
        rated: The rating. [1]

    Returns:
        Applied over rated; a rule set allows its factor. [1]

    Valid for two figures in one unit.

    Source: eee-inst-002 section S1, Table 4.
    """
    return applied / rated
