"""The store on the disk: a database file and a folder of files in one data folder."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cached_property
from pathlib import Path

from platformdirs import user_data_path
from sqlalchemy import Engine
from sqlalchemy.orm import Session

from datastore.blobs import FolderFiles
from datastore.durable import make_folder
from datastore.filesystem import refuse_network_folder
from datastore.migrate import bring_up_to_date
from datastore.repositories.boards import SqlBoards
from datastore.repositories.changes import Changes
from datastore.repositories.documents import SqlDocuments
from datastore.repositories.parts import SqlParts
from datastore.repositories.readings import SqlReadings
from datastore.repositories.results import SqlResults
from datastore.repositories.wanted import SqlWantedParts
from datastore.session import open_engine, told_plainly

DATABASE = "switchbank.sqlite3"


def default_folder() -> Path:
    """Where this platform keeps a program's data of this user."""
    return user_data_path("switchbank", appauthor=False)


class SqlShelf:
    """Everything that the store holds, as one transaction sees it.

    Args:
        session: The transaction.
    """

    def __init__(self, session: Session) -> None:
        self._session, self._changes = session, Changes(session)

    @cached_property
    def documents(self) -> SqlDocuments:
        """Files that were taken in."""
        return SqlDocuments(self._session, self._changes)

    @cached_property
    def readings(self) -> SqlReadings:
        """Readings with their history."""
        return SqlReadings(self._session, self._changes)

    @cached_property
    def parts(self) -> SqlParts:
        """Parts under all their names."""
        return SqlParts(self._session, self._changes)

    @cached_property
    def wanted(self) -> SqlWantedParts:
        """Parts that wait for a datasheet."""
        return SqlWantedParts(self._session, self._changes)

    @cached_property
    def boards(self) -> SqlBoards:
        """Saved boards."""
        return SqlBoards(self._session, self._changes)

    @cached_property
    def results(self) -> SqlResults:
        """Frozen reports."""
        return SqlResults(self._session, self._changes)


class SqlStore:
    """The store in a data folder; one instance may serve several threads, and forked children.

    Args:
        folder: The data folder; created, and its database brought up to date, where needed.

    Raises:
        StoreError: The folder is on a network file system, or its database comes from a later version.
    """

    def __init__(self, folder: Path) -> None:
        refuse_network_folder(folder)
        make_folder(folder)
        self._database = folder / DATABASE
        self._engines: dict[tuple[int, bool], Engine] = {}
        self.files = FolderFiles(folder / "files")
        bring_up_to_date(self._database)

    @contextmanager
    def looking(self) -> Iterator[SqlShelf]:
        """Look at one moment of the store."""
        with told_plainly(), Session(self._engine(writing=False)) as session:
            yield SqlShelf(session)

    @contextmanager
    def changing(self) -> Iterator[SqlShelf]:
        """Change the store: all of the block when it ends, nothing of it when it raises."""
        with told_plainly(), Session(self._engine(writing=True)) as session, session.begin():
            yield SqlShelf(session)

    def close(self) -> None:
        """Close this process's connections."""
        for (process, _writing), engine in self._engines.items():
            if process == os.getpid():
                engine.dispose()

    def _engine(self, *, writing: bool) -> Engine:
        """This process's own engine: connections do not survive a fork, and an inherited one must not be closed either."""
        key = (os.getpid(), writing)
        # Why setdefault and no lock: a lock held by another thread at a fork would stay locked in the child for ever.
        return self._engines.get(key) or self._engines.setdefault(key, open_engine(self._database, writing=writing))
