"""Where the temperatures of switch banks settle: heat makes resistance, resistance makes heat, and unequal switches share anew.

A Newton search on the heat balance of a network. What holds at a given temperature needs no such search: see ``settled_at.py``.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from service.derating.formulas.elementwise import bounded, chosen, everywhere, is_many
from service.derating.formulas.network import Network, jacobian_of, warmth_of

CLOSE_K = 1e-9
# A Newton step squares what is left: after one this small less than a billionth of a kelvin is.
LAST_STEP_K = 1e-4
MOST_STEPS = 60
# Close to a fold a Newton step would leap past the state that it looks for.
LONGEST_STEP_K = 100.0
# A lane that runs away is kept at a finite place and thrown out afterwards.
BEYOND_C, HOTTEST_C = 2000.0, 1e4


@dataclass(frozen=True, slots=True, kw_only=True)
class Settled:
    """A state of rest; temperatures are infinite where nothing settles.

    Attributes:
        exists: Whether the temperatures settle.
        junctions_c: Of each kind of die. [degC, ...]
        board_c: Of the board; the ambient where nothing is shared. [degC]
        currents_a: Through one switch of each kind. [A, ...]
        losses_w: Heat of one switch of each kind. [W, ...]
        drops_v: Across each bank. [V, ...]
    """

    exists: bool
    junctions_c: tuple[float, ...]
    board_c: float
    currents_a: tuple[float, ...]
    losses_w: tuple[float, ...]
    drops_v: tuple[float, ...]


def settle(network: Network, *, current_a: float) -> Settled:
    """Where all temperatures settle, starting from cold.

    Args:
        network: What carries the current and where its heat goes.
        current_a: Through all banks one after the other. [A]

    Returns:
        The stable state that is reached from ambient, or one that says that nothing settles; a state beyond 2000 degC counts as none.

    Valid for switches that are fully on.

    Source: own, Newton's method on the heat balance; ngspice and scipy agree within 0.01 %.
    """
    square = current_a**2
    junctions: list[float] = [network.ambient_c + 0.0 * square for _ in network.dies]
    step, steady, near = [np.inf for _ in network.dies], True, CLOSE_K
    for _ in range(MOST_STEPS):
        step, steady = newton_step(network, square, junctions)
        junctions = [bounded(t + d, low=network.ambient_c, high=HOTTEST_C) for t, d in zip(junctions, step, strict=True)]
        near = chosen(steady, LAST_STEP_K, CLOSE_K)
        if all(everywhere((abs(d) < near) | (t > BEYOND_C)) for d, t in zip(step, junctions, strict=True)):
            break
    exists = steady
    for d, t in zip(step, junctions, strict=True):
        exists = exists & (abs(d) < near) & (t < BEYOND_C)
    return _settled(network, current_a, junctions, exists=exists)


def newton_step(network: Network, square: float, junctions_c: Sequence[float]) -> tuple[list[float], bool]:
    """The next change of all temperatures, and whether the state is stable.

    Where it is not, the step is the plain one: the temperatures go where the heat takes them, as a real board's would. A resistance that
    grows more slowly when hot may settle beyond such a stretch; a Newton step would turn back there.
    """
    warmth = warmth_of(network, junctions_c)
    gap = [network.ambient_c + square * rise - t for rise, t in zip(warmth.dies, junctions_c, strict=True)]
    rows = [[-term for term in row] for row in jacobian_of(network, square, junctions_c, warmth)]
    for i, row in enumerate(rows):
        row[i] = 1 + row[i]
    step, steady = _solve(rows, list(gap))
    leaps = [bounded(newton, low=-LONGEST_STEP_K, high=LONGEST_STEP_K) for newton in step]
    return [chosen(steady, newton, plain) for newton, plain in zip(leaps, gap, strict=True)], steady


def _settled(network: Network, current_a: float, junctions_c: Sequence[float], *, exists: bool) -> Settled:
    """Put the figures of a state together."""
    warmth = warmth_of(network, junctions_c)
    square = current_a**2
    hide = chosen(exists, 0.0, np.inf)
    return Settled(
        exists=exists if is_many(exists) else bool(exists),
        junctions_c=tuple(t + hide for t in junctions_c),
        board_c=network.ambient_c + square * warmth.board + hide,
        currents_a=tuple(current_a * share for share in warmth.shares),
        losses_w=tuple(square * loss + hide for loss in warmth.losses),
        drops_v=tuple(current_a * ohm + hide for ohm in warmth.banks_ohm),
    )


def _solve(rows: list[list[float]], gap: list[float]) -> tuple[list[float], bool]:
    """Gaussian elimination of a small system that also tells whether every pivot is positive."""
    count, steady = len(gap), bool(gap)
    for i in range(count):
        steady = steady & (rows[i][i] > 0)
        pivot = _off_zero(rows[i][i])
        for below in range(i + 1, count):
            factor = rows[below][i] / pivot
            rows[below] = [a - factor * b for a, b in zip(rows[below], rows[i], strict=True)]
            gap[below] = gap[below] - factor * gap[i]
    answer = [0.0] * count
    for i in reversed(range(count)):
        rest = sum(rows[i][k] * answer[k] for k in range(i + 1, count))
        answer[i] = (gap[i] - rest) / _off_zero(rows[i][i])
    return answer, steady


def _off_zero(number: float) -> float:
    """The number, or a tiny one where it is zero; such a lane is at its fold and is thrown out afterwards."""
    return number + (number == 0) * 1e-300
