"""See the bench: what waits, what failed, and the next step of every board."""

from collections.abc import Callable
from dataclasses import dataclass

from service.facts.document import Document, DocumentState
from service.facts.kept_board import KeptBoard
from service.facts.part import Part
from service.facts.reading import Sheet
from service.usecases.ports import Shelf, Store
from service.usecases.see_progress import Progress, progress

MOST = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Unread:
    """A file that could not be read, and why.

    Attributes:
        document: The file.
        detail: What, where, how much and what to do.
    """

    document: Document
    detail: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """What lies on the bench.

    Attributes:
        reading: Files whose reading has not ended.
        unread: Files that could not be read.
        boards: The latest boards, each with its outcomes and its next step.
        parts: How many parts are known.
    """

    reading: tuple[Document, ...]
    unread: tuple[Unread, ...]
    boards: tuple[Progress, ...]
    parts: int


def see_bench(store: Store) -> Bench:
    """Gather what a person needs to decide what to do next.

    Args:
        store: Where things are kept.

    Returns:
        Everything that waits, and the latest of the rest.
    """
    with store.looking() as shelf:
        documents = shelf.documents.listed()
        refused = [document for document in documents if document.state is DocumentState.REFUSED][:MOST]
        return Bench(
            reading=tuple(document for document in documents if document.state is DocumentState.WAITING),
            unread=tuple(Unread(document=document, detail=_why(shelf.documents.sheet(document.sha256))) for document in refused),
            boards=tuple(progress(shelf, board) for board in sorted(shelf.boards.listed(), key=_moved_on(shelf))[:MOST]),
            parts=len(shelf.parts.listed()),
        )


def see_parts(store: Store) -> tuple[Part, ...]:
    """List every known part, by key."""
    with store.looking() as shelf:
        return shelf.parts.listed()


def _moved_on(shelf: Shelf) -> Callable[[KeptBoard], bool]:
    """Order boards whose latest result is out of date before all others: what a person relied on comes first."""
    latest = {result.board: result for result in reversed(shelf.results.listed())}
    return lambda board: not (board.slug in latest and latest[board.slug].out_of_date)


def _why(sheet: Sheet | None) -> str:
    """Why a sheet was refused."""
    return sheet.refused.detail if sheet and sheet.refused else ""
