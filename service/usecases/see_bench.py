"""See the bench: what waits, what failed, what is out of date, and what was judged last."""

from dataclasses import dataclass

from service.facts.document import Document, DocumentState
from service.facts.kept_board import KeptBoard
from service.facts.part import Part, Wanted
from service.facts.reading import Sheet
from service.facts.result import Result
from service.usecases.ports import Store

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
        wanted: Parts that wait for a datasheet.
        out_of_date: Results whose inputs moved on and whose board was not judged again since.
        results: The latest results that are up to date.
        boards: The latest boards.
        parts: How many parts are known.
    """

    reading: tuple[Document, ...]
    unread: tuple[Unread, ...]
    wanted: tuple[Wanted, ...]
    out_of_date: tuple[Result, ...]
    results: tuple[Result, ...]
    boards: tuple[KeptBoard, ...]
    parts: int


def see_bench(store: Store) -> Bench:
    """Gather what a person needs to decide what to do next.

    Args:
        store: Where things are kept.

    Returns:
        Everything that waits, and the latest of the rest.
    """
    with store.looking() as shelf:
        documents, results = shelf.documents.listed(), shelf.results.listed()
        refused = [document for document in documents if document.state is DocumentState.REFUSED][:MOST]
        return Bench(
            reading=tuple(document for document in documents if document.state is DocumentState.WAITING),
            unread=tuple(Unread(document=document, detail=_why(shelf.documents.sheet(document.sha256))) for document in refused),
            wanted=shelf.wanted.listed(),
            out_of_date=_not_judged_again(results)[:MOST],
            results=tuple(result for result in results if not result.out_of_date)[:MOST],
            boards=shelf.boards.listed()[:MOST],
            parts=len(shelf.parts.listed()),
        )


def see_parts(store: Store) -> tuple[Part, ...]:
    """List every known part, by key."""
    with store.looking() as shelf:
        return shelf.parts.listed()


def _not_judged_again(results: tuple[Result, ...]) -> tuple[Result, ...]:
    """Results that are out of date, but for those whose board was judged since: they ask for nothing more.

    Args:
        results: All, the latest first.
    """
    latest = {result.board: result.id for result in reversed(results) if result.board}
    return tuple(result for result in results if result.out_of_date and latest.get(result.board or "", result.id) == result.id)


def _why(sheet: Sheet | None) -> str:
    """Why a sheet was refused."""
    return sheet.refused.detail if sheet and sheet.refused else ""
