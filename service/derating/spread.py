"""How often a board would hold if its unknowns fell anywhere within their bands, and which of them moves the outcome most.

Why beside the corners: the worst corner is one board in very many. Every open quantity is drawn evenly between its favourable and its
worst end, each by itself; that is a convention, not a measurement of production, and never turns *holds if* into *holds*.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, cast

import numpy as np
from numpy.typing import NDArray
from scipy.stats import rankdata

from service.derating import conduction_figures as conduction
from service.derating.case import BankCase, Case, Corner
from service.derating.formulas.elementwise import greater
from service.derating.open_case import open_case
from service.derating.quantity import Point
from service.derating.thermal import limits_of
from service.facts.board import Board

BOARDS, SEED = 100_000, 20_260
# Three times what chance alone gives with as many boards.
NEGLIGIBLE = 0.01
Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class BankSpread:
    """One bank over many boards.

    Attributes:
        bank: discharge or charge.
        settles: Share of boards whose temperatures settle. [1]
        holds: Share whose hottest switch and board keep their limits, whichever way the switches share. [1]
        junction_holds: Share whose hottest switch keeps its own limit. [1]
        board_holds: Share whose board keeps its own limit; None where none is shared. [1]
        junction_c: Hottest junction that 5 %, 50 % and 95 % of the boards stay below; infinite where those run away. [degC]
        ranking: Open quantities with their rank correlation to what is left of the limits, the strongest first; below zero more is worse.
    """

    bank: str
    settles: float
    holds: float
    junction_holds: float
    board_holds: float | None
    junction_c: tuple[float, float, float]
    ranking: tuple[tuple[str, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """All banks over many boards.

    Attributes:
        boards: How many were drawn.
        seed: Of the random numbers; the same seed gives the same figures.
        holds: Share of boards on which every bank holds. [1]
        banks: Each bank.
    """

    boards: int
    seed: int
    holds: float
    banks: tuple[BankSpread, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Left:
    """What is left of each limit, one entry a board; below zero it is passed."""

    hottest_c: Array
    junction_k: Array
    board_k: Array | None

    @property
    def least_k(self) -> Array:
        """What is left of the nearer limit."""
        return self.junction_k if self.board_k is None else np.minimum(self.junction_k, self.board_k)


def spread(board: Board, *, rule_set: str | None = None, boards: int = BOARDS, seed: int = SEED) -> Spread | None:
    """Draw many boards within the bands of what is open, and judge them at rest.

    Args:
        board: As stated.
        rule_set: maker, trade-80 or eee-inst-002; the board's own where none is named.
        boards: How many to draw.
        seed: Of the random numbers.

    Returns:
        Shares and ranking; None where a bank's heat has no bound.
    """
    case = open_case(board, rules=rule_set)
    if any(case.lacks_conduction(bank) for bank in case.banks):
        return None
    point = drawn(case, boards=boards, seed=seed)
    with np.errstate(all="ignore"):
        hottest = {bank.name: _hottest(case, bank, point) for bank in (case.banks[:1] if case.banks_alike else case.banks)}
    both = {bank.name: hottest.get(bank.name, hottest[case.discharge.name]) for bank in case.banks}
    banks = tuple(_summary(case, bank, point, both[bank.name]) for bank in case.banks)
    holds = np.logical_and.reduce([left.least_k >= 0 for left in both.values()])
    return Spread(boards=boards, seed=seed, holds=float(np.mean(holds)), banks=banks)


def drawn(case: Case, *, boards: int, seed: int) -> Point:
    """A point of arrays: every open quantity drawn evenly between its ends.

    Args:
        case: The board under one rule set.
        boards: How many to draw.
        seed: Of the random numbers.

    Returns:
        One entry a board for open quantities, a plain number for all others; the on-resistance follows the gate voltage's own row.
    """
    dice = np.random.default_rng(seed)
    point: dict[str, Any] = dict(case.point(Corner.NOMINAL))
    for key, item in case.quantities.items():
        if item.is_open:
            point[key] = item.favourable + (item.worst - item.favourable) * dice.random(boards)
    for bank in {bank.prefix: bank for bank in case.banks}.values():
        if bank.drive is not None and case.quantities[bank.prefix + "gate_voltage"].is_open:
            point[bank.prefix + "on_resistance"] = _by_row(bank, point[bank.prefix + "gate_voltage"], dice.random(boards))
    return cast("Point", point)


def _by_row(bank: BankCase, gate_v: Array, level: Array) -> Array:
    """On-resistance of each board from the row of its own gate voltage."""
    if bank.drive is None:
        raise ValueError(f"the {bank.name} bank has no on-resistance at its gate voltage; ask lacks_conduction() first")
    found = np.empty_like(gate_v)
    above = np.inf
    for row in reversed(bank.drive.rows):
        here = (gate_v >= row.gate_v if row is not bank.drive.rows[0] else np.full_like(gate_v, fill_value=True, dtype=bool)) & (gate_v < above)
        ends = conduction.on_resistance(row)
        found[here] = (ends.favourable + (ends.worst - ends.favourable) * level)[here]
        above = row.gate_v
    return found


def _hottest(case: Case, bank: BankCase, point: Point) -> _Left:
    """Hottest junction of each board, and what is left of its limits."""
    limits, current_a = limits_of(case, bank, point), case.claimed_a(bank, point)
    hottest: float = cast("float", np.full(1, -np.inf))
    board: float = hottest
    for low_switch in (False, True) if bank.switches > 1 else (False,):
        settled = case.settle(bank, point, current_a=current_a, low_switch=low_switch)
        hottest, board = greater(hottest, settled.junctions_c[0]), greater(board, settled.board_c)
    return _Left(
        hottest_c=np.asarray(hottest),
        junction_k=np.asarray(limits.junction_c - hottest),
        board_k=None if limits.board_c is None else np.asarray(limits.board_c - board),
    )


def _summary(case: Case, bank: BankCase, point: Point, left: _Left) -> BankSpread:
    """Shares and ranking of one bank."""
    low, middle, high = (float(value) for value in np.quantile(left.hottest_c, (0.05, 0.5, 0.95), method="higher"))
    return BankSpread(
        bank=bank.name,
        settles=float(np.mean(np.isfinite(left.hottest_c))),
        holds=float(np.mean(left.least_k >= 0)),
        junction_holds=float(np.mean(left.junction_k >= 0)),
        board_holds=None if left.board_k is None else float(np.mean(left.board_k >= 0)),
        junction_c=(low, middle, high),
        ranking=_ranking(case, point, left.least_k),
    )


def _ranking(case: Case, point: Mapping[str, Any], left_k: Array) -> tuple[tuple[str, float], ...]:
    """Rank correlation of each open quantity with what is left of the limits, the strongest first."""
    outcome = rankdata(left_k)
    if np.ptp(outcome) == 0:
        return ()
    found = ((key, float(np.corrcoef(rankdata(point[key]), outcome)[0, 1])) for key, item in case.quantities.items() if item.is_open)
    return tuple(sorted((entry for entry in found if abs(entry[1]) > NEGLIGIBLE), key=lambda entry: -abs(entry[1])))
