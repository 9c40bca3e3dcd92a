"""Connections to the SQLite file, set up so that what was acknowledged survives a crash.

Why two ways to begin: a writer that begins as a reader and then writes can be refused at once when another writer was faster
("database is locked"); one that says so at the start waits its turn.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import Engine, create_engine, event
from sqlalchemy.engine import Connection
from sqlalchemy.engine.interfaces import DBAPIConnection
from sqlalchemy.exc import DBAPIError
from sqlalchemy.pool import ConnectionPoolEntry

from service.facts.keeping_error import StoreError

WAL_IS_SOUND_FROM = (3, 51, 3)
"""Below this SQLite version two connections and a checkpoint can corrupt a write-ahead log."""
WAIT_MS = 30_000
"""How long a writer waits for its turn before it gives up. [ms]"""


def journal_for(version: tuple[int, int, int]) -> tuple[str, str]:
    """Choose the journal and its syncing: both pairs lose nothing that was committed when power fails.

    Args:
        version: SQLite's version.

    Returns:
        Values of the pragmas ``journal_mode`` and ``synchronous``.
    """
    return ("WAL", "FULL") if version >= WAL_IS_SOUND_FROM else ("DELETE", "EXTRA")


def open_engine(path: Path, *, writing: bool) -> Engine:
    """Open the database file.

    Args:
        path: The file; created where it is absent.
        writing: Whether transactions take the writer's turn when they begin; else nothing can be written at all.

    Returns:
        An engine for this process alone; a forked child opens its own.
    """
    engine = create_engine(f"sqlite:///{path}")

    @event.listens_for(engine, "connect")
    def set_up(connection: DBAPIConnection, _entry: ConnectionPoolEntry) -> None:
        _set_up(connection, writing=writing)

    @event.listens_for(engine, "begin")
    def begin(connection: Connection) -> None:
        connection.exec_driver_sql("BEGIN IMMEDIATE" if writing else "BEGIN")

    return engine


def _set_up(connection: DBAPIConnection, *, writing: bool) -> None:
    """Give a new connection its settings."""
    journal, synchronous = journal_for(sqlite3.sqlite_version_info)
    # Why None: Python's module must not open transactions of its own; the "begin" event does, for schema changes too.
    connection.isolation_level = None
    for pragma in (
        f"busy_timeout={WAIT_MS}",
        f"journal_mode={journal}",
        f"synchronous={synchronous}",
        "foreign_keys=ON",
        f"query_only={'OFF' if writing else 'ON'}",
    ):
        connection.cursor().execute(f"PRAGMA {pragma}")


@contextmanager
def told_plainly() -> Iterator[None]:
    """Turn the database's own errors into ours, with what it said; they are about its turn, its disk or its file.

    Raises:
        StoreError: The database refused; nothing of the transaction is kept.
    """
    try:
        yield
    except DBAPIError as error:
        raise StoreError(f"the database refused, and nothing of this step was kept: {error.orig}") from error
