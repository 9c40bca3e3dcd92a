"""Files on the disk by the SHA-256 of their contents."""

import hashlib
import os
from contextlib import suppress
from pathlib import Path

import obstore
from obstore.exceptions import AlreadyExistsError
from obstore.store import LocalStore

from datastore.durable import sync
from service.facts.keeping_error import DamagedFileError


def place_of(sha256: str) -> str:
    """Say where a file lies below the folder: ``sha256/ab/cd/abcd...``."""
    return f"sha256/{sha256[:2]}/{sha256[2:4]}/{sha256}"


class FolderFiles:
    """Files in a folder of this machine; safe for several threads and processes at once.

    Args:
        folder: Where they lie; created where it is absent.
    """

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._stores: dict[int, LocalStore] = {}

    def put(self, data: bytes) -> str:
        """Keep a file once, synced with the folders that name it, and give its SHA-256."""
        sha256 = hashlib.sha256(data).hexdigest()
        try:
            obstore.put(self._store, place_of(sha256), data, mode="create", use_multipart=False)
        except AlreadyExistsError:
            self._mend(sha256, data)
        # Why also for a file that was there: whoever put it may not have come to syncing it yet.
        place = self._folder / place_of(sha256)
        for path in (place, *(folder for folder in place.parents if folder.is_relative_to(self._folder.parent))):
            sync(path)
        return sha256

    def get(self, sha256: str) -> bytes:
        """Fetch a file and prove that it is still what was put there."""
        try:
            data = bytes(obstore.get(self._store, place_of(sha256)).bytes())
        except FileNotFoundError:
            raise FileNotFoundError(f"no stored file has the SHA-256 {sha256}") from None
        if hashlib.sha256(data).hexdigest() != sha256:
            raise DamagedFileError(f"the stored file {sha256} was changed on the disk; restore it from a backup, or take the same file in again")
        return data

    def _mend(self, sha256: str, data: bytes) -> None:
        """Write a file again that a power loss or a failing disk left under its name with other contents."""
        with suppress(FileNotFoundError, DamagedFileError):
            self.get(sha256)
            return
        obstore.put(self._store, place_of(sha256), data, use_multipart=False)

    @property
    def _store(self) -> LocalStore:
        """This process's own store: its threads do not survive a fork."""
        process = os.getpid()
        return self._stores.get(process) or self._stores.setdefault(process, LocalStore(self._folder, mkdir=True))
