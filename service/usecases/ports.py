"""What the use cases need from outside, as Protocols; wiring hands in what fulfils them.

A shelf is one look at the store, or one transaction on it::

    with store.looking() as shelf:  # sees one moment, may write nothing
        part = shelf.parts.find("AB75N40")
    with store.changing() as shelf:  # one writer at a time; kept whole when the block ends, or not at all
        shelf.readings.append(entry)

Never open one inside another, and read or render documents outside of both: a look that lasts keeps writers waiting.

Records are the frozen dataclasses of service.facts; no database row crosses a port.
"""

from collections.abc import Iterable
from contextlib import AbstractContextManager
from datetime import datetime
from typing import Protocol

from service.facts.document import Document
from service.facts.kept_board import KeptBoard
from service.facts.kept_reading import KeptReading
from service.facts.marking import Hit
from service.facts.part import Part, PartName, TypedPart, Wanted
from service.facts.reading import Box, Sheet
from service.facts.result import InputKind, OutOfDate, Result


class Files(Protocol):
    """Files by the SHA-256 of their contents; not part of a transaction, because a file never changes."""

    def put(self, data: bytes) -> str:
        """Keep a file, synced to the disk, and give its SHA-256; a file that is there already is kept once."""

    def get(self, sha256: str) -> bytes:
        """Fetch a file, proved against its SHA-256; FileNotFoundError where it is absent, DamagedFileError where it was changed."""


class Documents(Protocol):
    """What was taken in, and the sheets read from it."""

    def add(self, document: Document) -> Document:
        """Enter a file; one that is there already is given back as it stands."""

    def find(self, sha256: str) -> Document | None:
        """Look one up."""

    def listed(self) -> tuple[Document, ...]:
        """All, the latest first."""

    def keep_sheet(self, sheet: Sheet) -> None:
        """Keep what a reader version saw in a file, refusals too; a second keeping of the same version changes nothing."""

    def sheet(self, sha256: str) -> Sheet | None:
        """The sheet as the latest reader saw it, before any person's word."""


class Readings(Protocol):
    """Readings with their history; entries are only ever added."""

    def append(self, entry: KeptReading) -> None:
        """Add the next entry of a reading; MovedOnError where its version is not the next one."""

    def find(self, reading_id: str) -> KeptReading | None:
        """The entry that stands, by the stable id or by any id that a reader version gave to the same place."""

    def history(self, reading_id: str) -> tuple[KeptReading, ...]:
        """Every entry, the first one first."""

    def of_sheet(self, sha256: str) -> tuple[KeptReading, ...]:
        """The entries that stand of one file, in the order of the pages."""


class Parts(Protocol):
    """Parts under all their names."""

    def add(self, part: Part) -> None:
        """Enter a part by its key and marking alone; one that is there already stays as it is."""

    def find(self, marking: str) -> Part | None:
        """The part that goes by this very name, spelled in any way (see `part_key`)."""

    def listed(self) -> tuple[Part, ...]:
        """All, by key."""

    def of_sheet(self, sha256: str) -> tuple[Part, ...]:
        """The parts that a file is a datasheet of."""

    def name(self, name: PartName) -> None:
        """Add a name; one that is there already stays as it is."""

    def link(self, key: str, sha256: str) -> None:
        """Say that a file is a datasheet of the part, and the one to use first from now on."""

    def type_in(self, typed: TypedPart) -> None:
        """Add a typing; MovedOnError where its version is not the next one."""

    def near(self, fold: str, *, most: int) -> tuple[PartName, ...]:
        """Names whose folded text shares something with this one, the likeliest first; ``?`` stands for any character."""


class WantedParts(Protocol):
    """Parts that wait for a datasheet."""

    def add(self, wanted: Wanted) -> None:
        """Put one on the list; the same marking is there once, as last said."""

    def listed(self) -> tuple[Wanted, ...]:
        """All, the latest first."""

    def drop(self, marking: str) -> None:
        """Take one off the list; nothing happens where it is not on it."""


class Boards(Protocol):
    """Saved board documents, version by version."""

    def save(self, board: KeptBoard) -> None:
        """Add a version; MovedOnError where it is not the next one."""

    def find(self, slug: str) -> KeptBoard | None:
        """The version that stands."""

    def history(self, slug: str) -> tuple[KeptBoard, ...]:
        """Every version, the first one first."""

    def listed(self) -> tuple[KeptBoard, ...]:
        """The standing version of each, the latest first."""

    def carrying(self, part: str) -> tuple[KeptBoard, ...]:
        """The boards whose standing version carries a part."""


class Results(Protocol):
    """Frozen reports."""

    def freeze(self, result: Result) -> None:
        """Keep a result; the same result is kept once."""

    def find(self, result_id: str) -> Result | None:
        """Look one up."""

    def listed(self) -> tuple[Result, ...]:
        """All, the latest first."""

    def of_part(self, part: str) -> tuple[Result, ...]:
        """The results that speak of a part, the latest first."""

    def of_board(self, slug: str) -> tuple[Result, ...]:
        """The results that judge a saved board, the latest first."""

    def using(self, kind: InputKind, input_id: str) -> tuple[Result, ...]:
        """The results that used an input in any version."""

    def mark(self, reasons: Iterable[OutOfDate]) -> None:
        """Mark results out of date; a reason that is there already is kept once."""


class Shelf(Protocol):
    """Everything that the store holds, as of one moment."""

    @property
    def documents(self) -> Documents:
        """Files that were taken in."""

    @property
    def readings(self) -> Readings:
        """Readings with their history."""

    @property
    def parts(self) -> Parts:
        """Parts under all their names."""

    @property
    def wanted(self) -> WantedParts:
        """Parts that wait for a datasheet."""

    @property
    def boards(self) -> Boards:
        """Saved boards."""

    @property
    def results(self) -> Results:
        """Frozen reports."""


class Store(Protocol):
    """Where things are kept."""

    @property
    def files(self) -> Files:
        """The files themselves."""

    def looking(self) -> AbstractContextManager[Shelf]:
        """Look at one moment of the store."""

    def changing(self) -> AbstractContextManager[Shelf]:
        """Change the store: all of the block when it ends, nothing of it when it raises."""


class Reader(Protocol):
    """Reads datasheets, each in a process of its own."""

    @property
    def version(self) -> str:
        """Its version; a newer one reads kept files again."""

    def read(self, name: str, data: bytes) -> Sheet:
        """Read one file; a document that cannot be read gives a sheet that is refused, never an error."""


class Cropper(Protocol):
    """Renders a place on a page, in a process of its own."""

    def crop(self, data: bytes, *, page: int, box: Box | None, mark: Box | None = None) -> bytes:
        """Render the box of a page, or the whole page, as PNG; the mark is drawn into it."""


class MarkingReader(Protocol):
    """Knows how eye and OCR confuse the characters on a package."""

    def fold(self, text: str) -> str:
        """Make confused characters equal; ``?`` stays."""

    def rank(self, seen: str, names: Iterable[PartName]) -> tuple[Hit, ...]:
        """Order names by how well they explain what was seen, each with the reason in words; those that do not are left out."""

    def likely(self, seen: str, *, most: int) -> tuple[str, ...]:
        """Spell out the likeliest readings of what was seen, the likeliest first."""


class Clock(Protocol):
    """Says what time it is."""

    def __call__(self) -> datetime:
        """Now, with its time zone."""


class Who(Protocol):
    """Says who is asking."""

    def __call__(self) -> str:
        """Name them as they are to stand in the history."""
