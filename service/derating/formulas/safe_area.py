"""Safe operating area: what current at what voltage for how long, at the case temperature that there really is."""

import numpy as np


def power_line_current_a(*, limit_c: float, case_c: float, impedance_kpw: float, voltage_v: float) -> float:
    """Largest drain current on the power line of the safe area.

    Args:
        limit_c: Junction limit. [degC]
        case_c: Case at the start of the pulse. [degC]
        impedance_kpw: Transient impedance at the pulse's length, RthJC for direct current. [K/W]
        voltage_v: Drain-source voltage during the pulse. [V]

    Returns:
        Drain current. [A]

    Valid where the sheet's area is bounded by power, not by thermal instability.

    Source: an11158 eq. 12.
    """
    return (limit_c - case_c) / impedance_kpw / voltage_v


def resistance_line_current_a(*, power_w: float, hot_resistance_ohm: float) -> float:
    """Current at which a power line meets the on-resistance line of the safe area.

    Args:
        power_w: Power of the line. [W]
        hot_resistance_ohm: On-resistance at the junction limit. [ohm]

    Returns:
        Drain current. [A]

    Valid for a switch that is fully on.

    Source: and9093.
    """
    root: float = (power_w / hot_resistance_ohm) ** 0.5
    return root


def current_at_case_a(*, current_25_a: float, case_c: float, limit_c: float, base_c: float = 25.0) -> float:
    """Current of a safe-area line at a warmer case, at the same voltage.

    Args:
        current_25_a: The line as printed. [A]
        case_c: Case at the start of the pulse. [degC]
        limit_c: Junction limit. [degC]
        base_c: Case temperature that the line was printed for. [degC]

    Returns:
        Drain current. [A]

    Valid for slopes not steeper than power; else derate the voltage instead.

    Source: sluaao2 eq. 1-2.
    """
    return current_25_a * (limit_c - case_c) / (limit_c - base_c)


def voltage_at_case_v(*, voltage_25_v: float, case_c: float, limit_c: float, base_c: float = 25.0) -> float:
    """Voltage of a safe-area line at a warmer case, at the same current: the form to use where hot spots set the line.

    Args:
        voltage_25_v: The line as printed, at the current in question. [V]
        case_c: Case at the start of the pulse. [degC]
        limit_c: Junction limit. [degC]
        base_c: Case temperature that the line was printed for. [degC]

    Returns:
        Drain-source voltage. [V]

    Valid for any slope of the line.

    Source: an11158 section 3.1.2.2.
    """
    return voltage_25_v * (limit_c - case_c) / (limit_c - base_c)


def pulse_slope(*, first_a: float, first_s: float, second_a: float, second_s: float) -> float:
    """Exponent m of I = a t^m through two lines of a safe area at one voltage.

    Args:
        first_a: Current of one line. [A]
        first_s: Its pulse length. [s]
        second_a: Current of the other line. [A]
        second_s: Its pulse length. [s]

    Returns:
        The exponent, negative for a sound sheet. [1]

    Valid for two different pulse lengths.

    Source: sluaao2 eq. 3-5.
    """
    slope: float = np.log(first_a / second_a) / np.log(first_s / second_s)
    return slope


def current_between_pulses_a(*, first_a: float, first_s: float, second_a: float, second_s: float, pulse_s: float) -> float:
    """Current of a pulse length between two printed lines at one voltage.

    Args:
        first_a: Current of one line. [A]
        first_s: Its pulse length. [s]
        second_a: Current of the other line. [A]
        second_s: Its pulse length. [s]
        pulse_s: The length asked for, between the two. [s]

    Returns:
        Drain current. [A]

    Valid between the two lengths only.

    Source: sluaao2 eq. 3-8.
    """
    slope = pulse_slope(first_a=first_a, first_s=first_s, second_a=second_a, second_s=second_s)
    current_a: float = first_a * (pulse_s / first_s) ** slope
    return current_a


def equivalent_pulse_s(*, energy_j: float, peak_power_w: float) -> float:
    """Length of the square pulse that stands for any other one: the same energy at its peak power.

    Args:
        energy_j: Of the real pulse. [J]
        peak_power_w: Of the real pulse. [W]

    Returns:
        Length of the square pulse. [s]

    Valid for a single pulse.

    Source: sluaao2 eq. 17-18.
    """
    return energy_j / peak_power_w


def falling_voltage_energy_j(*, start_v: float, current_a: float, ramp_s: float) -> float:
    """Heat in a switch while its voltage falls in a straight line to zero at constant current.

    Args:
        start_v: Drain-source voltage at the start. [V]
        current_a: Drain current. [A]
        ramp_s: How long the ramp lasts. [s]

    Returns:
        Energy. [J]

    Valid for a straight ramp.

    Source: sluaao2 eq. 22-23.
    """
    return start_v * current_a * ramp_s / 2
