"""Mark what rests on something that moved on: in the same transaction as the change itself."""

from collections.abc import Callable

from service.facts.change import Change
from service.facts.kept_board import KeptBoard
from service.facts.result import InputKind, OutOfDate, Result
from service.usecases.ports import Shelf

Reason = Callable[[int], str | None]


def mark_users(shelf: Shelf, *, kind: InputKind, input_id: str, version: int, reason: Reason, change: Change) -> None:
    """Mark every result that used an input whose new version says something else.

    Args:
        shelf: The transaction that also holds the change.
        kind: What moved on.
        input_id: Which one.
        version: Its new version.
        reason: Says, for the version that a result used, what is different now; None where nothing that matters is.
        change: Who changed it, when and why.
    """
    for result in shelf.results.using(kind, input_id):
        shelf.results.mark(reasons_for(result, kind=kind, input_id=input_id, version=version, reason=reason, change=change))


def mark_results_of_board(shelf: Shelf, board: KeptBoard) -> None:
    """Mark the results of a saved board's earlier versions.

    Args:
        shelf: The transaction that also saves the new version.
        board: The new version.
    """
    told = f"the board was described anew: {board.change.why}"
    mark_users(shelf, kind=InputKind.BOARD, input_id=board.slug, version=board.version, reason=lambda _version: told, change=board.change)


def reasons_for(result: Result, *, kind: InputKind, input_id: str, version: int, reason: Reason, change: Change) -> tuple[OutOfDate, ...]:
    """The one reason, or none, why an input puts a result out of date."""
    used = [each.version for each in result.inputs if (each.kind, each.id) == (kind, input_id)]
    told = [text for each in used if each < version and (text := reason(each)) is not None]
    return tuple(OutOfDate(result=result.id, kind=kind, id=input_id, version=version, reason=text, change=change) for text in told[:1])
