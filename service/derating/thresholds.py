"""Where an outcome changes: the value of one quantity at which a limit is exactly kept, and how a person is told."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from functools import cache
from math import isfinite

from scipy.optimize import brentq

from service.derating.case import Case, Corner
from service.derating.quantity import Point, Quantity
from service.derating.spoken import rounded_down, rounded_up, spoken
from service.facts.finding import Condition, Outcome, Relation

# A margin (limit over demand) or a slack (limit less demand) as a function of all quantities.
MarginAt = Callable[[Point], float]

# Where all other quantities stand while the threshold of one is sought, and how a condition says so.
INWARDS = (
    (Corner.WORST, ""),
    (Corner.NOMINAL, "with all else at its nominal figure"),
    (Corner.FAVOURABLE, "with all else at its best"),
)
# Why a power: an end is often orders of magnitude beyond the answer, which then lies close to the start.
NEARER = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """The search for thresholds of one margin.

    Attributes:
        case: The board under one rule set.
        left: Zero or more exactly where the limit is kept; it must not fall as a quantity moves to its favourable end.
        at: For whom the conditions hold: "at 80 A"; goes into their sentences.
    """

    case: Case
    left: MarginAt
    at: str = ""
    _found: dict[tuple[str, Corner], float | None] = field(default_factory=dict)

    def threshold(self, item: Quantity, corner: Corner) -> float | None:
        """Where one quantity, moved to its better side, is exactly enough.

        Args:
            item: The quantity to move; it must have a wording.
            corner: Where all others stand.

        Returns:
            The value, within what is physically thinkable; None where moving it alone is not enough.
        """
        if (item.key, corner) not in self._found:
            self._found[item.key, corner] = self._first_crossing(item, corner)
        return self._found[item.key, corner]

    def flip(self, item: Quantity, outcome: Outcome) -> float | None:
        """The nearest value of one quantity at which the outcome changes.

        Args:
            item: The quantity to move.
            outcome: What it is now: a board that fails is judged at its favourable corner, any other at its worst.

        Returns:
            The value; None where the outcome never changes.
        """
        if item.wording is None:
            return None
        if outcome is Outcome.HOLDS_IF and item.is_open:
            return self.threshold(item, Corner.WORST)
        corner = Corner.FAVOURABLE if outcome is Outcome.FAILS else Corner.WORST
        start = float(getattr(item, corner))
        found = [self.crossing(item, corner, start, end) for end in (item.wording.lowest, item.wording.highest)]
        return min((value for value in found if value is not None), key=lambda value: abs(value - start), default=None)

    def conditions(self, items: Iterable[Quantity]) -> tuple[Condition, ...]:
        """A condition for each open quantity that can decide alone.

        Args:
            items: What the margin reads.

        Returns:
            The easiest to check first and a band's own values before others; with all other quantities at their worst, or, where none
            can decide alone, further inwards.
        """
        items = [item for item in items if item.is_open and item.wording is not None]
        for corner, aside in INWARDS:
            found = [
                (not _within(item, value), item.wording.effort if item.wording else 0, item.key, self.said(item, value, aside))
                for item in items
                if (value := self.threshold(item, corner)) is not None
            ]
            if found:
                return tuple(entry[-1] for entry in sorted(found, key=lambda entry: entry[:3]))
        return ()

    def crossing(self, item: Quantity, corner: Corner, start: float, end: float) -> float | None:
        """Where a limit is just kept between two values of one quantity.

        Args:
            item: The quantity to move.
            corner: Where all others stand.
            start: One value; an answer near it is found sooner.
            end: The other value.

        Returns:
            The value; None where the limit is kept at both, or at neither.
        """

        def value(way: float) -> float:
            return start + (end - start) * way**NEARER

        @cache
        def beyond(way: float) -> float:
            found = self.left(self.case.point(corner, {item.key: value(way)}))
            return min(found, 1e3) if isfinite(found) else (1e3 if found > 0 else -1.0)

        if start == end or (beyond(0.0) >= 0) == (beyond(1.0) >= 0):
            return None
        return float(value(brentq(beyond, 0.0, 1.0, xtol=1e-13, rtol=1e-10)))

    def said(self, item: Quantity, value: float, aside: str = "") -> Condition:
        """A threshold as a condition.

        Args:
            item: The quantity; it must have a wording.
            value: The exact threshold.
            aside: Where all other quantities stand, if not at their worst.

        Returns:
            The condition, rounded to the safe side.
        """
        return condition(self.case, item, value, " ".join(part for part in (self.at, aside) if part))

    def _first_crossing(self, item: Quantity, corner: Corner) -> float | None:
        """From the worst end to the favourable one, and then to the end of what is thinkable."""
        if item.wording is None:
            return None
        start, beyond = item.worst, item.wording.lowest if item.favourable < item.worst else item.wording.highest
        for end in (item.favourable, beyond):
            root = self.crossing(item, corner, start, end)
            if root is not None:
                return root
            start = end
        return None


def condition(case: Case, item: Quantity, value: float, at: str) -> Condition:
    """A threshold as a sentence, rounded to the safe side.

    Args:
        case: The board under one rule set.
        item: The quantity; it must have a wording.
        value: The exact threshold.
        at: For whom it holds: "at 80 A".

    Returns:
        The condition.
    """
    phrase, how, effort = (item.wording.phrase, item.wording.how, item.wording.effort) if item.wording else (item.name + " {value}", "", 0)
    at = "" if item.name == "charge_current" else at
    if item.unit == "":
        said = _holds_if(at, phrase)
        return Condition(quantity=item.key, relation=Relation.IS, value=bool(item.favourable), unit="", text=said, how=how, effort=effort)
    falling = item.favourable < item.worst
    safe = rounded_down(value) if falling else rounded_up(value)
    clause = phrase.format(value=spoken(safe, item.unit), ambient=spoken(case.quantities["ambient"].worst, "degC"))
    return Condition(
        quantity=item.key,
        relation=Relation.AT_MOST if falling else Relation.AT_LEAST,
        value=safe,
        unit=item.unit,
        text=_holds_if(at, clause),
        how=how,
        effort=effort,
    )


def _within(item: Quantity, value: float) -> bool:
    """Whether a value lies within the quantity's own band."""
    return min(item.favourable, item.worst) <= value <= max(item.favourable, item.worst)


def _holds_if(at: str, clause: str) -> str:
    """A condition's sentence."""
    return " ".join(part for part in ("Holds", at, "if", clause) if part) + "."
