"""The current or the ambient that settles with a junction or a board exactly at a temperature.

At a given temperature the heat balance is solved for the current or the ambient; only the other dies' temperatures are left to find.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from service.derating.formulas.elementwise import bounded
from service.derating.formulas.network import Network, Warmth, warmth_of
from service.derating.formulas.settling import newton_step

CLOSE_K = 1e-9
MOST_STEPS = 60
# Where a guess may go on the way.
HOTTEST_C, COLDEST_C = 1e4, -273.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Reached:
    """A current or an ambient at which a temperature is met.

    Attributes:
        value: The current or the ambient; not a number where other dies run away first.
        steady: Whether that state is stable. If not, it lies beyond the fold: the temperature is never reached from below.
    """

    value: float
    steady: bool


def current_at_junction(network: Network, *, die: int, limit_c: float) -> Reached:
    """Current that settles with one kind of die exactly at a temperature.

    Args:
        network: What carries the current and where its heat goes.
        die: Which kind.
        limit_c: Its junction temperature. [degC]

    Returns:
        Current through all banks [A], and whether it is steady.

    Valid on both sides of the fold.

    Source: own, the heat balance solved for the current; for one kind of die it is closed.
    """
    return _current_at(network, limit_c, lambda warmth: warmth.dies[die])


def current_at_board(network: Network, *, limit_c: float) -> Reached:
    """Current that settles with the board exactly at a temperature.

    Args:
        network: What carries the current and where its heat goes; its board must be shared.
        limit_c: Temperature of the board. [degC]

    Returns:
        Current through all banks [A], and whether it is steady.

    Valid on both sides of the fold.

    Source: own, the heat balance solved for the current.
    """
    return _current_at(network, limit_c, lambda warmth: warmth.board)


def ambient_at_junction(network: Network, *, die: int, limit_c: float, current_a: float) -> Reached:
    """Ambient at which one kind of die settles exactly at a temperature.

    Args:
        network: What carries the current and where its heat goes; its own ambient is left out of account.
        die: Which kind.
        limit_c: Its junction temperature. [degC]
        current_a: Through all banks. [A]

    Returns:
        Ambient [degC], and whether it is steady.

    Valid on both sides of the fold.

    Source: own, the heat balance solved for the ambient.
    """
    return _ambient_at(network, limit_c, current_a, lambda warmth: warmth.dies[die])


def ambient_at_board(network: Network, *, limit_c: float, current_a: float) -> Reached:
    """Ambient at which the board settles exactly at a temperature.

    Args:
        network: What carries the current and where its heat goes; its own ambient is left out of account.
        limit_c: Temperature of the board. [degC]
        current_a: Through all banks. [A]

    Returns:
        Ambient [degC], and whether it is steady.

    Valid on both sides of the fold.

    Source: own, the heat balance solved for the ambient.
    """
    return _ambient_at(network, limit_c, current_a, lambda warmth: warmth.board)


def _current_at(network: Network, limit_c: float, of: Callable[[Warmth], float]) -> Reached:
    """The heat balance solved for the current."""

    def square(warmth: Warmth) -> float:
        return (limit_c - network.ambient_c) / of(warmth)

    junctions = _rest(network, limit_c, lambda warmth: (network.ambient_c, square(warmth)))
    found = square(warmth_of(network, junctions))
    return Reached(value=np.sqrt(found), steady=newton_step(network, found, junctions)[1])


def _ambient_at(network: Network, limit_c: float, current_a: float, of: Callable[[Warmth], float]) -> Reached:
    """The heat balance solved for the ambient."""
    square = current_a**2

    def ambient_c(warmth: Warmth) -> float:
        return limit_c - square * of(warmth)

    junctions = _rest(network, limit_c, lambda warmth: (ambient_c(warmth), square))
    found = ambient_c(warmth_of(network, junctions))
    return Reached(value=found, steady=newton_step(replace(network, ambient_c=found), square, junctions)[1])


def _rest(network: Network, start_c: float, drive: Callable[[Warmth], tuple[float, float]]) -> list[float]:
    """Junction temperatures that agree with an ambient and a squared current which themselves depend on them.

    Why secants: plain substitution swings slowly where unequal switches trade current, and secants cost nothing more.
    """

    def answer(junctions: list[float]) -> list[float]:
        warmth = warmth_of(network, junctions)
        ambient_c, square = drive(warmth)
        return [bounded(ambient_c + square * rise, low=COLDEST_C, high=HOTTEST_C) for rise in warmth.dies]

    old = [start_c for _ in network.dies]
    old_answer = answer(old)
    new = old_answer
    for _ in range(MOST_STEPS):
        new_answer = answer(new)
        if all(abs(a - b) < CLOSE_K for a, b in zip(new_answer, new, strict=True)):
            break
        ahead = [_secant(*pair) for pair in zip(old, new, old_answer, new_answer, strict=True)]
        old, new, old_answer = new, ahead, new_answer
    return new_answer


def _secant(old: float, new: float, old_answer: float, new_answer: float) -> float:
    """The next guess of a substitution: along the secant where that does not leap, else the answer itself."""
    slope = (new_answer - old_answer) / (new - old) if new != old else 0.0
    pull = 1 / (1 - slope) if -4 < slope < 0.9 else 1.0
    return bounded(new + pull * (new_answer - new), low=COLDEST_C, high=HOTTEST_C)
