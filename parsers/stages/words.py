"""Second stage: one page of a document becomes words, rules and pictures, each with its place."""

import functools
from collections.abc import Iterator

import pypdfium2 as pdfium
from pdfminer.pdfexceptions import PDFException
from pdfminer.psexceptions import PSException

from parsers.errors import DamagedError
from parsers.glyphs.blank import settle_blanks
from parsers.glyphs.clusters import clusters
from parsers.glyphs.drawn import Drawn, Mark
from parsers.glyphs.numbers import weigh_gaps
from parsers.glyphs.second_reader import SecondReader
from parsers.glyphs.source import Source
from parsers.glyphs.spelling import word_of
from parsers.glyphs.text import SLANTING
from parsers.glyphs.turning import main_turn, turn_matrix, turned_mark, turned_page
from parsers.glyphs.twice import without_copies
from parsers.glyphs.visibility import shown_marks
from parsers.types import Document, Page, Word

_UNREADABLE = (
    PDFException, PSException, KeyError, TypeError, ValueError, AttributeError, IndexError, AssertionError, RecursionError, OverflowError,
)  # fmt: skip
"""What the lower library raises over a file that contradicts itself."""


@functools.lru_cache(maxsize=1)
def _opened(data: bytes) -> tuple[Source, pdfium.PdfDocument]:
    """The document that is being read, open with both readers: its pages share fonts, so the last one is kept."""
    return Source(data), pdfium.PdfDocument(data)


def read_page(document: Document, number: int) -> Page:
    """Read one page in full.

    Args:
        document: An opened document.
        number: The page, counted from 1.

    Returns:
        The page's words, rules and pictures; a page of turned text is turned first, and says so.

    Raises:
        DamagedError: The page's content cannot be read.
        TooLargeError: The page draws more objects than are read.
    """
    try:
        source, second = _opened(document.data)
        shown = source.draw(number)
    except _UNREADABLE as error:
        raise DamagedError(f"Page {number} cannot be read ({type(error).__name__}); fetch the file again from its maker.") from error
    open_page = second[number - 1]
    try:
        settle_blanks(open_page, shown.marks)
        turn = main_turn(shown.marks)
        page = turned_page(shown, turn)
        seen = SecondReader(open_page, page.matrix)
    finally:
        open_page.close()
    return Page(
        number=number,
        width=page.width,
        height=page.height,
        words=tuple(_words(page, seen)),
        rules=tuple(page.rules),
        pictures=tuple(patch.box for patch in page.patches if patch.picture),
        turned=turn,
    )


def _words(page: Drawn, second: SecondReader) -> Iterator[Word]:
    """Upright words in reading order, then words that stand turned."""
    seen = [mark for mark in shown_marks(page) if mark.turned != SLANTING]
    kept = set(map(id, seen))
    second.leave_out((mark for mark in page.marks if id(mark) not in kept), seen)
    marks = without_copies(seen)
    upright = clusters([mark for mark in marks if not mark.turned])
    weigh_gaps(upright)
    yield from (word_of(cluster, second) for cluster in upright)
    for turn in (90, 180, 270):
        yield from _turned_words([mark for mark in marks if mark.turned == turn], turn, page)


def _turned_words(marks: list[Mark], turn: int, page: Drawn) -> Iterator[Word]:
    """Words of text that stands turned, built as if it stood upright and put back into their places."""
    forth = turn_matrix(turn, page.width, page.height)
    sides = (page.height, page.width) if turn in (90, 270) else (page.width, page.height)
    back = turn_matrix(360 - turn, *sides)
    upright = sorted((turned_mark(mark, turn, forth) for mark in marks), key=lambda mark: mark.x0)
    for cluster in clusters(upright):
        cluster.marks = [turned_mark(mark, 360 - turn, back) for mark in cluster.marks]
        yield word_of(cluster, None)
