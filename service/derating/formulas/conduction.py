"""What a current makes in a switch and in a path: heat and voltage drop."""


def switch_loss_w(*, current_a: float, on_resistance_ohm: float) -> float:
    """Heat of one switch.

    Args:
        current_a: Through this switch. [A]
        on_resistance_ohm: At its junction temperature. [ohm]

    Returns:
        Heat. [W]

    Valid for a switch that is fully on.

    Source: and90146, P = I^2 R.
    """
    return current_a**2 * on_resistance_ohm


def bank_loss_w(*, current_a: float, on_resistance_ohm: float, switches: float) -> float:
    """Heat of a bank of equal switches that share a current equally.

    Args:
        current_a: Through the whole bank. [A]
        on_resistance_ohm: One switch, at its junction temperature. [ohm]
        switches: How many share the current. [1]

    Returns:
        Heat of the whole bank. [W]

    Valid for equal switches.

    Source: own, Joule's law for resistors in parallel.
    """
    return current_a**2 * on_resistance_ohm / switches


def bank_drop_v(*, current_a: float, on_resistance_ohm: float, switches: float) -> float:
    """Voltage across a bank of equal switches.

    Args:
        current_a: Through the whole bank. [A]
        on_resistance_ohm: One switch, at its junction temperature. [ohm]
        switches: How many share the current. [1]

    Returns:
        Voltage drop. [V]

    Valid for equal switches.

    Source: own, Ohm's law for resistors in parallel.
    """
    return current_a * on_resistance_ohm / switches


def parallel_resistance_ohm(*, on_resistance_ohm: float, switches: float) -> float:
    """Resistance of a bank of equal switches.

    Args:
        on_resistance_ohm: One switch. [ohm]
        switches: How many lie in parallel. [1]

    Returns:
        Resistance of the bank. [ohm]

    Valid for equal switches.

    Source: lattice-2008 p.15-3.
    """
    return on_resistance_ohm / switches


def path_resistance_ohm(*, banks_ohm: float, shunt_ohm: float, joints_ohm: float) -> float:
    """Resistance of the board's whole power path.

    Args:
        banks_ohm: All switch banks in series. [ohm]
        shunt_ohm: Current-sense resistor. [ohm]
        joints_ohm: Joints and tracks. [ohm]

    Returns:
        Their sum. [ohm]

    Valid for one path without branches.

    Source: own, resistors in series.
    """
    return banks_ohm + shunt_ohm + joints_ohm
