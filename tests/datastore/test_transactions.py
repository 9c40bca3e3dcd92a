"""Whole or not at all, on both shelves."""

import os
import threading

import pytest

from datastore.store import SqlStore
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


# Why: the child does nothing but SQLite, which has no threads; whatever threads the test runner has are not missed there.
@pytest.mark.filterwarnings("ignore:.*multi-threaded, use of fork:DeprecationWarning")
def test_a_forked_child_has_connections_of_its_own(disk: SqlStore, document: Document) -> None:
    """It writes, and the parent that had the store open before reads it."""
    with disk.looking() as shelf:
        assert shelf.documents.listed() == ()
    child = os.fork()
    if child == 0:
        try:
            with disk.changing() as shelf:
                shelf.documents.add(document)
            os._exit(0)
        finally:
            os._exit(1)

    assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 0
    with disk.looking() as shelf:
        assert shelf.documents.listed() == (document,)


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
