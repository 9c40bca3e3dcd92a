"""Avalanche: the energy that one switch has to swallow when it breaks an inductive current, and what its sheet allows.

Parallel switches do not share it: the one with the lowest breakdown voltage takes all.
"""

from collections.abc import Callable

from scipy.optimize import brentq

# The linear rule between the printed figure and zero at the limit is up to 12 % too kind to a warm switch (irfr3806 Fig 15).
LINEAR_RULE_KEEPS = 0.88


def energy_without_supply_j(*, inductance_h: float, current_a: float) -> float:
    """Avalanche energy when the supply is removed: the convention of most sheets.

    Args:
        inductance_h: Of the loop. [H]
        current_a: When the switch opens. [A]

    Returns:
        Energy into the switch. [J]

    Valid for a breakdown voltage far above the supply.

    Source: toshiba-avalanche; irf1404 and others print EAS by it.
    """
    return inductance_h * current_a**2 / 2


def energy_with_supply_j(*, inductance_h: float, current_a: float, breakdown_v: float, supply_v: float) -> float:
    """Avalanche energy when the supply goes on feeding the loop, as a battery does.

    Args:
        inductance_h: Of the loop. [H]
        current_a: When the switch opens. [A]
        breakdown_v: Of the switch; the rated one gives the larger energy. [V]
        supply_v: Of the source that stays connected. [V]

    Returns:
        Energy into the switch. [J]

    Valid for a supply below the breakdown voltage.

    Source: toshiba-avalanche; fairchild-2002 note 4.
    """
    return inductance_h * current_a**2 / 2 * breakdown_v / (breakdown_v - supply_v)


def avalanche_time_s(*, inductance_h: float, current_a: float, breakdown_v: float, supply_v: float) -> float:
    """How long the current takes to fall to zero against the breakdown voltage.

    Args:
        inductance_h: Of the loop. [H]
        current_a: When the switch opens. [A]
        breakdown_v: Of the switch. [V]
        supply_v: Of the source that stays connected. [V]

    Returns:
        Time in avalanche. [s]

    Valid for a supply below the breakdown voltage.

    Source: toshiba-avalanche.
    """
    return inductance_h * current_a / (breakdown_v - supply_v)


def triangle_energy_j(*, breakdown_v: float, current_a: float, time_s: float) -> float:
    """Energy of a current that falls in a straight line to zero at the breakdown voltage.

    Args:
        breakdown_v: In avalanche, about 1.3 times the rated one. [V]
        current_a: At the start. [A]
        time_s: In avalanche. [s]

    Returns:
        Energy. [J]

    Valid for a straight fall.

    Source: an11158 section 2.4.3.
    """
    return breakdown_v * current_a * time_s / 2


def allowed_impedance_kpw(*, start_c: float, limit_c: float, breakdown_v: float, current_a: float) -> float:
    """Transient impedance at which an avalanche just brings the junction to its limit.

    Args:
        start_c: Junction when the switch opens. [degC]
        limit_c: Junction limit. [degC]
        breakdown_v: In avalanche, about 1.3 times the rated one. [V]
        current_a: At the start. [A]

    Returns:
        Impedance at the time in avalanche. [K/W]

    Valid for a current that falls in a straight line: the mean power is half the peak.

    Source: an1005 as printed in irfr3806 Fig 16: PD(ave) = 1/2 (1.3 BV Iav) = dT / Zth.
    """
    return 2 * (limit_c - start_c) / (breakdown_v * current_a)


def thermal_energy_j(*, start_c: float, limit_c: float, breakdown_v: float, current_a: float, impedance: Callable[[float], float]) -> float:
    """Energy that one avalanche at a given current may have before the junction reaches its limit.

    Args:
        start_c: Junction when the switch opens. [degC]
        limit_c: Junction limit. [degC]
        breakdown_v: In avalanche, about 1.3 times the rated one. [V]
        current_a: At the start. [A]
        impedance: Transient impedance as a function of time. [s -> K/W]

    Returns:
        Energy; infinite where the impedance never grows large enough within a second. [J]

    Valid for an impedance that covers the time in avalanche, between a nanosecond and a second.

    Source: an1005 as printed in irfr3806 Fig 15-16.
    """
    allowed = allowed_impedance_kpw(start_c=start_c, limit_c=limit_c, breakdown_v=breakdown_v, current_a=current_a)
    if allowed <= impedance(1e-9):
        return 0.0
    if allowed >= impedance(1.0):
        return float("inf")
    time_s = brentq(lambda t: impedance(t) - allowed, 1e-9, 1.0, xtol=1e-15, rtol=1e-12)
    return triangle_energy_j(breakdown_v=breakdown_v, current_a=current_a, time_s=time_s)


def linear_energy_j(*, rated_j: float, start_c: float, limit_c: float, base_c: float = 25.0, keeps: float = LINEAR_RULE_KEEPS) -> float:
    """Rated avalanche energy at a warmer junction where the sheet has no curve: straight to zero at the limit, less 12 %.

    Args:
        rated_j: As printed. [J]
        start_c: Junction when the switch opens. [degC]
        limit_c: Junction limit. [degC]
        base_c: Junction temperature that the figure was printed for. [degC]
        keeps: Share that is left after the error of the straight line is taken off; 1 at the printed temperature itself. [1]

    Returns:
        Energy at the printed current. [J]

    Valid from the printed temperature to the limit.

    Source: own; irfr3806 Fig 15 lies up to 12 % below the straight line.
    """
    return rated_j * keeps * (limit_c - start_c) / (limit_c - base_c)
