"""Files on the disk and in memory."""

import hashlib
import multiprocessing
import os
import subprocess
import sys
import threading
from multiprocessing.synchronize import Barrier
from pathlib import Path

import pytest

from datastore.blobs import FolderFiles, place_of
from datastore.memory import MemoryFiles
from service.facts.keeping_error import DamagedFileError
from service.usecases.ports import Files

DATA = b"%PDF-1.7 an invented sheet\n" * 40_000


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Where files lie."""
    return tmp_path / "files"


@pytest.fixture(params=["memory", "folder"])
def files(request: pytest.FixtureRequest, folder: Path) -> Files:
    """Each kind of shelf in turn."""
    return MemoryFiles() if request.param == "memory" else FolderFiles(folder)


def stored(folder: Path) -> list[Path]:
    """Every file below a folder."""
    return [path for path in folder.rglob("*") if path.is_file()]


def test_a_file_comes_back_by_its_hash(files: Files) -> None:
    """Its name is the SHA-256 of its contents."""
    assert files.put(DATA) == hashlib.sha256(DATA).hexdigest()
    assert files.get(hashlib.sha256(DATA).hexdigest()) == DATA


def test_an_unknown_hash_is_said_to_be_unknown(files: Files) -> None:
    """The error names the hash."""
    with pytest.raises(FileNotFoundError, match="00" * 32):
        files.get("00" * 32)


def test_a_file_lies_two_folders_deep(folder: Path) -> None:
    """By the first four digits, so that no folder grows too long."""
    sha256 = FolderFiles(folder).put(DATA)

    assert stored(folder) == [folder / "sha256" / sha256[:2] / sha256[2:4] / sha256]


def test_a_changed_file_is_told_and_mended_by_taking_it_in_again(folder: Path) -> None:
    """Contents under a wrong name are never handed out."""
    files = FolderFiles(folder)
    sha256 = files.put(DATA)
    (folder / place_of(sha256)).write_bytes(DATA[:1000])

    with pytest.raises(DamagedFileError, match=sha256):
        files.get(sha256)
    files.put(DATA)
    assert files.get(sha256) == DATA


def test_a_file_and_its_folders_are_synced_before_its_hash_is_told(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Also for a file that somebody else has just put there and may not have synced."""
    synced: list[Path] = []
    sync = os.fsync
    monkeypatch.setattr(os, "fsync", lambda handle: (synced.append(Path(f"/proc/self/fd/{handle}").readlink()), sync(handle)))

    for _time in range(2):
        synced.clear()
        place = folder / place_of(FolderFiles(folder).put(DATA))
        assert {place, place.parent, place.parent.parent, folder / "sha256", folder, folder.parent} <= set(synced)
        assert synced.index(place) < synced.index(place.parent)


def test_threads_that_bring_the_same_file_at_once_keep_one(folder: Path) -> None:
    """Nobody is refused, nobody sees half a file."""
    files, start, answers = FolderFiles(folder), threading.Barrier(6), []

    def bring() -> None:
        start.wait()
        sha256 = files.put(DATA)
        answers.append(files.get(sha256) == DATA)

    threads = [threading.Thread(target=bring) for _one in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert answers == [True] * 6
    assert len(stored(folder)) == 1


def _bring(folder: Path, start: Barrier) -> None:
    """What each process does."""
    files = FolderFiles(folder)
    start.wait()
    if files.get(files.put(DATA)) != DATA:
        raise SystemExit(1)


def test_processes_that_bring_the_same_file_at_once_keep_one(folder: Path) -> None:
    """The same, across processes."""
    spawn = multiprocessing.get_context("spawn")
    start = spawn.Barrier(3)
    processes = [spawn.Process(target=_bring, args=(folder, start)) for _one in range(3)]
    for process in processes:
        process.start()
    for process in processes:
        process.join()

    assert [process.exitcode for process in processes] == [0, 0, 0]
    assert len(stored(folder)) == 1


FORKS_FIRST = """
import os, pathlib, sys
from datastore.blobs import FolderFiles
files = FolderFiles(pathlib.Path(sys.argv[1]))
child = os.fork()
sha256 = files.put(b"%PDF")
assert files.get(sha256) == b"%PDF"
if child == 0:
    os._exit(0)
sys.exit(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]))
"""


def test_nothing_starts_before_the_first_file(folder: Path) -> None:
    """A child forked before that has a store of its own; one forked later would hang, because threads do not survive a fork."""
    assert subprocess.run([sys.executable, "-c", FORKS_FIRST, folder], timeout=60, check=False).returncode == 0
    assert len(stored(folder)) == 1
