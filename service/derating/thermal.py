"""How far a bank is from its temperature limits: the largest current and the highest ambient that still hold."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import isfinite

from service.derating.case import BankCase, Case
from service.derating.formulas.network import Network
from service.derating.formulas.settled_at import Reached, ambient_at_board, ambient_at_junction, current_at_board, current_at_junction
from service.derating.formulas.settling import settle
from service.derating.quantity import Point

HALVINGS = 60
# A settled state is found within a billionth of a kelvin; this leaves it room.
CLOSE_K = -1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """What must not be passed at rest.

    Attributes:
        junction_c: By every switch of the bank under examination. [degC]
        board_c: By the board; None where no board is shared. [degC]
    """

    junction_c: float
    board_c: float | None = None


def limits_of(case: Case, bank: BankCase, point: Point) -> Limits:
    """The limits of a bank and of the board that it sits on.

    Args:
        case: The board under one rule set.
        bank: Under examination.
        point: A number for each quantity.

    Returns:
        Junction limit, and the board's own limit where a board is shared.
    """
    return Limits(junction_c=case.junction_limit_c(bank, point), board_c=point["board_limit"] if case.is_chain else None)


def largest_current_a(network: Network, limits: Limits) -> float:
    """Largest current at which the first bank and the board keep their limits and the temperatures settle.

    Args:
        network: The bank under examination first.
        limits: What must not be passed.

    Returns:
        Current through the bank; zero where even an idle board is too hot. [A]
    """
    if not network.ambient_c < min(limits.junction_c, limits.board_c or limits.junction_c):
        return 0.0
    found = [current_at_junction(network, die=die, limit_c=limits.junction_c) for die in first_bank(network)]
    if limits.board_c is not None and network.board_to_air_kpw > 0:
        found.append(current_at_board(network, limit_c=limits.board_c))
    return _least(found, lambda current: slack_k(network, limits, current_a=current) >= CLOSE_K, _largest_kept)


def highest_ambient_c(network: Network, limits: Limits, *, current_a: float) -> float:
    """Highest ambient at which the first bank and the board keep their limits and the temperatures settle.

    Args:
        network: The bank under examination first; its own ambient is left out of account.
        limits: What must not be passed.
        current_a: Through the bank. [A]

    Returns:
        Ambient. [degC]
    """
    found = [ambient_at_junction(network, die=die, limit_c=limits.junction_c, current_a=current_a) for die in first_bank(network)]
    if limits.board_c is not None and network.board_to_air_kpw > 0:
        found.append(ambient_at_board(network, limit_c=limits.board_c, current_a=current_a))
    return _least(found, lambda ambient: slack_k(replace(network, ambient_c=ambient), limits, current_a=current_a) >= CLOSE_K, _highest_kept)


def first_bank(network: Network) -> tuple[int, ...]:
    """Which kinds of die belong to the bank under examination."""
    return tuple(number for number, die in enumerate(network.dies) if die.bank == network.dies[0].bank)


def slack_k(network: Network, limits: Limits, *, current_a: float) -> float:
    """How far the first bank and the board stay below their limits at a current.

    Args:
        network: The bank under examination first.
        limits: What must not be passed.
        current_a: Through the bank. [A]

    Returns:
        The smaller distance; negative beyond a limit, minus infinity where nothing settles. [K]
    """
    settled = settle(network, current_a=current_a)
    left = limits.junction_c - max(settled.junctions_c[die] for die in first_bank(network))
    return left if limits.board_c is None else min(left, limits.board_c - settled.board_c)


def _least(found: list[Reached], keeps: Callable[[float], bool], search: Callable[[Callable[[float], bool], float], float]) -> float:
    """The least of several answers where it is steady; else the fold is searched.

    Why: beyond its fold the heat balance has two states for one current. A limit above the fold is met by the upper, unstable one;
    the lower one still settles, and the answer is that of the fold.
    """
    if all(one.steady and isfinite(one.value) for one in found):
        return float(min(one.value for one in found))
    return search(keeps, min((one.value for one in found if isfinite(one.value)), default=1.0))


def _largest_kept(keeps: Callable[[float], bool], start: float) -> float:
    """The largest value that is kept, around a start above zero."""
    low = high = start
    while not keeps(low) and low > 1e-6:
        low, high = low / 2, low
    while keeps(high) and high < 1e7:
        low, high = high, high * 2
    return _halved(keeps, low, high)


def _highest_kept(keeps: Callable[[float], bool], start: float) -> float:
    """The highest temperature that is kept; with unsteady answers it may lie above or below the start."""
    low, high = -273.0, max(start, 0.0) + 1000.0
    return _halved(keeps, low, high)


def _halved(keeps: Callable[[float], bool], low: float, high: float) -> float:
    """The border between kept and not kept."""
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if keeps(middle) else (low, middle)
    return low
