"""A short circuit until the switches have opened: current, heat and the voltage that opening makes."""

import numpy as np


def prospective_current_a(*, supply_v: float, loop_ohm: float) -> float:
    """Current that a short circuit would settle at if nothing opened.

    Args:
        supply_v: Of the source. [V]
        loop_ohm: Everything in the loop. [ohm]

    Returns:
        Settled current. [A]

    Valid for a source of constant voltage.

    Source: own, Ohm's law.
    """
    return supply_v / loop_ohm


def fault_current_a(*, supply_v: float, loop_ohm: float, inductance_h: float, time_s: float) -> float:
    """Current of a short circuit while it rises.

    Args:
        supply_v: Of the source. [V]
        loop_ohm: Everything in the loop. [ohm]
        inductance_h: Of the loop. [H]
        time_s: Since the fault. [s]

    Returns:
        Current at that time. [A]

    Valid from no current at the start, for constant resistance and inductance.

    Source: own, RL circuit.
    """
    share: float = -np.expm1(-time_s * loop_ohm / inductance_h)
    return supply_v / loop_ohm * share


def time_to_current_s(*, supply_v: float, loop_ohm: float, inductance_h: float, current_a: float) -> float:
    """When a short circuit reaches a given current.

    Args:
        supply_v: Of the source. [V]
        loop_ohm: Everything in the loop. [ohm]
        inductance_h: Of the loop. [H]
        current_a: Below the prospective one. [A]

    Returns:
        Time since the fault. [s]

    Valid for a current below the prospective one.

    Source: own, inverse of the RL circuit.
    """
    left: float = np.log1p(-current_a * loop_ohm / supply_v)
    return -inductance_h / loop_ohm * left


def let_through_a2s(*, supply_v: float, loop_ohm: float, inductance_h: float, time_s: float) -> float:
    """Integral of the squared current of a short circuit from its start.

    Args:
        supply_v: Of the source. [V]
        loop_ohm: Everything in the loop. [ohm]
        inductance_h: Of the loop. [H]
        time_s: Since the fault. [s]

    Returns:
        I2t. [A**2*s]

    Valid from no current at the start, for constant resistance and inductance.

    Source: own, integral of the RL circuit; tested against numerical integration.
    """
    tau = inductance_h / loop_ohm
    once: float = np.expm1(-time_s / tau)
    twice: float = np.expm1(-2 * time_s / tau)
    return (supply_v / loop_ohm) ** 2 * (time_s + 2 * tau * once - tau / 2 * twice)


def conduction_energy_j(*, let_through_a2s: float, resistance_ohm: float, switches: int) -> float:
    """Heat in one of several equal switches while the short circuit lasts.

    Args:
        let_through_a2s: I2t of the whole loop. [A**2*s]
        resistance_ohm: One switch, hot. [ohm]
        switches: How many share the current. [1]

    Returns:
        Energy in one switch. [J]

    Valid for switches that share equally.

    Source: own, integral of I^2 R.
    """
    return let_through_a2s / switches**2 * resistance_ohm


def overshoot_v(*, inductance_h: float, current_a: float, fall_s: float) -> float:
    """Voltage that the loop adds to the supply while the current falls in a straight line.

    Args:
        inductance_h: Of the loop. [H]
        current_a: When the switches open. [A]
        fall_s: How long it takes to fall to zero. [s]

    Returns:
        On top of the supply, until the breakdown voltage clamps it. [V]

    Valid below breakdown.

    Source: an936 section 4.
    """
    return inductance_h * current_a / fall_s


def gentlest_fall_s(*, inductance_h: float, current_a: float, breakdown_v: float, supply_v: float) -> float:
    """Shortest fall of the current that keeps a switch out of avalanche.

    Args:
        inductance_h: Of the loop. [H]
        current_a: When the switches open. [A]
        breakdown_v: Rated. [V]
        supply_v: Of the source. [V]

    Returns:
        Fall time. [s]

    Valid for a straight fall.

    Source: own, inverse of an936 section 4.
    """
    return inductance_h * current_a / (breakdown_v - supply_v)
