"""Heating over time: what a thermal impedance makes of a step, a pulse, a train of pulses or any staircase of power."""

from collections.abc import Callable, Sequence

import numpy as np


def foster_impedance_kpw(*, time_s: float, resistances_kpw: Sequence[float], time_constants_s: Sequence[float]) -> float:
    """Impedance of a Foster network (a chain of parallel RC pairs) for a step of constant power.

    Args:
        time_s: Since the step. [s]
        resistances_kpw: One of each pair. [K/W, ...]
        time_constants_s: One of each pair. [s, ...]

    Returns:
        Rise per watt. [K/W]

    Valid for times not far below the shortest time constant: real silicon heats as the square root of time there, a network in proportion to it.

    Source: an2015-10 eq. 1-2.
    """
    parts: list[float] = [ohms * -np.expm1(-time_s / tau) for ohms, tau in zip(resistances_kpw, time_constants_s, strict=True)]
    return sum(parts[1:], parts[0])


def foster_train_peak_k(
    *,
    power_w: float,
    pulse_s: float,
    period_s: float,
    resistances_kpw: Sequence[float],
    time_constants_s: Sequence[float],
) -> float:
    """Highest rise, once settled, under equal rectangular pulses into a Foster network; it is reached at the end of a pulse.

    Args:
        power_w: While a pulse lasts. [W]
        pulse_s: Length of a pulse. [s]
        period_s: From the start of one pulse to the start of the next. [s]
        resistances_kpw: One of each pair. [K/W, ...]
        time_constants_s: One of each pair. [s, ...]

    Returns:
        Rise above the case. [K]

    Valid for a pulse no longer than the period.

    Source: own, the geometric series of the single pulse of an2015-10 eq. 1.
    """
    parts: list[float] = [
        ohms * np.expm1(-pulse_s / tau) / np.expm1(-period_s / tau) for ohms, tau in zip(resistances_kpw, time_constants_s, strict=True)
    ]
    return power_w * sum(parts[1:], parts[0])


def foster_train_valley_k(
    *,
    power_w: float,
    pulse_s: float,
    period_s: float,
    resistances_kpw: Sequence[float],
    time_constants_s: Sequence[float],
) -> float:
    """Lowest rise, once settled, under equal rectangular pulses into a Foster network; it is reached just before a pulse.

    Args:
        power_w: While a pulse lasts. [W]
        pulse_s: Length of a pulse. [s]
        period_s: From the start of one pulse to the start of the next. [s]
        resistances_kpw: One of each pair. [K/W, ...]
        time_constants_s: One of each pair. [s, ...]

    Returns:
        Rise above the case. [K]

    Valid for a pulse no longer than the period.

    Source: own, the peak of each pair cooled by its exponential over the pause.
    """
    parts: list[float] = [
        ohms * np.expm1(-pulse_s / tau) / np.expm1(-period_s / tau) * np.exp(-(period_s - pulse_s) / tau)
        for ohms, tau in zip(resistances_kpw, time_constants_s, strict=True)
    ]
    return power_w * sum(parts[1:], parts[0])


def pulse_rise_k(*, power_w: float, impedance_kpw: float) -> float:
    """Rise at the end of one rectangular pulse of power.

    Args:
        power_w: While the pulse lasts. [W]
        impedance_kpw: Transient impedance at the pulse's length, or of its duty curve. [K/W]

    Returns:
        Rise above the point that the impedance refers to. [K]

    Valid for constant power.

    Source: an11158 section 3.1.2.1; an558.
    """
    return power_w * impedance_kpw


def superposed_rise_k(
    *,
    time_s: float,
    powers_w: Sequence[float],
    starts_s: Sequence[float],
    impedance: Callable[[float], float],
) -> float:
    """Rise under a staircase of power: every change of power is a step of its own.

    Args:
        time_s: When to look, not before the last start. [s]
        powers_w: The power from each start on. [W, ...]
        starts_s: When each power begins. [s, ...]
        impedance: Transient impedance as a function of time. [s -> K/W]

    Returns:
        Rise above the point that the impedance refers to. [K]

    Valid for an impedance that does not change with temperature.

    Source: an2015-10, superposition of steps.
    """
    before = [powers_w[0] * 0.0, *powers_w[:-1]]
    parts = [(now - old) * impedance(time_s - start) for now, old, start in zip(powers_w, before, starts_s, strict=True)]
    return sum(parts[1:], parts[0])


def two_term_impedance_kpw(*, duty: float, steady_kpw: float, pulse_kpw: float) -> float:
    """Impedance of repeated pulses by the rule that makers draw their duty curves with; a little too high, so safe.

    Args:
        duty: Share of the period that the pulse fills. [1]
        steady_kpw: Impedance after a long time. [K/W]
        pulse_kpw: Single-pulse impedance at the pulse's length. [K/W]

    Returns:
        Peak rise per watt of pulse power. [K/W]

    Valid for a duty between 0 and 1.

    Source: irfr3806 Fig 13, whose duty curves follow it.
    """
    return duty * steady_kpw + (1 - duty) * pulse_kpw


def four_term_impedance_kpw(*, duty: float, steady_kpw: float, pulse_kpw: float, period_kpw: float, period_and_pulse_kpw: float) -> float:
    """Impedance of repeated pulses: all earlier pulses as their mean, the last two as they are.

    Args:
        duty: Share of the period that the pulse fills. [1]
        steady_kpw: Impedance after a long time. [K/W]
        pulse_kpw: Single-pulse impedance at the pulse's length. [K/W]
        period_kpw: At the period's length. [K/W]
        period_and_pulse_kpw: At the period's and the pulse's length together. [K/W]

    Returns:
        Peak rise per watt of pulse power. [K/W]

    Valid for a duty between 0 and 1.

    Source: own, superposition; a form in common use.
    """
    return duty * steady_kpw + (1 - duty) * period_and_pulse_kpw + pulse_kpw - period_kpw


def short_time_impedance_kpw(*, time_s: float, known_s: float, known_kpw: float) -> float:
    """Impedance before the first known point: heat that still spreads into solid silicon grows as the square root of time.

    Args:
        time_s: When to look. [s]
        known_s: Time of the first known point. [s]
        known_kpw: Impedance there. [K/W]

    Returns:
        Rise per watt. [K/W]

    Valid for a time no later than the known one.

    Source: own, one-dimensional conduction into a half space.
    """
    ratio: float = np.sqrt(time_s / known_s)
    return known_kpw * ratio


def current_ramp_rise_k(*, peak_power_w: float, impedance_kpw: float) -> float:
    """Rise at the end of a current ramp, whose power grows as the square of time.

    Args:
        peak_power_w: At the end of the ramp. [W]
        impedance_kpw: Transient impedance at the ramp's length. [K/W]

    Returns:
        Rise above the start. [K]

    Valid where the impedance grows as the square root of time.

    Source: own, (8/15) by integration, tested numerically.
    """
    return 8 / 15 * peak_power_w * impedance_kpw


def falling_triangle_rise_k(*, peak_power_w: float, impedance_kpw: float) -> float:
    """Highest rise under power that falls in a straight line to zero; it is reached at half time.

    Args:
        peak_power_w: At the start. [W]
        impedance_kpw: Transient impedance at the *whole* length of the triangle. [K/W]

    Returns:
        Rise above the start. [K]

    Valid where the impedance grows as the square root of time.

    Source: an11158 eq. 8, which takes 2/3 of the peak power with the impedance at half time; at whole time sqrt(2)/3.
    """
    return 2**0.5 / 3 * peak_power_w * impedance_kpw
