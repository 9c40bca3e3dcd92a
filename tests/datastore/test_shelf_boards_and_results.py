"""Saved boards and frozen results on both shelves."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from service.facts.change import Change
from service.facts.keeping_error import MovedOnError
from service.facts.kept_board import KeptBoard
from service.facts.result import InputKind, OutOfDate, Result, UsedInput
from service.usecases.ports import Store

REPORT = '{"schema": "switchbank.report/1",  "limiting": "continuous_current"}\n'


@pytest.fixture
def board(change: Change) -> Callable[..., KeptBoard]:
    """Make a version of a board."""
    first = KeptBoard(
        slug="dinghy-8s",
        version=1,
        title="Dinghy 8S",
        text='schema = "switchbank.board/1"\r\n',
        document="{}",
        parts=("AB75N40", "CD30"),
        change=change,
    )
    return lambda **changed: replace(first, **changed)


@pytest.fixture
def result(change: Change) -> Callable[..., Result]:
    """Make a result."""
    first = Result(
        id="0a1b2c",
        title="Dinghy 8S at 80 A",
        report=REPORT,
        inputs=(
            UsedInput(kind=InputKind.READING, id="r-1", version=3, name="rds_on max"),
            UsedInput(kind=InputKind.BOARD, id="dinghy-8s", version=1, name="board"),
        ),
        parts=("AB75N40", "CD30"),
        board="dinghy-8s",
        rule_set="maker",
        engine_version="0.1",
        typed=False,
        look_at=("r-1",),
        change=change,
    )
    return lambda **changed: replace(first, **changed)


def test_a_board_is_kept_byte_for_byte_and_version_by_version(store: Store, board: Callable[..., KeptBoard]) -> None:
    """Even the line ends are the writer's."""
    second = board(version=2, text="# changed\n", parts=("CD30",))
    for each in (board(), second):
        with store.changing() as shelf:
            shelf.boards.save(each)

    with store.looking() as shelf:
        assert shelf.boards.find("dinghy-8s") == second
        assert shelf.boards.history("dinghy-8s") == (board(), second)
        assert shelf.boards.find("other") is None
    with pytest.raises(MovedOnError), store.changing() as shelf:
        shelf.boards.save(second)


def test_boards_are_found_by_what_they_carry_now(store: Store, board: Callable[..., KeptBoard]) -> None:
    """A part that was taken off the board is no longer met there."""
    other = board(slug="pontoon-4s", parts=("AB75N40",), change=replace(board().change, why="the second pack"))
    for each in (board(), other, board(version=2, parts=("CD30",), change=replace(board().change, why="counted again"))):
        with store.changing() as shelf:
            shelf.boards.save(each)

    with store.looking() as shelf:
        assert [(kept.slug, kept.version) for kept in shelf.boards.listed()] == [("dinghy-8s", 2), ("pontoon-4s", 1)]
        assert shelf.boards.carrying("AB75N40") == (other,)


def test_a_result_comes_back_byte_for_byte(store: Store, result: Callable[..., Result]) -> None:
    """A frozen report is never different."""
    for _twice in range(2):
        with store.changing() as shelf:
            shelf.results.freeze(result())

    with store.looking() as shelf:
        assert shelf.results.find("0a1b2c") == result()
        assert shelf.results.listed() == (result(),)
        assert shelf.results.find("other") is None


def test_results_are_found_by_part_board_and_input(store: Store, result: Callable[..., Result]) -> None:
    """Each way leads to the same result."""
    with store.changing() as shelf:
        shelf.results.freeze(result())
        shelf.results.freeze(result(id="other", inputs=(), parts=(), board=None, change=replace(result().change, by="Ben")))

    with store.looking() as shelf:
        assert shelf.results.of_part("CD30") == shelf.results.of_board("dinghy-8s") == (result(),)
        assert shelf.results.using(InputKind.READING, "r-1") == (result(),)
        assert shelf.results.using(InputKind.TYPED_PART, "r-1") == ()
        assert [kept.id for kept in shelf.results.listed()] == ["other", "0a1b2c"]


def test_a_reason_marks_a_result_once(store: Store, result: Callable[..., Result], change: Change) -> None:
    """The report stays; the reasons are listed beside it."""
    reason = OutOfDate(result="0a1b2c", kind=InputKind.READING, id="r-1", version=4, reason="it says 2.6 now", change=replace(change, by="Ben"))
    later = replace(reason, version=5, reason="it says 2.7 now")
    with store.changing() as shelf:
        shelf.results.freeze(result())
    for each in (reason, reason, later):
        with store.changing() as shelf:
            shelf.results.mark([each])

    with store.looking() as shelf:
        assert shelf.results.find("0a1b2c") == result(out_of_date=(reason, later))


def test_a_result_may_be_out_of_date_when_it_is_frozen(store: Store, result: Callable[..., Result], change: Change) -> None:
    """An input moved on while the board was judged."""
    reason = OutOfDate(result="0a1b2c", kind=InputKind.READING, id="r-1", version=4, reason="it says 2.6 now", change=change)
    with store.changing() as shelf:
        shelf.results.freeze(result(out_of_date=(reason,)))

    with store.looking() as shelf:
        assert shelf.results.find("0a1b2c").out_of_date == (reason,)
