"""Set the invented example up: its datasheets are read and its boards judged here and now, so that nothing shown was typed in as a result."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from service.facts.change import Change
from service.formats.board import read_board
from service.usecases.judge_and_keep import judge_and_keep, save_board
from service.usecases.keep_sheet import read_in, take_in
from service.usecases.ports import MarkingReader, Reader, Store
from service.usecases.refusals import CannotJudgeError
from service.usecases.wait_for_sheet import wait_for_sheet

SAID = "part of the invented example"


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """The example as it lies on the disk.

    Attributes:
        sheets: Names and contents of the datasheets.
        boards: Titles and documents of the boards.
    """

    sheets: tuple[tuple[str, bytes], ...]
    boards: tuple[tuple[str, Mapping[str, Any]], ...]


def set_up_example(
    example: Example,
    *,
    store: Store,
    reader: Reader,
    markings: MarkingReader,
    change: Change,
    told: Callable[[str], None],
) -> None:
    """Read and judge what is not read and judged yet; a second time changes nothing.

    Args:
        example: What to set up.
        store: A data folder of its own.
        reader: Reads the datasheets.
        markings: Folds the parts' names.
        change: Who sets it up.
        told: Hears each step.
    """
    for name, data in example.sheets:
        document = take_in(name, data, store=store, change=change).document
        if document.reader_version != reader.version:
            told(f"reading {name}")
            read_in(document.sha256, store=store, reader=reader, markings=markings, change=change)
    with store.looking() as shelf:
        known = frozenset(board.title for board in shelf.boards.listed())
    for title, written in _missing(example.boards, known):
        told(f"judging {title}")
        _judge(written, title=title, store=store, markings=markings, change=change)


def _missing(boards: Iterable[tuple[str, Mapping[str, Any]]], known: frozenset[str]) -> Iterable[tuple[str, Mapping[str, Any]]]:
    """The boards that are not kept yet."""
    return (board for board in boards if board[0] not in known)


def _judge(written: Mapping[str, Any], *, title: str, store: Store, markings: MarkingReader, change: Change) -> None:
    """Judge a board; one whose part nobody knows is kept, and its part put on the list of those that wait for a datasheet."""
    try:
        judge_and_keep(written, title=title, store=store, change=change)
    except CannotJudgeError:
        marking = read_board(written).discharge_bank.part
        wait_for_sheet(marking, store=store, markings=markings, change=change)
        save_board(written, title=title, parts=(), store=store, change=change)
