"""Make sure that a file, or the name of one in its folder, is on the disk before anybody is told."""

import os
from pathlib import Path


def sync(path: Path) -> None:
    """Wait until what a file or a folder holds is on the disk.

    Args:
        path: A file for its contents; a folder for the names in it.
    """
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def make_folder(folder: Path) -> None:
    """Make a folder, with those above it, whose names last.

    Args:
        folder: The folder; nothing happens where it is there.
    """
    if folder.is_dir():
        return
    make_folder(folder.parent)
    folder.mkdir(exist_ok=True)
    sync(folder.parent)
