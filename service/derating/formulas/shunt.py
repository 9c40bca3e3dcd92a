"""Current-sense resistor: its heat, what heat does to its value, and the currents that its trip voltages mean."""


def shunt_power_w(*, current_a: float, resistance_ohm: float) -> float:
    """Heat of a shunt.

    Args:
        current_a: Through it. [A]
        resistance_ohm: Of it. [ohm]

    Returns:
        Heat. [W]

    Valid for direct current.

    Source: own, Joule's law.
    """
    return current_a**2 * resistance_ohm


def largest_shunt_current_a(*, power_w: float, resistance_ohm: float) -> float:
    """Current at which a shunt reaches a power.

    Args:
        power_w: Allowed. [W]
        resistance_ohm: Of it. [ohm]

    Returns:
        Current. [A]

    Valid for direct current.

    Source: own, inverse of Joule's law.
    """
    root: float = (power_w / resistance_ohm) ** 0.5
    return root


def trip_current_a(*, trip_v: float, resistance_ohm: float) -> float:
    """Current at which a protection circuit trips.

    Args:
        trip_v: Its threshold across the shunt. [V]
        resistance_ohm: Of the shunt. [ohm]

    Returns:
        Current. [A]

    Valid for direct current.

    Source: own, Ohm's law.
    """
    return trip_v / resistance_ohm


def warm_resistance_ohm(*, resistance_ohm: float, coefficient_per_k: float, rise_k: float) -> float:
    """Resistance of a shunt that has warmed up.

    Args:
        resistance_ohm: As marked. [ohm]
        coefficient_per_k: Temperature coefficient. [1/K]
        rise_k: Over the temperature that the marking holds for. [K]

    Returns:
        Resistance. [ohm]

    Valid for a linear coefficient.

    Source: own, definition of the temperature coefficient.
    """
    return resistance_ohm * (1 + coefficient_per_k * rise_k)
