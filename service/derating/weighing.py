"""From a margin as a function of all quantities to an outcome with its thresholds: bounds before giving up.

Both ends are compared first. Between them the outcome is *holds if*, and for each open quantity the threshold is sought at which the
outcome changes with all others at their worst. Every default is noted with the value at which the outcome would flip.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from service.derating.case import Case, Corner
from service.derating.quantity import Point, Quantity
from service.derating.thresholds import MarginAt, Search
from service.facts.finding import Assumption, BothEnds, Condition, Figure, Finding, Input, Margin, Outcome

# Why not exactly 1: a demand equal to its limit keeps it, whatever the last binary digit says.
ENOUGH = 1 - 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighing:
    """What a comparison of both ends gave.

    Attributes:
        outcome: holds, holds if or fails.
        margin: At both ends.
        conditions: Thresholds, the one that is easiest to check first; empty unless the outcome is *holds if*.
        inputs: Facts that the working read.
        assumptions: Defaults that the working read.
    """

    outcome: Outcome
    margin: Margin
    conditions: tuple[Condition, ...] = ()
    inputs: tuple[Input, ...] = ()
    assumptions: tuple[Assumption, ...] = ()

    def finding(  # noqa: PLR0913 - a finding has this many faces, each given by name
        self,
        *,
        check: str,
        bank: str,
        text: str,
        demand: Figure | None = None,
        limit: Figure | None = None,
        formula: str = "",
        values: Mapping[str, BothEnds] | None = None,
        scenario: bool = False,
        inputs: Iterable[Input] = (),
        missing: tuple[str, ...] = (),
    ) -> Finding:
        """The finding that this weighing supports.

        Args:
            check: Name of the check.
            bank: discharge, charge or both.
            text: What was compared; the outcome and its first condition are put behind it.
            demand: What is asked, in the worst corner.
            limit: What is allowed, in the worst corner.
            formula: The working in one line.
            values: Figures of both ends.
            scenario: Whether it never names the limiting check.
            inputs: Facts beside the quantities that were read.
            missing: Data that would sharpen the answer.

        Returns:
            The finding.
        """
        first = self.conditions[0] if self.conditions else None
        return Finding(
            check=check,
            bank=bank,
            outcome=self.outcome,
            text=_sentence(text, self.outcome, first),
            scenario=scenario,
            demand=demand,
            limit=limit,
            margin=self.margin,
            condition=first,
            conditions=self.conditions[1:],
            missing=missing,
            formula=formula,
            inputs=(*inputs, *self.inputs),
            assumptions=self.assumptions,
            values=dict(values or {}),
        )


def weigh(case: Case, margin: MarginAt, *, slack: MarginAt | None = None, at: str = "") -> Weighing:
    """Compare both ends and seek what decides between them.

    Args:
        case: The board under one rule set.
        margin: Limit over demand at a point; it must not fall as a quantity moves to its favourable end.
        slack: Something cheaper that is zero or more exactly where the margin is enough; thresholds are then sought with it.
        at: For whom the conditions hold: "at 80 A"; goes into their sentences.

    Returns:
        The outcome with its thresholds, inputs and assumptions; which quantities count is seen from what the margin reads.
    """
    read: set[str] = set()
    ends = {corner: margin(watched(case.point(corner), read)) for corner in (Corner.FAVOURABLE, Corner.WORST)}
    both = Margin(worst=ends[Corner.WORST], favourable=ends[Corner.FAVOURABLE])
    items = _items(case, read)
    outcome = outcome_of(both)
    search = Search(case=case, left=slack or (lambda point: margin(point) - ENOUGH), at=at)
    return Weighing(
        outcome=outcome,
        margin=both,
        conditions=search.conditions(items) if outcome is Outcome.HOLDS_IF else (),
        inputs=_inputs(items),
        assumptions=tuple(_default_of(item, search.flip(item, outcome)) for item in items if item.is_default),
    )


def watched(point: Point, read: set[str]) -> Point:
    """A point that notes which of its quantities are read.

    Args:
        point: A number for each quantity.
        read: Keys are added here.

    Returns:
        The same numbers.
    """
    return _Watched(point, read)


def noted(case: Case, read: set[str]) -> tuple[tuple[Input, ...], tuple[Assumption, ...]]:
    """What was read, sorted into facts and defaults, for a finding that compares nothing.

    Args:
        case: The board under one rule set.
        read: Keys of the quantities that were read.

    Returns:
        Inputs and assumptions; nothing can flip.
    """
    items = _items(case, read)
    return _inputs(items), tuple(_default_of(item, None) for item in items if item.is_default)


def outcome_of(margin: Margin) -> Outcome:
    """The word for a margin at both ends.

    Args:
        margin: Limit over demand; 1 is exactly enough.

    Returns:
        holds where the worst end is enough, fails where not even the favourable one is, else holds if.
    """
    if margin.worst >= ENOUGH:
        return Outcome.HOLDS
    return Outcome.FAILS if margin.favourable < ENOUGH else Outcome.HOLDS_IF


def not_determined(*, check: str, bank: str, text: str, missing: tuple[str, ...], scenario: bool = False) -> Finding:
    """The finding where no safe bound exists.

    Args:
        check: Name of the check.
        bank: discharge, charge or both.
        text: What could not be judged.
        missing: The data that would decide it.
        scenario: Whether the check never names the limiting one.

    Returns:
        The finding; its sentence names the missing data.
    """
    sentence = f"{text}: not determined, for want of {', '.join(missing)}"
    return Finding(check=check, bank=bank, outcome=Outcome.NOT_DETERMINED, text=sentence, missing=missing, scenario=scenario)


def _items(case: Case, read: set[str]) -> list[Quantity]:
    """The quantities that were read, and those that they follow."""
    followed = {item.follows for key, item in case.quantities.items() if key in read}
    return [item for key, item in case.quantities.items() if key in read or key in followed]


def _inputs(items: Iterable[Quantity]) -> tuple[Input, ...]:
    """The facts among some quantities."""
    return tuple(Input(name=item.key, sourced=item.sourced) for item in items if not item.is_default)


def _default_of(item: Quantity, flips_at: float | None) -> Assumption:
    """A default with its band and the value at which the outcome flips."""
    return Assumption(
        name=item.key,
        used=item.worst,
        low=min(item.favourable, item.worst, item.sourced.least),
        high=max(item.favourable, item.worst, item.sourced.most),
        unit=item.unit,
        flips_at=flips_at,
        basis=item.sourced.name,
    )


def _sentence(text: str, outcome: Outcome, first: Condition | None) -> str:
    """What was compared and what came of it."""
    return f"{text}: {outcome}. {first.text}" if first else f"{text}: {outcome}"


class _Watched(dict[str, float]):
    """A point that notes what is read from it."""

    def __init__(self, point: Point, read: set[str]) -> None:
        super().__init__(point)
        self._read = read

    def __getitem__(self, key: str) -> float:
        self._read.add(key)
        return super().__getitem__(key)

    def get(self, key: str, default: float | None = None) -> float | None:  # type: ignore[override]  # a point has no other kind of value
        """The value, noted as read where it exists."""
        return self[key] if key in self else default  # noqa: SIM401 - get would call itself
