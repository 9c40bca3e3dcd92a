"""What every wish stands on: the data folder, its store, the clock, and who asks."""

import getpass
from collections.abc import Iterator
from contextlib import closing, contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from service.facts.change import Change

if TYPE_CHECKING:
    from datastore.store import SqlStore
    from service.usecases.ports import MarkingReader, Store


def open_store(data_dir: Path | None) -> "SqlStore":
    """The store in a data folder, this user's where none is named."""
    from datastore.store import SqlStore

    return SqlStore(folder_of(data_dir))


@contextmanager
def store_to_look_at(data_dir: Path | None) -> "Iterator[Store]":
    """The store where there is one; an empty one otherwise, so that looking leaves nothing behind."""
    from datastore.memory import MemoryStore
    from datastore.store import DATABASE

    if not (folder_of(data_dir) / DATABASE).exists():
        yield MemoryStore()
        return
    with closing(open_store(data_dir)) as store:
        yield store


def folder_of(data_dir: Path | None) -> Path:
    """The data folder."""
    from datastore.store import default_folder

    return data_dir or default_folder()


def markings() -> "MarkingReader":
    """What is known of the confusions of eye and OCR."""
    from parsers import marking

    return marking


def change(why: str) -> Change:
    """Who does something now, and why."""
    return Change(by=who(), at=now().isoformat(timespec="seconds"), why=why)


def now() -> datetime:
    """What time it is."""
    return datetime.now(UTC)


def who() -> str:
    """The name of this machine's user."""
    try:
        return getpass.getuser()
    except OSError:
        return "somebody on this machine"
