"""The store's twin in memory: the same promises, no disk; for tests, and for ``read`` and ``judge`` without a data folder."""

import hashlib
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, fields, replace
from threading import Lock

from datastore.grams import grams
from datastore.page_order import in_page_order
from service.facts.document import Document, DocumentState
from service.facts.keeping_error import MovedOnError, StoreError
from service.facts.kept_board import KeptBoard
from service.facts.kept_reading import KeptReading
from service.facts.part import Part, PartName, TypedPart, Wanted, part_key, wanted_key
from service.facts.reading import Sheet
from service.facts.result import InputKind, OutOfDate, Result


@dataclass(slots=True, kw_only=True)
class State:
    """All that is kept; dicts in the order of coming, so that the latest is the last."""

    documents: dict[str, Document] = field(default_factory=dict)
    sheets: dict[str, tuple[Sheet, ...]] = field(default_factory=dict)
    readings: dict[str, tuple[KeptReading, ...]] = field(default_factory=dict)
    aliases: dict[str, str] = field(default_factory=dict)
    parts: dict[str, Part] = field(default_factory=dict)
    names: dict[tuple[str, str], PartName] = field(default_factory=dict)
    wanted: dict[str, Wanted] = field(default_factory=dict)
    boards: dict[str, tuple[KeptBoard, ...]] = field(default_factory=dict)
    results: dict[str, Result] = field(default_factory=dict)


class MemoryFiles:
    """Files by their SHA-256."""

    def __init__(self) -> None:
        self._files: dict[str, bytes] = {}

    def put(self, data: bytes) -> str:
        """Keep a file once and give its SHA-256."""
        sha256 = hashlib.sha256(data).hexdigest()
        self._files.setdefault(sha256, data)
        return sha256

    def get(self, sha256: str) -> bytes:
        """Fetch a file."""
        if sha256 not in self._files:
            raise FileNotFoundError(f"no stored file has the SHA-256 {sha256}")
        return self._files[sha256]


class MemoryDocuments:
    """Documents of one state."""

    def __init__(self, state: State) -> None:
        self._state = state

    def add(self, document: Document) -> Document:
        """Enter a file; one that is there already is given back as it stands."""
        if document.sha256 not in self._state.documents:
            self._state.documents[document.sha256] = replace(document, state=DocumentState.WAITING, reader_version=None)
        return self._now(self._state.documents[document.sha256])

    def find(self, sha256: str) -> Document | None:
        """Look one up."""
        return self._now(self._state.documents[sha256]) if sha256 in self._state.documents else None

    def listed(self) -> tuple[Document, ...]:
        """All, the latest first."""
        return tuple(self._now(document) for document in reversed(self._state.documents.values()))

    def keep_sheet(self, sheet: Sheet) -> None:
        """Keep what a reader saw; the very same again changes nothing."""
        known = self._state.sheets.get(sheet.sha256, ())
        if known[-1:] != (sheet,):
            self._state.sheets[sheet.sha256] = (*known, sheet)

    def sheet(self, sha256: str) -> Sheet | None:
        """The sheet as the latest reader saw it."""
        return next(reversed(self._state.sheets.get(sha256, ())), None)

    def _now(self, document: Document) -> Document:
        sheet = self.sheet(document.sha256)
        if sheet is None:
            return document
        state = DocumentState.REFUSED if sheet.refused else DocumentState.READ
        return replace(document, state=state, reader_version=sheet.reader_version)


class MemoryReadings:
    """Readings of one state."""

    def __init__(self, state: State) -> None:
        self._state = state

    def append(self, entry: KeptReading) -> None:
        """Add the next entry of a reading."""
        known = self._state.readings.get(entry.id, ())
        if entry.version != len(known) + 1:
            raise MovedOnError(f"the printed value {entry.id} stands at version {len(known)}, not {entry.version - 1}; look at it again")
        self._state.readings[entry.id] = (*known, entry)
        for alias in (entry.id, entry.as_read.id):
            self._state.aliases.setdefault(alias, entry.id)

    def find(self, reading_id: str) -> KeptReading | None:
        """The entry that stands, by any id of the place."""
        return next(reversed(self.history(reading_id)), None)

    def history(self, reading_id: str) -> tuple[KeptReading, ...]:
        """Every entry, the first one first."""
        return self._state.readings.get(self._state.aliases.get(reading_id, ""), ())

    def of_sheet(self, sha256: str) -> tuple[KeptReading, ...]:
        """The entries that stand of one file, in the order of the pages."""
        return in_page_order(entries[-1] for entries in self._state.readings.values() if entries[-1].sha256 == sha256)


class MemoryParts:
    """Parts of one state."""

    def __init__(self, state: State) -> None:
        self._state = state

    def add(self, part: Part) -> None:
        """Enter a part by its key and marking; one that is there already stays as it is."""
        if part.key not in self._state.parts:
            self._state.parts[part.key] = Part(key=part.key, marking=part.marking)

    def find(self, marking: str) -> Part | None:
        """The part that goes by this very name; its own number before a name that somebody gave to another."""
        spelling = part_key(marking)
        keys = (spelling, *(part for part, name in self._state.names if name == spelling))
        return next((self._state.parts[key] for key in keys if key in self._state.parts), None)

    def listed(self) -> tuple[Part, ...]:
        """All, by key."""
        return tuple(part for _key, part in sorted(self._state.parts.items()))

    def of_sheet(self, sha256: str) -> tuple[Part, ...]:
        """The parts that a file is a datasheet of."""
        return tuple(part for part in self.listed() if sha256 in part.sheets)

    def name(self, name: PartName) -> None:
        """Add a name; one that is there already stays as it is."""
        if (name.part, part_key(name.text)) not in self._state.names:
            self._state.names[name.part, part_key(name.text)] = name
            part = self._state.parts[name.part]
            self._state.parts[name.part] = replace(part, names=(*part.names, name))

    def link(self, key: str, sha256: str) -> None:
        """Say that a file is a datasheet of the part, and the one to use first from now on."""
        part = self._state.parts[key]
        self._state.parts[key] = replace(part, sheets=(sha256, *(sheet for sheet in part.sheets if sheet != sha256)))

    def type_in(self, typed: TypedPart) -> None:
        """Add a typing."""
        part = self._state.parts[typed.part]
        version = 0 if part.typed is None else part.typed.version
        if typed.version != version + 1:
            raise MovedOnError(f"the typed figures of {typed.part} stand at version {version}, not {typed.version - 1}; look at them again")
        self._state.parts[typed.part] = replace(part, typed=typed)

    def near(self, fold: str, *, most: int) -> tuple[PartName, ...]:
        """Names that share the most pairs of characters; of those that share equally many, the shorter ones."""
        shares = [(len(grams(fold) & grams(name.fold)), name) for name in self._state.names.values()]
        shares.sort(key=lambda share: (-share[0], len(share[1].fold)))
        return tuple(name for shared, name in shares[:most] if shared)


class MemoryWantedParts:
    """The waiting list of one state."""

    def __init__(self, state: State) -> None:
        self._state = state

    def add(self, wanted: Wanted) -> None:
        """Put one on the list; the same marking is there once, as last said."""
        self.drop(wanted.marking)
        self._state.wanted[wanted_key(wanted.marking)] = wanted

    def listed(self) -> tuple[Wanted, ...]:
        """All, the latest first."""
        return tuple(reversed(self._state.wanted.values()))

    def drop(self, marking: str) -> None:
        """Take one off the list; nothing happens where it is not on it."""
        self._state.wanted.pop(wanted_key(marking), None)


class MemoryBoards:
    """Boards of one state."""

    def __init__(self, state: State) -> None:
        self._state = state

    def save(self, board: KeptBoard) -> None:
        """Add a version."""
        known = self._state.boards.pop(board.slug, ())
        if board.version != len(known) + 1:
            raise MovedOnError(f"the board {board.slug} stands at version {len(known)}, not {board.version - 1}; look at it again")
        self._state.boards[board.slug] = (*known, board)

    def find(self, slug: str) -> KeptBoard | None:
        """The version that stands."""
        return next(reversed(self.history(slug)), None)

    def history(self, slug: str) -> tuple[KeptBoard, ...]:
        """Every version, the first one first."""
        return self._state.boards.get(slug, ())

    def listed(self) -> tuple[KeptBoard, ...]:
        """The standing version of each, the latest first."""
        return tuple(versions[-1] for versions in reversed(self._state.boards.values()))

    def carrying(self, part: str) -> tuple[KeptBoard, ...]:
        """The boards whose standing version carries a part."""
        return tuple(board for board in self.listed() if part in board.parts)


class MemoryResults:
    """Results of one state."""

    def __init__(self, state: State) -> None:
        self._state = state

    def freeze(self, result: Result) -> None:
        """Keep a result; the same result is kept once."""
        self._state.results.setdefault(result.id, result)

    def find(self, result_id: str) -> Result | None:
        """Look one up."""
        return self._state.results.get(result_id)

    def listed(self) -> tuple[Result, ...]:
        """All, the latest first."""
        return tuple(reversed(self._state.results.values()))

    def of_part(self, part: str) -> tuple[Result, ...]:
        """The results that speak of a part, the latest first."""
        return tuple(result for result in self.listed() if part in result.parts)

    def of_board(self, slug: str) -> tuple[Result, ...]:
        """The results that judge a saved board, the latest first."""
        return tuple(result for result in self.listed() if result.board == slug)

    def using(self, kind: InputKind, input_id: str) -> tuple[Result, ...]:
        """The results that used an input in any version."""
        return tuple(result for result in self.listed() if any((used.kind, used.id) == (kind, input_id) for used in result.inputs))

    def mark(self, reasons: Iterable[OutOfDate]) -> None:
        """Mark results out of date; a reason that is there already is kept once."""
        for reason in reasons:
            result = self._state.results[reason.result]
            if not any((known.kind, known.id, known.version) == (reason.kind, reason.id, reason.version) for known in result.out_of_date):
                self._state.results[reason.result] = replace(result, out_of_date=(*result.out_of_date, reason))


class MemoryShelf:
    """Everything that one state holds.

    Args:
        state: The state.
    """

    def __init__(self, state: State) -> None:
        self.documents = MemoryDocuments(state)
        self.readings = MemoryReadings(state)
        self.parts = MemoryParts(state)
        self.wanted = MemoryWantedParts(state)
        self.boards = MemoryBoards(state)
        self.results = MemoryResults(state)


class MemoryStore:
    """The store in memory; one instance may serve several threads."""

    def __init__(self) -> None:
        self.files = MemoryFiles()
        self._state = State()
        self._turn = Lock()

    @contextmanager
    def looking(self) -> Iterator[MemoryShelf]:
        """Look at one moment of the store."""
        before = self._state
        yield MemoryShelf(state := copy_of(before))
        if state != before:
            raise StoreError("nothing can be written while looking; nothing of this step was kept")

    @contextmanager
    def changing(self) -> Iterator[MemoryShelf]:
        """Change the store: all of the block when it ends, nothing of it when it raises."""
        with self._turn:
            state = copy_of(self._state)
            yield MemoryShelf(state)
            self._state = state


def copy_of(state: State) -> State:
    """Copy the dicts; the records in them never change."""
    return State(**{f.name: dict(getattr(state, f.name)) for f in fields(state)})
