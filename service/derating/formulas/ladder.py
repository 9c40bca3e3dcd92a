"""Thermal networks in their two forms: Foster (chain of parallel pairs) and ladder (capacitors to the common line, also called Cauer).

Why it matters: some makers print (Ri, tau_i) pairs beside a drawing of a ladder with Ci = tau_i / Ri. Summed as Foster pairs
they give up to 42 % more than the maker's own curve at short times; only the ladder may be joined to a board or heat sink.
"""

from collections.abc import Sequence
from fractions import Fraction

import numpy as np
from scipy.linalg import eigh_tridiagonal

Polynomial = list[Fraction]


def ladder_to_foster(*, resistances_kpw: Sequence[float], capacities_jpk: Sequence[float]) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Foster pairs with exactly the step response of a ladder that is driven at its first node.

    Args:
        resistances_kpw: From each node to the next, the last one to the reference. [K/W, ...]
        capacities_jpk: From each node to the common line. [J/K, ...]

    Returns:
        Resistances of the pairs and their time constants, shortest first. [K/W, ...] [s, ...]

    Valid for positive values.

    Source: own, normal modes of the network (symmetric tridiagonal eigenproblem).
    """
    root = np.sqrt(np.asarray(capacities_jpk, dtype=float))
    flow = 1 / np.asarray(resistances_kpw, dtype=float)
    diagonal = (flow + np.concatenate(([0.0], flow[:-1]))) / root**2
    rates, modes = eigh_tridiagonal(diagonal, -flow[:-1] / (root[:-1] * root[1:]))
    taus = 1 / rates
    ohms = (modes[0] / root[0]) ** 2 * taus
    order = np.argsort(taus)
    return tuple(ohms[order].tolist()), tuple(taus[order].tolist())


def foster_to_ladder(*, resistances_kpw: Sequence[float], time_constants_s: Sequence[float]) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Ladder with exactly the driving-point impedance of Foster pairs.

    Args:
        resistances_kpw: One of each pair. [K/W, ...]
        time_constants_s: One of each pair, no two alike. [s, ...]

    Returns:
        Resistances from node to node and capacities to the common line, junction first. [K/W, ...] [J/K, ...]

    Valid for positive values; worked in exact fractions, because doubles fail beyond four pairs.

    Source: own, continued fraction of the driving-point impedance.
    """
    above, below = _rational(resistances_kpw, time_constants_s)
    ohms: list[float] = []
    farads: list[float] = []
    while len(above) > 0:
        farad = below[-1] / above[-1]
        below = _trimmed(_minus(below, [Fraction(0), *(farad * term for term in above)]))
        ohm = above[-1] / below[-1]
        above = _trimmed(_minus(above, [ohm * term for term in below]))
        farads.append(float(farad))
        ohms.append(float(ohm))
    return tuple(ohms), tuple(farads)


def drawn_capacities_jpk(*, resistances_kpw: Sequence[float], time_constants_s: Sequence[float]) -> tuple[float, ...]:
    """Capacities of a ladder that a sheet prints as pairs with Ci = tau_i / Ri.

    Args:
        resistances_kpw: One of each pair. [K/W, ...]
        time_constants_s: One of each pair. [s, ...]

    Returns:
        Capacity at each node. [J/K, ...]

    Valid for sheets that draw the capacitors to the common line.

    Source: irfr3806 Fig 13 and irfp1405 Fig 11, whose own curves it meets within 1 %.
    """
    return tuple(tau / ohms for ohms, tau in zip(resistances_kpw, time_constants_s, strict=True))


def _rational(resistances_kpw: Sequence[float], time_constants_s: Sequence[float]) -> tuple[Polynomial, Polynomial]:
    """The sum of R / (1 + s tau) over one denominator: coefficients, lowest power of s first."""
    above, below = [Fraction(0)], [Fraction(1)]
    for ohm, tau in zip(map(Fraction, resistances_kpw), map(Fraction, time_constants_s), strict=True):
        above = _plus(_times_pole(above, tau), [ohm * term for term in below])
        below = _times_pole(below, tau)
    return _trimmed(above), below


def _times_pole(terms: Polynomial, tau: Fraction) -> Polynomial:
    """A polynomial times (1 + s tau)."""
    return _plus(terms, [Fraction(0), *(tau * term for term in terms)])


def _plus(left: Polynomial, right: Polynomial) -> Polynomial:
    """Sum of two polynomials."""
    length = max(len(left), len(right))
    pad = [[*terms, *[Fraction(0)] * (length - len(terms))] for terms in (left, right)]
    return [a + b for a, b in zip(*pad, strict=True)]


def _minus(left: Polynomial, right: Polynomial) -> Polynomial:
    """Difference of two polynomials."""
    return _plus(left, [-term for term in right])


def _trimmed(terms: Polynomial) -> Polynomial:
    """Without leading zeros of the highest powers."""
    while terms and terms[-1] == 0:
        terms = terms[:-1]
    return terms
