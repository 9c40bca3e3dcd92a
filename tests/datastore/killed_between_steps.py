"""Work that is killed before each of its steps in turn; run by test_killed_between_steps in a process of its own.

Why of its own: the children are forked, and must be forked before the object store has started a thread.
"""

import hashlib
import json
import os
import shutil
import sqlite3
import sys
from collections.abc import Callable
from contextlib import closing, suppress
from pathlib import Path

import obstore
from sqlalchemy import Engine, event

import parsers.marking
from datastore.memory import MemoryFiles
from datastore.store import DATABASE, SqlStore
from service.facts.change import Change
from service.facts.keeping_error import MovedOnError
from service.facts.reading import Conditions, Limit, Reading, Sheet, Status
from service.facts.result import InputKind, Result, UsedInput
from service.usecases.freeze_result import freeze_result
from service.usecases.keep_sheet import keep_sheet, take_in
from service.usecases.ports import Files
from service.usecases.review_reading import correct

DATA = b"%PDF-1.7 an invented sheet" * 5000
SHA = hashlib.sha256(DATA).hexdigest()
ACT = Change(by="Ada", at="2026-11-02T09:00:00Z", why="it says 2.6")
READING = Reading(
    id="r-1", key="rds_on", limit=Limit.MAX, value=2.4, unit="mohm", printed="2.4", si=0.0024, cond=Conditions(), status=Status.ACCEPTED,
    evidence=(), why="", page=1, bbox=(0.0, 0.0, 9.0, 9.0), row_bbox=(0.0, 0.0, 9.0, 9.0), quote="",
)  # fmt: skip
SHEET = Sheet(reader_version="1", file="a.pdf", sha256=SHA, part="AB75N40", readings=(READING,))
RESULT = Result(
    id="a", title="a", report="{}", inputs=(UsedInput(kind=InputKind.READING, id="r-1", version=1, name="rds_on max"),), parts=(), board=None,
    rule_set="maker", engine_version="1", typed=False, look_at=(), change=ACT,
)  # fmt: skip
KILLED = 77


def work(folder: Path, told: Callable[[str], None], files: Files | None = None) -> None:
    """A person's day: take a sheet in, keep what was read, freeze a result, correct the reading; each told once it is done."""
    store = SqlStore(folder)
    store.files = files or store.files
    take_in("a.pdf", DATA, store=store, change=ACT)
    told("taken in")
    keep_sheet(SHEET, store=store, markings=parsers.marking, change=ACT)
    told("kept")
    freeze_result(RESULT, store=store)
    told("frozen")
    with suppress(MovedOnError):  # the second time it was corrected before
        correct("r-1", written="2.6 mohm", version=1, store=store, change=ACT)
    told("corrected")
    store.close()


def die_before(step: int) -> None:
    """Arrange for this process to stop dead before one of its steps: a writing statement, a commit, a sync, a stored file."""
    left = iter(range(step))

    def count(*_anything: object, **_more: object) -> None:
        if next(left, None) is None:
            os._exit(KILLED)

    def count_writing(_connection: object, _cursor: object, statement: str, *_more: object) -> None:
        if not statement.startswith("SELECT"):
            count()

    def counted(call: Callable[..., object]) -> Callable[..., object]:
        return lambda *given, **named: (count(), call(*given, **named))[1]

    event.listen(Engine, "before_cursor_execute", count_writing)
    event.listen(Engine, "commit", count)
    os.fsync = counted(os.fsync)
    obstore.put = counted(obstore.put)


def found(folder: Path, done: list[str]) -> list[str]:
    """What is broken in a store, asked without any of our code."""
    with closing(sqlite3.connect(folder / DATABASE)) as connection:

        def ask(query: str) -> list[tuple[object, ...]]:
            return connection.execute(query).fetchall()

        tables = [name for (name,) in ask("SELECT name FROM sqlite_master WHERE type = 'table'")]
        broken = [f"integrity: {row}" for row in ask("PRAGMA integrity_check") if row != ("ok",)]
        broken += [f"foreign key: {row}" for row in ask("PRAGMA foreign_key_check")]
        rows = {name: ask(f"SELECT * FROM {name}") for name in tables}  # noqa: S608 - names from the database itself
        stands = ask("SELECT r.version, e.version FROM reading r JOIN reading_entry e ON e.reading_id = r.id ORDER BY e.version DESC LIMIT 1")
    for sha256, *_row in rows["document"]:
        file = folder / "files" / "sha256" / sha256[:2] / sha256[2:4] / sha256
        if not file.is_file() or hashlib.sha256(file.read_bytes()).hexdigest() != sha256:
            broken.append(f"the row {sha256} has no such file")
    there = {
        "taken in": bool(rows["document"]),
        "kept": bool(rows["sheet"]) and bool(rows["reading"]) and bool(rows["part_sheet"]),
        "frozen": bool(rows["result"]),
        "corrected": len(rows["reading_entry"]) == 2,
    }
    broken += [f"{step} was told and is not there" for step in done if not there[step]]
    if there["corrected"] != bool(rows["out_of_date"]):
        broken.append("a correction and its mark are not one step")
    if bool(rows["sheet"]) != bool(rows["part_sheet"]) or any(pointer != last for pointer, last in stands):
        broken.append("a sheet is kept by halves")
    return broken


def run(folder: Path, step: int) -> dict[str, object]:
    """Work in a child that dies, look, and do the same work again on what is left."""
    shutil.copytree(folder.parent / "empty", folder)
    for attempt in ("killed", "again"):
        child = os.fork()
        if child == 0:
            if attempt == "killed":
                die_before(step)
            with (folder / attempt).open("a", encoding="utf-8") as log:
                work(folder, lambda told: print(told, file=log, flush=True))
            os._exit(0)
        code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        broken = found(folder, (folder / attempt).read_text(encoding="utf-8").splitlines())
        if attempt == "killed":
            first = {"step": step, "exit": code, "broken": broken}
    return first | {"exit again": code, "broken again": broken}


def main() -> None:
    """Kill before step 0, 1, 2 ... until the work comes to its end."""
    folder = Path(sys.argv[1])
    SqlStore(folder / "empty").close()
    # Why once without killing, and without the object store: the children then find everything imported and configured.
    work(folder / "warm", lambda _told: None, MemoryFiles())
    for step in range(1000):
        outcome = run(folder / str(step), step)
        sys.stdout.write(f"{json.dumps(outcome)}\n")
        if outcome["exit"] != KILLED:
            return


if __name__ == "__main__":
    main()
