"""Voltage across an open switch when packs are stacked in series."""

from math import floor


def string_v(*, packs: float, cells: float, cell_v: float) -> float:
    """Voltage of a whole string at charge; an open switch sees all of it when the load holds the output near zero.

    Args:
        packs: In series. [1]
        cells: In series in each pack. [1]
        cell_v: Charge voltage of one cell. [V]

    Returns:
        Voltage of the string. [V]

    Valid for equal packs.

    Source: own; 3.65 V a cell is printed by lishen-lp54173207 and lfp-26650-3300.
    """
    return packs * cells * cell_v


def needed_rating_v(*, open_v: float, factor: float) -> float:
    """Least drain-source rating for a voltage.

    Args:
        open_v: Across the open switch. [V]
        factor: Share of the rating that a rule set allows. [1]

    Returns:
        Rating. [V]

    Valid for a static voltage; overshoot at turn-off comes on top.

    Source: own, inverse of the stress ratio of eee-inst-002.
    """
    return open_v / factor


def largest_stack(*, allowed_v: float, added_v: float, pack_v: float) -> int:
    """Most packs in series whose string stays within a voltage.

    Args:
        allowed_v: What the switch may see. [V]
        added_v: What else adds to the string. [V]
        pack_v: One pack at charge. [V]

    Returns:
        Packs; 0 where not even one is allowed. [1]

    Valid for equal packs; a demand equal to the limit is allowed.

    Source: own, whole part of a quotient.
    """
    # Why the small term: 3 * 29.2 V in binary is a little above 87.6 V, and equality keeps the limit.
    return max(floor((allowed_v - added_v) / pack_v + 1e-9), 0)


def cold_rating_v(*, rating_v: float, temperature_c: float, loss_per_k: float) -> float:
    """Drain-source rating of a part that is colder than 25 degC; breakdown falls with temperature.

    Args:
        rating_v: At 25 degC. [V]
        temperature_c: Coldest junction, that of an idle switch: ambient. [degC]
        loss_per_k: Share of the rating lost for each kelvin below 25 degC. [1/K]

    Returns:
        Rating, never above the printed one. [V]

    Valid from -55 degC.

    Source: psmn022-30pl (30 V at 25 degC, 27 V at -55 degC) and buk7y12-55b (55 V, 50 V).
    """
    below_k = 25.0 - temperature_c
    lost = loss_per_k * below_k
    return rating_v * (1 - lost) if below_k > 0 * below_k else rating_v
