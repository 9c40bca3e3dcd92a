"""How the database file is opened."""

import sqlite3
import sys
from pathlib import Path

import pytest

from datastore.filesystem import kind_of, refuse_network_folder
from datastore.session import journal_for, open_engine
from datastore.store import DATABASE, SqlStore, default_folder
from service.facts.keeping_error import StoreError


@pytest.mark.parametrize(
    ("version", "pair"),
    [((3, 40, 1), ("DELETE", "EXTRA")), ((3, 51, 2), ("DELETE", "EXTRA")), ((3, 51, 3), ("WAL", "FULL")), ((3, 53, 0), ("WAL", "FULL"))],
)
def test_the_write_ahead_log_is_used_only_where_it_is_sound(version: tuple[int, int, int], pair: tuple[str, str]) -> None:
    """SQLite repaired its log in 3.51.3 (sqlite.org, release log); both pairs sync what was committed."""
    assert journal_for(version) == pair


@pytest.mark.parametrize("writing", [True, False])
def test_every_connection_is_set_up(tmp_path: Path, *, writing: bool) -> None:
    """SQLite's own answers: its pragma page gives FULL the number 2 and EXTRA the number 3."""
    journal, synchronous = journal_for(sqlite3.sqlite_version_info)
    engine = open_engine(tmp_path / "x.sqlite3", writing=writing)
    names = ("foreign_keys", "journal_mode", "synchronous", "query_only", "busy_timeout")
    with engine.connect() as connection:
        answers = {name: connection.exec_driver_sql(f"PRAGMA {name}").scalar() for name in names}
    engine.dispose()

    assert answers == {
        "foreign_keys": 1,
        "journal_mode": journal.lower(),
        "synchronous": {"FULL": 2, "EXTRA": 3}[synchronous],
        "query_only": 0 if writing else 1,
        "busy_timeout": 30_000,
    }


@pytest.mark.parametrize("kind", ["nfs4", "cifs", "fuse.sshfs"])
def test_a_network_folder_is_refused_with_its_kind_and_mount(tmp_path: Path, kind: str) -> None:
    """The words say what to do."""
    mounts = tmp_path / "mounts"
    mounts.write_text(f"/dev/sda1 / ext4 rw 0 0\nserver:/share {tmp_path} {kind} rw 0 0\n")

    with pytest.raises(StoreError, match=rf"{kind}, mounted at {tmp_path}.*choose a folder on a disk of this machine"):
        refuse_network_folder(tmp_path / "data", mounts=mounts)


def test_a_disk_mounted_over_a_network_folder_is_a_disk(tmp_path: Path) -> None:
    """The deepest mount counts, of several on one point the last; its name may have spaces."""
    mounts = tmp_path / "mounts"
    mounts.write_text("server:/s /mnt nfs rw 0 0\n/dev/a /mnt/my\\040disk nfs rw 0 0\n/dev/b /mnt/my\\040disk ext4 rw 0 0\n")

    assert kind_of(Path("/mnt/my disk/data"), mounts=mounts) == ("ext4", "/mnt/my disk")
    assert kind_of(Path("/mnt/other"), mounts=mounts) == ("nfs", "/mnt")
    assert kind_of(Path("/mnt/other"), mounts=tmp_path / "absent") == ("", "")


def test_a_file_that_is_no_database_is_told(tmp_path: Path) -> None:
    """Instead of a stack of driver errors."""
    (tmp_path / DATABASE).write_bytes(b"no database at all" * 100)

    with pytest.raises(StoreError, match="restore it from a backup"):
        SqlStore(tmp_path)


def test_the_data_folder_is_the_platforms(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """On Linux below XDG_DATA_HOME (freedesktop.org, Base Directory Specification)."""
    if sys.platform != "linux":
        pytest.skip("the folder of other platforms is platformdirs' matter")
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))

    assert default_folder() == tmp_path / "switchbank"
