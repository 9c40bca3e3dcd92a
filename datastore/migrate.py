"""Bring a database file up to the schema of this version, after a backup of it, in one transaction."""

import os
import sqlite3
from contextlib import closing
from importlib.resources import as_file, files
from pathlib import Path

from sqlalchemy import Connection

from datastore.durable import sync
from datastore.session import open_engine, told_plainly
from service.facts.keeping_error import StoreError

HEAD = "0001"
"""The revision that this version works with: the newest file in migrations/versions."""


def bring_up_to_date(database: Path) -> None:
    """Create the schema, or bring it forward; a file with contents is backed up beside itself first.

    Args:
        database: The SQLite file; created where it is absent.

    Raises:
        StoreError: The file comes from a later version, or is no database.
    """
    revision = revision_of(database)
    if revision == HEAD:
        return
    if revision is not None:
        back_up(database, database.with_name(f"{database.stem}.before-{HEAD}.sqlite3"))
    engine = open_engine(database, writing=True)
    try:
        # Why one transaction from the first look to the last statement: of two processes that start at once the second
        # waits its turn and finds the work done; one that is killed leaves the old schema.
        with told_plainly(), engine.begin() as connection:
            upgrade(connection, to=HEAD)
    finally:
        engine.dispose()


def revision_of(database: Path) -> str | None:
    """Tell which schema a file has.

    Args:
        database: The SQLite file.

    Returns:
        The revision, None for a file that is absent or has no schema yet.

    Raises:
        StoreError: The file is no database, or comes from a later version.
    """
    if not database.is_file():
        return None
    try:
        with closing(sqlite3.connect(database, timeout=30)) as connection:
            if not connection.execute("SELECT 1 FROM sqlite_master WHERE name = 'alembic_version'").fetchone():
                return None
            found = connection.execute("SELECT version_num FROM alembic_version").fetchone()
    except sqlite3.DatabaseError as error:
        raise StoreError(f"{database} cannot be opened as a database ({error}); restore it from a backup") from error
    if found is None or found[0] > HEAD:
        raise StoreError(f"{database} has the schema {found and found[0]}, this version knows {HEAD} at most: install the version that wrote it")
    return str(found[0])


def back_up(database: Path, copy: Path) -> None:
    """Copy a database while it may be in use; the copy stands under its name only once it is whole and synced.

    Args:
        database: The SQLite file.
        copy: Where the copy goes; replaced where it is there.

    Raises:
        StoreError: There is no room for the copy, or it does not pass SQLite's own integrity check.
    """
    unfinished = copy.with_name(f"{copy.name}.{os.getpid()}.unfinished")
    try:
        with closing(sqlite3.connect(database, timeout=30)) as source, closing(sqlite3.connect(unfinished)) as target:
            source.backup(target)
            verdict = str(target.execute("PRAGMA integrity_check").fetchone()[0])
    except sqlite3.DatabaseError as error:
        verdict = str(error)
    if verdict != "ok":
        unfinished.unlink(missing_ok=True)
        raise StoreError(
            f"the backup of {database} before the upgrade failed ({verdict}); nothing was changed: make room, or restore an older backup"
        )
    sync(unfinished)
    unfinished.replace(copy)
    sync(copy.parent)


def upgrade(connection: Connection, *, to: str) -> None:
    """Run the migrations that a database lacks, within the transaction of the connection.

    Args:
        connection: An open transaction.
        to: The revision to end at.
    """
    # Why here: importing it costs a third of a second, which only a start that changes the schema has to pay.
    from alembic import command  # noqa: PLC0415
    from alembic.config import Config  # noqa: PLC0415

    with as_file(files("datastore") / "migrations") as scripts:
        config = Config()
        config.set_main_option("script_location", str(scripts).replace("%", "%%"))
        config.attributes["connection"] = connection
        command.upgrade(config, to)
