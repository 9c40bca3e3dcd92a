"""Freeze a result, and say at once where its inputs moved on while it was judged."""

from collections.abc import Callable

from service.facts.change import Change
from service.facts.result import InputKind, OutOfDate, Result, UsedInput
from service.usecases.append_readings import moved
from service.usecases.out_of_date import Reason, reasons_for
from service.usecases.ports import Shelf, Store


class UnknownInputError(LookupError):
    """A result names an input, or a version of one, that the store does not hold."""


def freeze_result(result: Result, *, store: Store) -> Result:
    """Keep a result; what a person changed between the judging and now marks it in the same transaction.

    Args:
        result: The result with its inputs by identity and version.
        store: Where it is kept.

    Returns:
        The result as kept.

    Raises:
        UnknownInputError: An input is not in the store; nothing is kept.
    """
    with store.changing() as shelf:
        shelf.results.freeze(result)
        for used in result.inputs:
            shelf.results.mark(_reasons(shelf, result, used))
        return shelf.results.find(result.id) or result


def _reasons(shelf: Shelf, result: Result, used: UsedInput) -> tuple[OutOfDate, ...]:
    """Why an input puts the result out of date from the start; usually it does not."""
    changes, reason = LATER[used.kind](shelf, used.id)
    if not 1 <= used.version <= len(changes):
        raise UnknownInputError(f"{result.title} rests on {used.kind} {used.id} version {used.version}; the store holds 1 to {len(changes)}")
    return reasons_for(result, kind=used.kind, input_id=used.id, version=len(changes), reason=reason, change=changes[-1])


def _reading(shelf: Shelf, reading_id: str) -> tuple[list[Change], Reason]:
    """Who made each version of a reading, and what is different now."""
    history = {entry.version: entry for entry in shelf.readings.history(reading_id)}
    return [entry.change for entry in history.values()], lambda version: moved(history, version, history[len(history)])


def _typed_part(shelf: Shelf, key: str) -> tuple[list[Change], Reason]:
    """The same for a typed part, of which only the last typing is at hand."""
    part = shelf.parts.find(key)
    typed = part.typed if part else None
    return ([typed.change] * typed.version if typed else []), lambda _version: f"{key} was typed anew"


def _board(shelf: Shelf, slug: str) -> tuple[list[Change], Reason]:
    """The same for a saved board."""
    history = shelf.boards.history(slug)
    return [board.change for board in history], lambda _version: "the board was changed"


LATER: dict[InputKind, Callable[[Shelf, str], tuple[list[Change], Reason]]] = {
    InputKind.READING: _reading,
    InputKind.TYPED_PART: _typed_part,
    InputKind.BOARD: _board,
}
