"""What is told to be on the disk."""

import os
from pathlib import Path

import pytest

from datastore.durable import make_folder


def test_every_folder_that_is_made_has_its_name_synced(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """From above to below; what was there is left alone."""
    synced: list[Path] = []
    monkeypatch.setattr(os, "fsync", lambda handle: synced.append(Path(f"/proc/self/fd/{handle}").readlink()))

    for _time in range(2):
        make_folder(tmp_path / "a" / "b")

    assert (tmp_path / "a" / "b").is_dir()
    assert synced == [tmp_path, tmp_path / "a"]
