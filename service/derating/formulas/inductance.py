"""Inductance of simple loops of round wire, for direct current (evenly spread in the wire).

The closed forms are those of Rosa and Grover; their origin is known from memory, so the tests check them by integration instead.
"""

import numpy as np

VACUUM_PERMEABILITY_HPM = 4e-7 * np.pi


def straight_wire_h(*, length_m: float, radius_m: float, permeability_hpm: float = VACUUM_PERMEABILITY_HPM) -> float:
    """Partial inductance of one straight wire, its return far away.

    Args:
        length_m: Of the wire. [m]
        radius_m: Of the copper. [m]
        permeability_hpm: Of free space. [H/m]

    Returns:
        Partial inductance. [H]

    Valid for a wire much longer than thick.

    Source: rosa-grover, tested by integration.
    """
    shape: float = np.log(2 * length_m / radius_m) - 3 / 4
    return permeability_hpm * length_m / (2 * np.pi) * shape


def wire_pair_h(*, length_m: float, radius_m: float, spacing_m: float, permeability_hpm: float = VACUUM_PERMEABILITY_HPM) -> float:
    """Inductance of two parallel wires, out and back.

    Args:
        length_m: One way. [m]
        radius_m: Of the copper. [m]
        spacing_m: Between the centres. [m]
        permeability_hpm: Of free space. [H/m]

    Returns:
        Loop inductance. [H]

    Valid for a pair much longer than wide; the ends are left out.

    Source: rosa-grover, tested by integration.
    """
    shape: float = np.log(spacing_m / radius_m) + 1 / 4
    return permeability_hpm * length_m / np.pi * shape


def circular_loop_h(*, loop_radius_m: float, radius_m: float, permeability_hpm: float = VACUUM_PERMEABILITY_HPM) -> float:
    """Inductance of a round loop of wire.

    Args:
        loop_radius_m: Of the loop, to the centre of the wire. [m]
        radius_m: Of the copper. [m]
        permeability_hpm: Of free space. [H/m]

    Returns:
        Loop inductance. [H]

    Valid for a wire much thinner than the loop.

    Source: rosa-grover, tested by integration.
    """
    shape: float = np.log(8 * loop_radius_m / radius_m) - 7 / 4
    return permeability_hpm * loop_radius_m * shape


def rectangle_h(*, width_m: float, height_m: float, radius_m: float, permeability_hpm: float = VACUUM_PERMEABILITY_HPM) -> float:
    """Inductance of a rectangular loop of wire.

    Args:
        width_m: One side, between wire centres. [m]
        height_m: The other side. [m]
        radius_m: Of the copper. [m]
        permeability_hpm: Of free space. [H/m]

    Returns:
        Loop inductance. [H]

    Valid for a wire much thinner than the sides.

    Source: rosa-grover, tested by integration.
    """
    diagonal_m: float = (width_m**2 + height_m**2) ** 0.5
    across: float = width_m * np.log(2 * width_m * height_m / radius_m / (width_m + diagonal_m))
    along: float = height_m * np.log(2 * width_m * height_m / radius_m / (height_m + diagonal_m))
    return permeability_hpm / np.pi * (across + along + 2 * diagonal_m - 7 / 4 * (width_m + height_m))
