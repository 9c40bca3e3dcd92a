"""What to measure or look up next: the open quantities, by how much of the outcome each decides, then by how little effort it takes."""

from dataclasses import dataclass
from math import inf, log

from service.derating.case import Case, Corner
from service.derating.checks import CHECKS
from service.derating.open_case import open_case
from service.derating.quantity import Quantity
from service.derating.weighing import ENOUGH
from service.facts.board import Board
from service.facts.finding import Measure


@dataclass(frozen=True, slots=True, kw_only=True)
class _Gain:
    """What one check would gain if one quantity were known to stand at its favourable end.

    Attributes:
        decides: Share of the missing margin that it brings, 1 where it alone is enough; 0 where the check holds anyway.
        gain: Factor on the margin, as a logarithm.
    """

    decides: float
    gain: float


def measure_next(board: Board, *, rule_set: str | None = None) -> tuple[Measure, ...]:
    """Rank what is open on a board.

    Args:
        board: As stated.
        rule_set: maker, trade-80 or eee-inst-002; the board's own where none is named.

    Returns:
        Open quantities and how to pin them down, the most telling first; among equals the one that takes the least effort.
    """
    return ranked(open_case(board, rules=rule_set))


def ranked(case: Case) -> tuple[Measure, ...]:
    """Rank what is open in a case.

    Args:
        case: The board under one rule set.

    Returns:
        As ``measure_next``.
    """
    found = []
    for item in case.quantities.values():
        if item.is_open and item.wording is not None:
            best = _best(case, item)
            if best.gain > 0:
                found.append((-round(best.decides, 2), item.wording.effort, -best.gain, _measure(item, best)))
    return tuple(entry[-1] for entry in sorted(found, key=lambda entry: entry[:3]))


def _best(case: Case, item: Quantity) -> _Gain:
    """The most that any check would gain from one quantity."""
    worst, better = case.point(Corner.WORST), case.point(Corner.WORST, {item.key: item.favourable})
    gains = []
    for check in CHECKS:
        for bank in case.banks[:1] if case.banks_alike else case.banks:
            now, then = (check.margin(case, bank, point) if check.margin else None for point in (worst, better))
            if now is not None and then is not None:
                gains.append(_gain(now, then))
    return max(gains, key=lambda gain: (gain.decides, gain.gain), default=_Gain(decides=0.0, gain=0.0))


def _gain(worst: float, better: float) -> _Gain:
    """What a better margin brings towards enough."""
    gain = log(better / worst) if worst > 0 and better > 0 else (inf if better > worst else 0.0)
    if worst >= ENOUGH:
        return _Gain(decides=0.0, gain=gain)
    missing = -log(worst) if worst > 0 else inf
    share = 1.0 if better >= ENOUGH else (gain / missing if missing < inf else 0.0)
    return _Gain(decides=min(max(share, 0.0), 1.0), gain=gain)


def _measure(item: Quantity, best: _Gain) -> Measure:
    """One entry of the list."""
    return Measure(
        quantity=item.key,
        low=min(item.favourable, item.worst),
        high=max(item.favourable, item.worst),
        unit=item.unit,
        decides=best.decides,
        how=item.wording.how if item.wording else "",
    )
