"""See how far each board is: how its claims came out, and the next step that is open."""

import json
from dataclasses import dataclass
from enum import StrEnum

from service.facts.kept_board import KeptBoard
from service.facts.result import Result
from service.usecases.ports import Shelf, Store
from service.usecases.report_view import ClaimAnswer, claim_answers, open_questions

BANKS = ("discharge_bank", "charge_bank")


class Step(StrEnum):
    """What is to be done next with a board."""

    SHEET = "find the datasheet"
    JUDGE = "judge"
    AGAIN = "judge again"
    LOOK = "compare"
    MEASURE = "measure"
    NONE = "nothing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A result in one line.

    Attributes:
        result: The result.
        claims: How each claim came out.
    """

    result: Result
    claims: tuple[ClaimAnswer, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """A board in one line.

    Attributes:
        board: The version that stands.
        judged: Its latest result; None where there is none.
        step: What is open next.
        detail: What the step is about: the marking, the reason, the count of values, the condition that would decide.
    """

    board: KeptBoard
    judged: Judged | None
    step: Step
    detail: str = ""


def see_judged(store: Store) -> tuple[Judged, ...]:
    """List every result with how its claims came out, the latest first."""
    with store.looking() as shelf:
        results = shelf.results.listed()
    return tuple(judged(result) for result in results)


def see_progress(store: Store) -> tuple[Progress, ...]:
    """List every board with its next step, the latest first."""
    with store.looking() as shelf:
        return tuple(progress(shelf, board) for board in shelf.boards.listed())


def judged(result: Result) -> Judged:
    """A result in one line."""
    return Judged(result=result, claims=claim_answers(json.loads(result.report)))


def progress(shelf: Shelf, board: KeptBoard) -> Progress:
    """How far a board is.

    Args:
        shelf: One moment of the store.
        board: The version that stands.

    Returns:
        Its latest result and what is open next: a sheet before a judgement, a comparison with the page before a measurement.
    """
    result = next(iter(shelf.results.of_board(board.slug)), None)
    if result is None:
        unknown = unknown_marking(shelf, board)
        return Progress(board=board, judged=None, step=Step.SHEET if unknown else Step.JUDGE, detail=unknown)
    step, detail = _after(shelf, result)
    return Progress(board=board, judged=judged(result), step=step, detail=detail)


def unknown_marking(shelf: Shelf, board: KeptBoard) -> str:
    """The first marking on the board that no known part goes by; empty where all are known."""
    document = json.loads(board.document)
    markings = [str(document[bank].get("part", "")) for bank in BANKS if bank in document]
    return next((marking for marking in markings if ":" not in marking and shelf.parts.find(marking) is None), "")


def _after(shelf: Shelf, result: Result) -> tuple[Step, str]:
    """What is open once there is a result."""
    if result.out_of_date:
        return Step.AGAIN, result.out_of_date[-1].reason
    waiting = sum(not entry.seen_by_a_person for reading_id in result.look_at if (entry := shelf.readings.find(reading_id)))
    if waiting:
        return Step.LOOK, str(waiting)
    questions = open_questions(json.loads(result.report))
    return (Step.MEASURE, questions[0].text) if questions else (Step.NONE, "")
