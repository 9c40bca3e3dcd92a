"""Several processes open the same empty folder and bring the same file at the same moment."""

import multiprocessing
import sqlite3
from contextlib import closing
from multiprocessing.synchronize import Barrier
from pathlib import Path

import parsers.marking
from datastore.store import DATABASE, SqlStore
from service.facts.change import Change
from service.facts.reading import Sheet
from service.usecases.keep_sheet import keep_sheet, take_in

DATA = b"%PDF-1.7 an invented sheet" * 5000


def _bring(folder: Path, start: Barrier, number: int) -> None:
    """What each process does."""
    act = Change(by=f"process {number}", at="2026-11-02T09:00:00Z", why="at the same moment")
    start.wait()
    store = SqlStore(folder)
    taken = take_in(f"{number}.pdf", DATA, store=store, change=act)
    sheet = Sheet(reader_version="1", file="a.pdf", sha256=taken.document.sha256, part="AB75N40")
    keep_sheet(sheet, store=store, markings=parsers.marking, change=act)
    store.close()


def test_processes_at_once_make_one_schema_one_file_and_one_document(tmp_path: Path) -> None:
    """None is refused, and nothing is there twice."""
    spawn = multiprocessing.get_context("spawn")
    start = spawn.Barrier(3)
    processes = [spawn.Process(target=_bring, args=(tmp_path, start, number)) for number in range(3)]
    for process in processes:
        process.start()
    for process in processes:
        process.join(timeout=120)

    assert [process.exitcode for process in processes] == [0, 0, 0]
    assert len([path for path in (tmp_path / "files").rglob("*") if path.is_file()]) == 1
    with closing(sqlite3.connect(tmp_path / DATABASE)) as connection:
        counts = [connection.execute(f"SELECT count(*) FROM {table}").fetchone()[0] for table in ("document", "sheet", "part", "part_sheet")]  # noqa: S608 - our own tables
    assert counts == [1, 1, 1, 1]
