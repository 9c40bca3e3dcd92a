"""Read datasheets, and keep them where that is asked for."""

from collections.abc import Iterable, Iterator
from contextlib import closing
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from service.facts.reading import Sheet
from service.wiring.ground import change, markings, open_store
from service.wiring.jailed import JailedReader

if TYPE_CHECKING:
    from service.usecases.read_sheets import ReadMany


def read_sheets(paths: Iterable[Path], *, workers: int | None, keep: bool, data_dir: Path | None) -> Iterator[Sheet]:
    """Read files, each in a process of its own.

    Args:
        paths: Files.
        workers: How many at a time; all cores where nothing is said.
        keep: Whether they are kept.
        data_dir: Where.

    Returns:
        Their sheets in the order of the files.
    """
    from parsers import process

    # Why first: reading children are forked from a server that must start before any thread, and before the store is open.
    process.start()
    read_many = partial(process.read_documents, workers=workers)
    return _read_and_keep(paths, read_many, data_dir) if keep else read_many(paths)


def _read_and_keep(paths: Iterable[Path], read_many: "ReadMany", data_dir: Path | None) -> Iterator[Sheet]:
    """Read and keep; the store is open while sheets are asked for."""
    from service.usecases.read_sheets import read_and_keep

    with closing(open_store(data_dir)) as store:
        yield from read_and_keep(
            paths,
            read_many=read_many,
            reader=JailedReader(),
            store=store,
            markings=markings(),
            change=change("brought on the command line"),
        )
