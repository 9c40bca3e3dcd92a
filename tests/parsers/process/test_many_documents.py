"""Many documents: in order, the same with any number of workers, and one that hangs does not hold up the others."""

import threading
import time
from dataclasses import replace

import misbehaviour
import pytest
from test_one_document import pdf

from parsers.process import one_document, read_documents
from parsers.process.limits import Limits

READ = f"{misbehaviour.__name__}:read"


@pytest.fixture
def _short_wall(monkeypatch):
    """A hang ends within a test's time."""
    monkeypatch.setattr(Limits, "wall_s", property(lambda _: 2))


def test_sheets_come_in_the_order_of_the_files():
    """Whoever is ready first waits for its turn."""
    files = [(f"{number}.pdf", pdf(pages=number % 3 + 1)) for number in range(12)]

    assert [sheet.file for sheet in read_documents(files, workers=3, function=READ)] == [name for name, _ in files]


def test_one_worker_and_two_give_the_same():
    """Sheets do not depend on who read them when."""
    files = [(f"{number}.pdf", pdf(behave)) for number, behave in enumerate(["", "error", "abort", "", "leave"])]

    one, two = (list(read_documents(files, workers=workers, function=READ)) for workers in (1, 2))

    assert one == two


@pytest.mark.usefixtures("_short_wall")
def test_a_document_that_hangs_costs_the_others_nothing():
    """While one child sleeps until its time is up, the other worker reads all that is left."""
    files = [("asleep.pdf", pdf("sleep")), *((f"{number}.pdf", pdf()) for number in range(10))]
    began = time.monotonic()

    sheets = list(read_documents(files, workers=2, function=READ))

    assert sheets[0].refused.kind == "too_slow"
    assert all(sheet.refused is None for sheet in sheets[1:])
    assert time.monotonic() - began < 15


def test_paths_are_opened_when_their_turn_comes(tmp_path):
    """A drawer of files is not held in memory; a name is the file's base name."""
    (tmp_path / "a.pdf").write_bytes(pdf())

    (sheet,) = read_documents([tmp_path / "a.pdf"], workers=1, function=READ)

    assert sheet.file == "a.pdf"


def test_a_file_that_is_not_there_is_an_error_of_the_caller(tmp_path):
    """It is no document, so there is nothing to refuse."""
    with pytest.raises(FileNotFoundError):
        list(read_documents([tmp_path / "missing.pdf"], workers=1, function=READ))


def test_the_workers_end_with_the_reading():
    """Neither a finished nor an abandoned reading leaves threads behind."""
    files = [(f"{number}.pdf", pdf()) for number in range(4)]
    sheets = read_documents(files, workers=2, function=READ)
    next(sheets)
    sheets.close()
    ended = time.monotonic() + 5
    while any(thread.name == "reading" for thread in threading.enumerate()) and time.monotonic() < ended:
        time.sleep(0.02)

    assert not [thread for thread in threading.enumerate() if thread.name == "reading"]


def test_isolation_is_the_only_thing_that_depends_on_the_machine():
    """Without it, two readings of a file are equal."""
    first, second = (one_document.read_document("a.pdf", pdf(), function=READ) for _ in range(2))

    assert replace(first, isolation={}) == replace(second, isolation={})
