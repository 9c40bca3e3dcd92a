"""Where the temperatures of switch banks settle: heat makes resistance, resistance makes heat, and unequal switches share anew.

The network: switches of a bank lie in parallel, banks carry the same current one after the other, each switch sheds its heat through a
resistance of its own to one board, and the board sheds all of it to the air. With ``board_to_air_kpw`` zero every switch has its own
way to the air and none warms another.

All heat grows as the square of the current when temperatures are held, so the rise of each die is I^2 times a *warmth* that depends on
the temperatures alone. Finding the settled state is a Newton search; finding the current or the ambient of a given temperature is not
even that: the equation is solved for them. Everything works on plain numbers and on arrays (one entry a board).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from service.derating.formulas.elementwise import bounded, chosen, everywhere, is_many
from service.derating.formulas.ratio_model import RatioModel

CLOSE_K = 1e-9
MOST_STEPS = 60
# Close to a fold a Newton step would leap past the state that it looks for.
LONGEST_STEP_K = 100.0
# A lane that runs away is kept at a finite place and thrown out afterwards.
BEYOND_C, HOTTEST_C, COLDEST_C = 2000.0, 1e4, -273.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Die:
    """Equal switches of one bank.

    Attributes:
        bank: Number of the bank that they belong to.
        count: How many.
        cold_resistance_ohm: On-resistance of one at 25 degC. [ohm]
        to_board_kpw: From one junction to the board, or to the air where nothing is shared. [K/W]
        ratio: Resistance against junction temperature.
        track_ohm: Resistance of its own way on the board, which does not heat the die. [ohm]
    """

    bank: int
    count: float
    cold_resistance_ohm: float
    to_board_kpw: float
    ratio: RatioModel
    track_ohm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Network:
    """All dies that carry the current, and what they sit on.

    Attributes:
        dies: Kinds of equal switches.
        ambient_c: Air around the board. [degC]
        board_to_air_kpw: Shared by all; zero where each switch has its own way to the air. [K/W]
        board_ohm: Shunt and joints that heat the board. [ohm]
    """

    dies: tuple[Die, ...]
    ambient_c: float
    board_to_air_kpw: float
    board_ohm: float = 0.0


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Reached:
    """A current or an ambient at which a temperature is met.

    Attributes:
        value: The current or the ambient; not a number where other dies run away first.
        steady: Whether that state is stable. If not, it lies beyond the fold: the temperature is never reached from below.
    """

    value: float
    steady: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class _Warmth:
    """Rise for an ampere squared, at given junction temperatures."""

    dies: tuple[float, ...]
    board: float
    losses: tuple[float, ...]
    shares: tuple[float, ...]
    banks_ohm: tuple[float, ...]
    hot_ohm: tuple[float, ...]


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
    step, steady = [np.inf for _ in network.dies], True
    for _ in range(MOST_STEPS):
        step, steady = _newton_step(network, square, junctions)
        junctions = [bounded(t + d, low=network.ambient_c, high=HOTTEST_C) for t, d in zip(junctions, step, strict=True)]
        if all(everywhere((abs(d) < CLOSE_K) | (t > BEYOND_C)) for d, t in zip(step, junctions, strict=True)):
            break
    exists = steady
    for d, t in zip(step, junctions, strict=True):
        exists = exists & (abs(d) < 1e-6 * (1 + abs(t))) & (t < BEYOND_C)
    return _settled(network, current_a, junctions, exists=exists)


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


def network_loop_gain(network: Network, *, current_a: float, junctions_c: Sequence[float]) -> float:
    """How much of a small rise comes back as further rise; the state is stable below 1.

    Args:
        network: What carries the current and where its heat goes.
        current_a: Through all banks. [A]
        junctions_c: Of each kind of die. [degC, ...]

    Returns:
        Largest gain over all ways in which temperatures can move together. [1]

    Valid for one board, not for arrays.

    Source: own, largest eigenvalue of the heat balance's Jacobian; an2112 section 6.4 for one switch.
    """
    rows = _jacobian(network, current_a**2, junctions_c, _warmth(network, junctions_c))
    return float(np.max(np.real(np.linalg.eigvals(np.asarray(rows, dtype=float)))))


def _settled(network: Network, current_a: float, junctions_c: Sequence[float], *, exists: bool) -> Settled:
    """Put the figures of a state together."""
    warmth = _warmth(network, junctions_c)
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


def _warmth(network: Network, junctions_c: Sequence[float]) -> _Warmth:
    """Rises and losses for an ampere squared at given junction temperatures."""
    hot = [die.cold_resistance_ohm * die.ratio.value(t) for die, t in zip(network.dies, junctions_c, strict=True)]
    branches = [ohm + die.track_ohm for die, ohm in zip(network.dies, hot, strict=True)]
    banks = [0.0] * (1 + max(die.bank for die in network.dies))
    for die, ohm in zip(network.dies, branches, strict=True):
        banks[die.bank] = banks[die.bank] + die.count / ohm
    shares = [1 / (ohm * banks[die.bank]) for die, ohm in zip(network.dies, branches, strict=True)]
    losses = [share**2 * ohm for share, ohm in zip(shares, hot, strict=True)]
    heat = sum((die.count * loss for die, loss in zip(network.dies, losses, strict=True)), network.board_ohm)
    board = network.board_to_air_kpw * heat
    return _Warmth(
        dies=tuple(board + die.to_board_kpw * loss for die, loss in zip(network.dies, losses, strict=True)),
        board=board,
        losses=tuple(losses),
        shares=tuple(shares),
        banks_ohm=tuple(1 / bank for bank in banks),
        hot_ohm=tuple(hot),
    )


def _jacobian(network: Network, square: float, junctions_c: Sequence[float], warmth: _Warmth) -> list[list[float]]:
    """How each settled-for temperature answers to each assumed one."""
    dies = network.dies
    rows: list[list[float]] = [[] for _ in dies]
    for j, (source, t, hot) in enumerate(zip(dies, junctions_c, warmth.hot_ohm, strict=True)):
        growth = source.cold_resistance_ohm * source.ratio.slope_per_k(t)
        relative = growth / (hot + source.track_ohm)
        pull = 2 * source.count * warmth.shares[j] * relative
        losses = [pull * loss if die.bank == source.bank else 0.0 for die, loss in zip(dies, warmth.losses, strict=True)]
        losses[j] = losses[j] + warmth.losses[j] * (growth / hot - 2 * relative)
        heat = 0.0
        for die, loss in zip(dies, losses, strict=True):
            heat = heat + die.count * loss
        for row, die, loss in zip(rows, dies, losses, strict=True):
            row.append(square * (network.board_to_air_kpw * heat + die.to_board_kpw * loss))
    return rows


def _newton_step(network: Network, square: float, junctions_c: Sequence[float]) -> tuple[list[float], bool]:
    """The next change of all temperatures, and whether the state is stable.

    Where it is not, the step is the plain one: the temperatures go where the heat takes them, as a real board's would. A resistance that
    grows more slowly when hot may settle beyond such a stretch; a Newton step would turn back there.
    """
    warmth = _warmth(network, junctions_c)
    gap = [network.ambient_c + square * rise - t for rise, t in zip(warmth.dies, junctions_c, strict=True)]
    rows = [[-term for term in row] for row in _jacobian(network, square, junctions_c, warmth)]
    for i, row in enumerate(rows):
        row[i] = 1 + row[i]
    step, steady = _solve(rows, list(gap))
    leaps = [bounded(newton, low=-LONGEST_STEP_K, high=LONGEST_STEP_K) for newton in step]
    return [chosen(steady, newton, plain) for newton, plain in zip(leaps, gap, strict=True)], steady


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


def _current_at(network: Network, limit_c: float, of: Callable[[_Warmth], float]) -> Reached:
    """The heat balance solved for the current."""

    def square(warmth: _Warmth) -> float:
        return (limit_c - network.ambient_c) / of(warmth)

    junctions = _rest(network, limit_c, lambda warmth: (network.ambient_c, square(warmth)))
    found = square(_warmth(network, junctions))
    return Reached(value=np.sqrt(found), steady=_newton_step(network, found, junctions)[1])


def _ambient_at(network: Network, limit_c: float, current_a: float, of: Callable[[_Warmth], float]) -> Reached:
    """The heat balance solved for the ambient."""
    square = current_a**2

    def ambient_c(warmth: _Warmth) -> float:
        return limit_c - square * of(warmth)

    junctions = _rest(network, limit_c, lambda warmth: (ambient_c(warmth), square))
    found = ambient_c(_warmth(network, junctions))
    return Reached(value=found, steady=_newton_step(replace(network, ambient_c=found), square, junctions)[1])


def _rest(network: Network, start_c: float, drive: Callable[[_Warmth], tuple[float, float]]) -> list[float]:
    """Junction temperatures that agree with an ambient and a squared current which themselves depend on them.

    Why secants: plain substitution swings slowly where unequal switches trade current, and secants cost nothing more.
    """

    def answer(junctions: list[float]) -> list[float]:
        warmth = _warmth(network, junctions)
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
