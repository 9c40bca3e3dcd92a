"""Transient impedance read off a curve or typed as points; outside the points only bounds are given, never guesses."""

from collections.abc import Sequence

import numpy as np


def impedance_from_points_kpw(*, time_s: float, times_s: Sequence[float], impedances_kpw: Sequence[float], bound_kpw: float) -> float:
    """Impedance between typed points, straight in the logarithms of both axes, and a safe bound outside them.

    Args:
        time_s: When to look. [s]
        times_s: Times of the points, rising. [s, ...]
        impedances_kpw: Impedances of the points, rising. [K/W, ...]
        bound_kpw: RthJC, which no impedance to the case exceeds. [K/W]

    Returns:
        Rise per watt, never above the bound: before the first point that point's own value, after the last the bound. [K/W]

    Valid for times above zero.

    Source: own; log-log is how sheets draw the curve, and an impedance never falls with time.
    """
    between: float = np.exp(np.interp(np.log(time_s), np.log(times_s), np.log(impedances_kpw), right=np.log(bound_kpw)))
    capped: float = np.minimum(between, bound_kpw)
    return capped
