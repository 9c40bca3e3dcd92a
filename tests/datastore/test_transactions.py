"""Whole or not at all, on both shelves."""

import threading

import pytest

from service.facts.document import Document
from service.facts.keeping_error import StoreError
from service.usecases.ports import Store


class PowerCutError(Exception):
    """Whatever may go wrong between two steps."""


def test_a_step_that_fails_leaves_nothing_behind(store: Store, document: Document) -> None:
    """What was written before the fault is gone."""

    def fail_half_way() -> None:
        with store.changing() as shelf:
            shelf.documents.add(document)
            raise PowerCutError

    with pytest.raises(PowerCutError):
        fail_half_way()

    with store.looking() as shelf:
        assert shelf.documents.listed() == ()


def test_nothing_can_be_written_while_looking(store: Store, document: Document) -> None:
    """A look that would change something is refused."""
    with pytest.raises(StoreError, match="nothing of this step was kept"), store.looking() as shelf:
        shelf.documents.add(document)

    with store.looking() as shelf:
        assert shelf.documents.listed() == ()


def test_writers_take_turns_and_none_is_refused(store: Store, document: Document) -> None:
    """Eight at once, each adding to what the others wrote."""
    refusals: list[Exception] = []

    def count_up() -> None:
        try:
            with store.changing() as shelf:
                known = len(shelf.documents.listed())
                shelf.documents.add(Document(sha256=f"{known:064x}", name=document.name, size=1, taken_in=document.taken_in))
        except Exception as error:  # noqa: BLE001 - whatever a writer meets is a refusal
            refusals.append(error)

    threads = [threading.Thread(target=count_up) for _writer in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert refusals == []
    with store.looking() as shelf:
        assert len(shelf.documents.listed()) == 8
