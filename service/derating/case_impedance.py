"""Transient impedance from junction to case as a switch's sheet or a person gives it, always bounded by the settled resistance."""

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from service.derating.formulas.impedance_curve import impedance_from_points_kpw
from service.derating.formulas.transient import foster_impedance_kpw, short_time_impedance_kpw
from service.facts.switch import Switch

Array = NDArray[np.float64]
Impedance = Callable[[Array], Array]


def has_impedance(switch: Switch) -> bool:
    """Whether anything but the settled resistance is known."""
    return bool(switch.transient_foster or len(switch.transient_points) > 1)


def case_impedance(switch: Switch, *, settled_kpw: float) -> Impedance:
    """Junction to case over time.

    Args:
        switch: The part; pairs go before points, and without either the settled resistance bounds every time.
        settled_kpw: RthJC, which no impedance exceeds and every one reaches. [K/W]

    Returns:
        A function of time. [s -> K/W]
    """
    if switch.transient_foster:
        return _of_pairs(switch, settled_kpw)
    if len(switch.transient_points) > 1:
        return _of_points(switch, settled_kpw)
    return lambda seconds: np.full_like(np.asarray(seconds, dtype=float), settled_kpw)


def _of_pairs(switch: Switch, settled_kpw: float) -> Impedance:
    """Foster pairs, raised to the settled resistance where their sum falls short of it."""
    ohms, taus = zip(*switch.transient_foster, strict=True)
    raised = [ohm * max(1.0, settled_kpw / sum(ohms)) for ohm in ohms]
    shortest = min(taus)
    known = foster_impedance_kpw(time_s=shortest, resistances_kpw=raised, time_constants_s=taus)

    def impedance(seconds: Array) -> Array:
        network = foster_impedance_kpw(time_s=seconds, resistances_kpw=raised, time_constants_s=taus)  # type: ignore[arg-type]  # arithmetic on arrays
        # Why: below its shortest time constant a network heats in proportion to time, silicon as its square root, which is more.
        early = short_time_impedance_kpw(time_s=np.minimum(seconds, shortest), known_s=shortest, known_kpw=known)
        return np.asarray(np.minimum(np.maximum(network, early), settled_kpw), dtype=float)

    return impedance


def _of_points(switch: Switch, settled_kpw: float) -> Impedance:
    """Points read off a curve."""
    times, impedances = zip(*sorted(switch.transient_points), strict=True)

    def impedance(seconds: Array) -> Array:
        found = impedance_from_points_kpw(time_s=seconds, times_s=times, impedances_kpw=impedances, bound_kpw=settled_kpw)  # type: ignore[arg-type]  # arithmetic on arrays
        return np.asarray(found, dtype=float)

    return impedance
