"""What must hold between the numbers of one datasheet, whoever reads them: arithmetic of the ratings' own definitions."""

import math
from dataclasses import dataclass

ROOM_C = 25.0
"""Temperature at which headline ratings are given. [degC]"""
POWER_SUPPORTS = 0.04
"""Rated power agrees with thermal resistance and junction limit within this share: 93 % of 76 sheets do. [1]"""
POWER_FACTOR = 5.0
"""So many times off, one of the three figures was misread. [1]"""
CURRENT_SUPPORTS = 0.04
"""Currents at two case temperatures follow the square-root law within this share on 72 % of sheets; the others state package limits. [1]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """How far numbers of one sheet are from what must hold between them.

    Attributes:
        name: Name of the relation.
        off: Distance as a share of what was expected. [1]
        factor: The same as a factor, never below one. [1]
        words: In words.
    """

    name: str
    off: float
    factor: float
    words: str


def power(*, power_w: float, resistance_k_per_w: float, junction_c: float, case_c: float = ROOM_C) -> Verdict:
    """Rated power times thermal resistance is the rise that the junction limit leaves.

    By definition of the rating: ``PD = (Tj,max - TC) / RthJC``.

    Args:
        power_w: Rated power at the case temperature. [W]
        resistance_k_per_w: Junction to case, largest value. [K/W]
        junction_c: Highest junction temperature. [degC]
        case_c: Case temperature of the rating. [degC]

    Returns:
        The verdict.

    Raises:
        ValueError: A figure that must be positive is not.
    """
    if power_w <= 0 or resistance_k_per_w <= 0 or junction_c <= case_c:
        raise ValueError(f"{power_w} W, {resistance_k_per_w} K/W and {junction_c - case_c} K must all be above zero")
    return _verdict("power", found=power_w * resistance_k_per_w, expected=junction_c - case_c, unit="K", what="power times thermal resistance")


def current(*, hot_a: float, cold_a: float, hot_c: float, junction_c: float, cold_c: float = ROOM_C) -> Verdict:
    """Rated currents at two case temperatures follow the square root of the rise that each leaves.

    Supports a reading and never speaks against one: a package limit breaks it rightly.

    Args:
        hot_a: Rated current at the hotter case. [A]
        cold_a: Rated current at the colder case. [A]
        hot_c: Hotter case temperature. [degC]
        junction_c: Highest junction temperature. [degC]
        cold_c: Colder case temperature. [degC]

    Returns:
        The verdict.

    Raises:
        ValueError: The currents are not positive, or the temperatures not in order.
    """
    if hot_a <= 0 or cold_a <= 0 or not cold_c < hot_c < junction_c:
        raise ValueError(f"{hot_a} A and {cold_a} A must be above zero, and {cold_c}, {hot_c}, {junction_c} degC rise in this order")
    return _verdict(
        "current", found=hot_a / cold_a, expected=math.sqrt((junction_c - hot_c) / (junction_c - cold_c)), unit="", what="ratio of the currents"
    )


def in_order(*, least: float | None, typical: float | None, most: float | None) -> bool:
    """Whether least, typical and most are in order, as far as they are given."""
    given = [value for value in (least, typical, most) if value is not None]
    return given == sorted(given)


def resistance_falls(*, lower_gate_ohm: float, higher_gate_ohm: float) -> bool:
    """Whether on-resistance falls, or stays, as the gate voltage rises."""
    return higher_gate_ohm <= lower_gate_ohm


def pulse_covers(*, continuous_a: float, pulsed_a: float) -> bool:
    """Whether the pulsed rating is no less than the continuous one."""
    return continuous_a <= pulsed_a


def _verdict(name: str, *, found: float, expected: float, unit: str, what: str) -> Verdict:
    return Verdict(
        name=name,
        off=abs(found / expected - 1),
        factor=max(found / expected, expected / found),
        words=f"{what} is {found:.4g} {unit} where {expected:.4g} {unit} must stand".replace("  ", " "),
    )
