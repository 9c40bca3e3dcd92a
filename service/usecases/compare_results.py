"""Compare a result with the one before it of the same board: what a measurement, a correction or a new claim has changed."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from service.facts.result import Result
from service.usecases.ports import Shelf
from service.usecases.report_view import answers, claim_answers


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimMoved:
    """How one claim came out before and after.

    Attributes:
        words: The claim.
        before: The outcome before; None where it was not claimed then.
        after: The outcome now; None where it is not claimed any more.
    """

    words: str
    before: str | None
    after: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerMoved:
    """A largest or least value that still holds, before and after.

    Attributes:
        words: What it is.
        before: The value before; None where there was none.
        after: The value now.
        unit: Of both.
    """

    words: str
    before: float | None
    after: float | None
    unit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """Two results of one board.

    Attributes:
        before: The earlier result.
        claims: Every claim of either.
        answers: Every answer of either.
    """

    before: Result
    claims: tuple[ClaimMoved, ...]
    answers: tuple[AnswerMoved, ...]


def compare_with_before(shelf: Shelf, result: Result) -> Comparison | None:
    """Compare a result with the one that was judged before it of the same board.

    Args:
        shelf: One moment of the store.
        result: The later one.

    Returns:
        The comparison; None where it is the first of its board.
    """
    if result.board is None:
        return None
    judged = [one.id for one in shelf.results.of_board(result.board)]
    before = shelf.results.find(next(iter(judged[judged.index(result.id) + 1 :]), ""))
    return None if before is None else comparison(before, json.loads(before.report), json.loads(result.report))


def comparison(before: Result, old: Mapping[str, Any], new: Mapping[str, Any]) -> Comparison:
    """Put two reports side by side."""
    outcomes = [{claim.words: claim.outcome for claim in claim_answers(report)} for report in (old, new)]
    values = [{answer.words: answer for answer in answers(report)} for report in (old, new)]
    return Comparison(
        before=before,
        claims=tuple(
            ClaimMoved(words=words, before=outcomes[0].get(words), after=outcomes[1].get(words)) for words in {**outcomes[1], **outcomes[0]}
        ),
        answers=tuple(
            AnswerMoved(words=words, before=_value(values[0], words), after=_value(values[1], words), unit=answer.unit)
            for words, answer in {**values[0], **values[1]}.items()
        ),
    )


def _value(answered: Mapping[str, Any], words: str) -> float | None:
    """The value of an answer, where it was given."""
    return answered[words].value if words in answered else None
