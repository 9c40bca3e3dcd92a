"""The schema: made by its steps, backed up before each change, wholly old or wholly new."""

import os
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Column, Integer, MetaData, Table

import datastore.migrate
from datastore.migrate import HEAD, back_up, bring_up_to_date, revision_of, upgrade
from datastore.models import METADATA
from datastore.session import open_engine
from datastore.store import DATABASE, SqlStore
from service.facts.document import Document
from service.facts.keeping_error import StoreError

MIGRATIONS = Path(datastore.migrate.__file__).parent / "migrations"


def differences(database: Path, metadata: MetaData) -> list[object]:
    """What Alembic would change to make a file fit the models."""
    engine = open_engine(database, writing=False)
    with engine.connect() as connection:
        found = compare_metadata(MigrationContext.configure(connection, opts={"compare_type": True}), metadata)
    engine.dispose()
    return found


def rows(database: Path, query: str) -> list[tuple[object, ...]]:
    """Ask the file without any of our code."""
    with closing(sqlite3.connect(database)) as connection:
        return connection.execute(query).fetchall()


def test_the_steps_from_empty_make_what_the_models_say(tmp_path: Path) -> None:
    """No difference in tables, columns, types, keys or indexes."""
    bring_up_to_date(tmp_path / DATABASE)

    assert differences(tmp_path / DATABASE, METADATA) == []


def test_the_comparison_would_see_a_difference(tmp_path: Path) -> None:
    """Proof that the test above can fail."""
    bring_up_to_date(tmp_path / DATABASE)
    other = MetaData()
    for table in METADATA.tables.values():
        table.to_metadata(other)
    other.tables["part"].append_column(Column("colour", Integer))
    Table("forgotten", other, Column("id", Integer, primary_key=True))

    assert len(differences(tmp_path / DATABASE, other)) == 2


def test_the_newest_step_is_the_one_that_this_version_works_with() -> None:
    """One line of steps, with one end."""
    assert ScriptDirectory(str(MIGRATIONS)).get_heads() == [HEAD]


def test_a_file_of_a_later_version_is_refused_untouched(tmp_path: Path) -> None:
    """An older program does not guess at a schema that it does not know."""
    bring_up_to_date(tmp_path / DATABASE)
    with closing(sqlite3.connect(tmp_path / DATABASE)) as connection, connection:
        connection.execute("UPDATE alembic_version SET version_num = '9999'")

    with pytest.raises(StoreError, match=r"9999.*install the version that wrote it"):
        SqlStore(tmp_path)


def test_a_file_with_contents_is_backed_up_before_a_step(tmp_path: Path, document: Document, monkeypatch: pytest.MonkeyPatch) -> None:
    """The copy opens clean and holds what was there."""
    store = SqlStore(tmp_path)
    with store.changing() as shelf:
        shelf.documents.add(document)
    store.close()
    monkeypatch.setattr(datastore.migrate, "HEAD", "0002")
    monkeypatch.setattr(datastore.migrate, "upgrade", lambda connection, **_to: connection.exec_driver_sql("CREATE TABLE later (id INTEGER)"))

    bring_up_to_date(tmp_path / DATABASE)

    copy = tmp_path / "switchbank.before-0002.sqlite3"
    assert rows(copy, "PRAGMA integrity_check") == [("ok",)]
    assert rows(copy, "SELECT sha256 FROM document") == [(document.sha256,)]
    assert rows(copy, "SELECT name FROM sqlite_master WHERE name = 'later'") == []
    assert rows(tmp_path / DATABASE, "SELECT name FROM sqlite_master WHERE name = 'later'") == [("later",)]
    assert list(tmp_path.glob("*.unfinished")) == []


def test_a_backup_is_synced_before_it_stands_under_its_name(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """First its contents, then the folder that names it."""
    bring_up_to_date(tmp_path / DATABASE)
    steps: list[str] = []
    monkeypatch.setattr(os, "fsync", lambda handle: steps.append(Path(f"/proc/self/fd/{handle}").readlink().name.partition(".")[0]))
    replace = Path.replace
    monkeypatch.setattr(Path, "replace", lambda self, to: (steps.append("rename"), replace(self, to))[1])

    back_up(tmp_path / DATABASE, tmp_path / "copy.sqlite3")

    assert steps == ["copy", "rename", tmp_path.name.partition(".")[0]]


# Why: the child does nothing but SQLite, which has no threads; whatever threads the test runner has are not missed there.
@pytest.mark.filterwarnings("ignore:.*multi-threaded, use of fork:DeprecationWarning")
@pytest.mark.parametrize("after", range(0, 30, 3))
def test_a_step_that_is_killed_leaves_the_old_schema(tmp_path: Path, after: int) -> None:
    """Wholly old, wherever it stopped; the next start does the whole of it."""
    child = os.fork()
    if child == 0:
        _upgrade_and_die(tmp_path / DATABASE, after=after)
    assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 77, "the child was not stopped where it should have been"

    assert revision_of(tmp_path / DATABASE) is None
    assert rows(tmp_path / DATABASE, "SELECT count(*) FROM sqlite_master") == [(0,)]
    bring_up_to_date(tmp_path / DATABASE)
    assert revision_of(tmp_path / DATABASE) == HEAD


def _upgrade_and_die(database: Path, *, after: int) -> None:
    """Stop dead at one of the statements of a migration."""
    try:
        engine = open_engine(database, writing=True)
        with engine.begin() as connection:
            left = iter([None] * after)
            connection.connection.driver_connection.set_trace_callback(lambda _statement: next(left, os._exit) and os._exit(77))
            upgrade(connection, to=HEAD)
    finally:
        os._exit(1)


def test_opening_again_changes_and_copies_nothing(tmp_path: Path) -> None:
    """Only a step to another schema does."""
    bring_up_to_date(tmp_path / DATABASE)
    before = (tmp_path / DATABASE).read_bytes()
    bring_up_to_date(tmp_path / DATABASE)

    assert (tmp_path / DATABASE).read_bytes() == before
    assert [path.name for path in tmp_path.iterdir()] == [DATABASE]


def test_a_backup_that_is_damaged_stops_the_step(tmp_path: Path) -> None:
    """A torn page in the middle of the file is copied as it is, and SQLite's check finds it."""
    bring_up_to_date(tmp_path / DATABASE)
    torn = bytearray((tmp_path / DATABASE).read_bytes())
    torn[8192:12288] = b"\x55" * 4096
    (tmp_path / DATABASE).write_bytes(bytes(torn))

    with pytest.raises(StoreError, match="restore an older backup"):
        back_up(tmp_path / DATABASE, tmp_path / "copy.sqlite3")
    assert not (tmp_path / "copy.sqlite3").exists()
