"""Body diodes: the heat when one bank is off and the current of the other passes its diodes."""

import numpy as np


def bank_diode_loss_w(*, current_a: float, diode_v: float) -> float:
    """Heat of a whole bank whose channels are off.

    Args:
        current_a: Through the bank. [A]
        diode_v: Forward voltage of the diodes. [V]

    Returns:
        Heat of the bank, however many parts share it. [W]

    Valid for a constant forward voltage.

    Source: own, P = I V.
    """
    return current_a * diode_v


def part_diode_loss_w(*, current_a: float, diode_v: float, switches: int) -> float:
    """Heat of one part when its bank's diodes share equally.

    Args:
        current_a: Through the bank. [A]
        diode_v: Forward voltage of the diodes. [V]
        switches: How many share the current. [1]

    Returns:
        Heat of one part. [W]

    Valid for equal sharing; the warmer diode takes more than its part.

    Source: own, P = I V / n.
    """
    return current_a * diode_v / switches


def part_channel_loss_w(*, current_a: float, hot_resistance_ohm: float, switches: int) -> float:
    """Heat of one part of the same bank with its channel on.

    Args:
        current_a: Through the bank. [A]
        hot_resistance_ohm: On-resistance at the running temperature. [ohm]
        switches: How many share the current. [1]

    Returns:
        Heat of one part. [W]

    Valid for equal sharing.

    Source: own, P = (I/n)^2 R.
    """
    return (current_a / switches) ** 2 * hot_resistance_ohm


def safe_diode_current_a(*, allowed_rise_k: float, resistance_kpw: float, diode_v: float) -> float:
    """Current through one diode, for hours, that stays within an allowed rise.

    Args:
        allowed_rise_k: Of the junction over the air. [K]
        resistance_kpw: Junction to air of one part, all parts heating alike. [K/W]
        diode_v: Forward voltage of the diode. [V]

    Returns:
        Current of one part. [A]

    Valid for a constant forward voltage.

    Source: own, inverse of P = I V.
    """
    return allowed_rise_k / (resistance_kpw * diode_v)


def time_to_rise_s(*, power_w: float, allowed_rise_k: float, resistance_kpw: float, capacity_jpk: float) -> float:
    """How long one body may be heated before it has risen by an allowed amount; infinite where it never does.

    Args:
        power_w: Into the body. [W]
        allowed_rise_k: Over its settled temperature without this power. [K]
        resistance_kpw: From the body to the air. [K/W]
        capacity_jpk: Heat capacity of the body. [J/K]

    Returns:
        Time. [s]

    Valid for one body at one temperature.

    Source: own, inverse of the exponential of one RC pair.
    """
    share = np.minimum(allowed_rise_k / (power_w * resistance_kpw), 1.0)
    with np.errstate(divide="ignore"):
        left: float = np.log1p(-share)
    return -resistance_kpw * capacity_jpk * left
