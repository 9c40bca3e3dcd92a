"""What to measure or look up next: the open quantities, by how much of the outcome each decides, then by how little effort it takes."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import inf, log

from service.derating.case import Case, Corner
from service.derating.checks import CHECKS
from service.derating.open_case import open_case
from service.derating.quantity import Quantity
from service.derating.weighing import ENOUGH
from service.facts.board import Board
from service.facts.finding import Condition, Finding, Measure

# Where a what-if alone asks: after all that the board's own claims ask.
IN_SERVICE, WHAT_IF = 0, 1


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
    case = open_case(board, rules=rule_set)
    return ranked(case, (finding for check in CHECKS for finding in check.run(case)))


def ranked(case: Case, findings: Iterable[Finding]) -> tuple[Measure, ...]:
    """Rank what is open in a case.

    Args:
        case: The board under one rule set.
        findings: Of every check; a threshold that one of them names decides its outcome alone.

    Returns:
        As ``measure_next``; a quantity that several ask for stands once, where it stands first.
    """
    found = sorted((*_gained(case), *_asked_for(findings)), key=lambda entry: entry[:4])
    return tuple({entry[-1].quantity: entry[-1] for entry in reversed(found)}.values())[::-1]


def _gained(case: Case) -> Iterator[tuple[float, int, int, float, Measure]]:
    """Quantities of the case whose favourable end would raise some margin."""
    for item in case.quantities.values():
        if item.is_open and item.wording is not None:
            best = _best(case, item)
            if best.gain > 0:
                yield -round(best.decides, 2), IN_SERVICE, item.wording.effort, -best.gain, _measure(item, best)


def _asked_for(findings: Iterable[Finding]) -> Iterator[tuple[float, int, int, float, Measure]]:
    """Quantities whose threshold a finding names."""
    for finding in findings:
        bands = {one.name: (one.low, one.high) for one in finding.assumptions}
        for asked in (finding.condition, *finding.conditions):
            if asked is not None and asked.how:
                yield -1.0, WHAT_IF if finding.scenario else IN_SERVICE, asked.effort, 0.0, _asked(asked, bands)


def _asked(asked: Condition, bands: dict[str, tuple[float, float]]) -> Measure:
    """One entry of the list, from a condition; a yes or no lies between 0 and 1."""
    low, high = bands.get(asked.quantity, (0.0, 1.0) if not asked.unit else (asked.value, asked.value))
    return Measure(quantity=asked.quantity, low=low, high=high, unit=asked.unit, decides=1.0, how=asked.how)


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
