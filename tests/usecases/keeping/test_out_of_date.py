"""What puts a result out of date, and what still asks for something."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from service.facts.change import Change
from service.facts.kept_board import KeptBoard
from service.facts.reading import Limit
from service.facts.result import InputKind, Result, UsedInput
from service.facts.sourced import Known, Sourced
from service.facts.switch import RatedValue, Switch
from service.usecases.freeze_result import UnknownInputError, freeze_result
from service.usecases.out_of_date import mark_results_of_board
from service.usecases.ports import MarkingReader, Store
from service.usecases.see_bench import see_bench
from service.usecases.see_progress import Step
from service.usecases.type_part import type_part

BOARD = UsedInput(kind=InputKind.BOARD, id="dinghy", version=1, name="board")


@pytest.fixture
def save(store: Store, act: Callable[..., Change]) -> Callable[[int], None]:
    """Save a version of a board."""

    def save_version(version: int) -> None:
        change = act(f"counted {version} times")
        board = KeptBoard(slug="dinghy", version=version, title="Dinghy", text="", document="{}", parts=(), change=change)
        with store.changing() as shelf:
            shelf.boards.save(board)
            mark_results_of_board(shelf, board)

    return save_version


def reasons(store: Store, name: str = "a") -> list[str]:
    """Why a result is out of date."""
    with store.looking() as shelf:
        return [reason.reason for reason in shelf.results.find(name).out_of_date]


def test_a_board_described_anew_puts_its_results_out_of_date(store: Store, save: Callable[[int], None], result: Callable[..., Result]) -> None:
    """Each new version is a reason of its own; the report stays what it was."""
    save(1)
    freeze_result(replace(result(BOARD), board="dinghy"), store=store)
    assert reasons(store) == []
    save(2)
    save(3)

    assert reasons(store) == ["the board was described anew: counted 2 times", "the board was described anew: counted 3 times"]


def test_a_result_of_a_board_that_was_changed_meanwhile_is_frozen_out_of_date(
    store: Store, save: Callable[[int], None], result: Callable[..., Result]
) -> None:
    """Two people at one board."""
    save(1)
    save(2)
    freeze_result(result(BOARD), store=store)

    assert reasons(store) == ["the board was changed"]


def test_a_result_of_a_part_that_was_typed_anew_meanwhile_is_frozen_out_of_date(
    store: Store, markings: MarkingReader, result: Callable[..., Result], act: Callable[..., Change]
) -> None:
    """And one of a typing that never was is refused."""
    for ohm in (0.004, 0.005):
        value = RatedValue(key="rds_on", limit=Limit.MAX, sourced=Sourced(value=ohm, unit="ohm", known=Known.TYPED))
        type_part(Switch(marking="CD30", values=(value,)), store=store, markings=markings, change=act())
    used = UsedInput(kind=InputKind.TYPED_PART, id="CD30", version=1, name="part")
    freeze_result(result(used), store=store)

    assert reasons(store) == ["CD30 was typed anew"]
    for unknown in (replace(used, version=3), replace(used, id="CD31")):
        with pytest.raises(UnknownInputError):
            freeze_result(result(unknown, name="b"), store=store)


def test_the_bench_asks_for_what_was_not_judged_again(store: Store, save: Callable[[int], None], result: Callable[..., Result]) -> None:
    """A result whose board has a later one asks for nothing more."""
    save(1)
    freeze_result(replace(result(BOARD, name="first"), board="dinghy"), store=store)
    save(2)
    assert [(line.step, line.detail) for line in see_bench(store).boards] == [(Step.AGAIN, "the board was described anew: counted 2 times")]
    freeze_result(replace(result(replace(BOARD, version=2), name="second"), board="dinghy"), store=store)

    line = see_bench(store).boards[0]
    assert (line.judged.result.id, line.step) == ("second", Step.NONE)
