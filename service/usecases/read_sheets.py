"""Read many datasheets and keep them: a file is kept before a child reads it, so that a reading that is cut off can be begun again."""

from collections import deque
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

from service.facts.change import Change
from service.facts.reading import Sheet
from service.usecases.keep_sheet import keep_sheet, read_in, take_in
from service.usecases.ports import MarkingReader, Reader, Store

# Reads files in the order given, several at a time; takes the next one only when it can be read soon.
ReadMany = Callable[[Iterable[Path]], Iterator[Sheet]]


def read_and_keep(
    paths: Iterable[Path],
    *,
    read_many: ReadMany,
    reader: Reader,
    store: Store,
    markings: MarkingReader,
    change: Change,
) -> Iterator[Sheet]:
    """Take files in, read them and keep what was read, one after another.

    Args:
        paths: The files.
        read_many: Reads them.
        reader: Reads a stored file again where the file on the disk changed meanwhile.
        store: Where they are kept.
        markings: Folds the parts' names.
        change: Who brings them, when and why.

    Yields:
        The sheet of each file, in the order of the files, when it is safely kept.
    """
    taken: deque[str] = deque()

    def brought() -> Iterator[Path]:
        for path in paths:
            taken.append(take_in(path.name, path.read_bytes(), store=store, change=change).document.sha256)
            yield path

    for sheet in read_many(brought()):
        sha256 = taken.popleft()
        if sheet.sha256 == sha256:
            keep_sheet(sheet, store=store, markings=markings, change=change)
            yield sheet
        else:
            yield read_in(sha256, store=store, reader=reader, markings=markings, change=change)
