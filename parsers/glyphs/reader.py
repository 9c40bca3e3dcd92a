"""Both readers over one document: a page's content becomes words, lines and pictures, each with its place."""

import functools
from collections.abc import Iterator

import pypdfium2 as pdfium
from pdfminer.pdfexceptions import PDFException
from pdfminer.psexceptions import PSException

from parsers.errors import DamagedError
from parsers.glyphs.blank import settle_blanks
from parsers.glyphs.clusters import clusters
from parsers.glyphs.drawn import SLANTING, Drawn, Mark
from parsers.glyphs.numbers import weigh_gaps
from parsers.glyphs.second_reader import SecondReader
from parsers.glyphs.source import Source
from parsers.glyphs.spelling import word_of
from parsers.glyphs.turning import main_turn, turn_matrix, turned_mark, turned_page
from parsers.glyphs.twice import without_copies
from parsers.glyphs.unseen import weigh_unseen
from parsers.glyphs.visibility import shown_marks
from parsers.types import Page, Word

_UNREADABLE = (
    PDFException, PSException, KeyError, TypeError, ValueError, AttributeError, IndexError, AssertionError, RecursionError, OverflowError,
)  # fmt: skip
"""What the lower library raises over a file that contradicts itself."""


class Reader:
    """One document, open with both readers.

    Args:
        data: The file's bytes.

    Raises:
        DamagedError: The file cannot be opened.
    """

    def __init__(self, data: bytes) -> None:
        try:
            self._source = Source(data)
            self._second = pdfium.PdfDocument(data)
        except (*_UNREADABLE, pdfium.PdfiumError) as error:
            raise DamagedError(f"The file cannot be read ({type(error).__name__}); fetch it again from its maker.") from error
        self._pages: dict[int, Page] = {}

    def page(self, number: int) -> Page:
        """Read one page in full.

        Args:
            number: The page, counted from 1.

        Returns:
            Its words, rules and pictures.

        Raises:
            DamagedError: The page's content cannot be read.
            TooLargeError: The page draws more objects than are read.
        """
        try:
            return self._pages.pop(number) if number in self._pages else self._read(number)
        except (*_UNREADABLE, pdfium.PdfiumError) as error:
            raise DamagedError(f"Page {number} cannot be read ({type(error).__name__}); fetch the file again from its maker.") from error

    def look(self, number: int) -> Page:
        """Read a page that will be asked for again, so it is kept until then.

        Args:
            number: The page, counted from 1.

        Returns:
            Its words, rules and pictures.
        """
        page = self._pages[number] = self.page(number)
        return page

    def _read(self, number: int) -> Page:
        shown = self._source.draw(number)
        open_page = self._second[number - 1]
        try:
            settle_blanks(open_page, shown.marks)
            turn = main_turn(shown.marks)
            page = turned_page(shown, turn)
            second = SecondReader(open_page, page.matrix)
        finally:
            open_page.close()
        seen = [mark for mark in shown_marks(page) if mark.turned != SLANTING]
        kept = set(map(id, seen))
        unseen = [mark for mark in page.marks if id(mark) not in kept]
        return Page(
            number=number,
            width=page.width,
            height=page.height,
            words=tuple(_words(page, seen, unseen, second)),
            rules=tuple(page.rules),
            pictures=tuple(patch.box for patch in page.patches if patch.picture),
            turned=turn,
            hidden=_hidden(seen, unseen),
        )


@functools.lru_cache(maxsize=1)
def reader_of(data: bytes) -> Reader:
    """The reader of a document: its pages share fonts, so the last one is kept open.

    Args:
        data: The file's bytes.

    Returns:
        The same reader for the same bytes, until other ones are read.
    """
    return Reader(data)


def _words(page: Drawn, seen: list[Mark], unseen: list[Mark], second: SecondReader) -> Iterator[Word]:
    """Upright words in reading order, then words that stand turned."""
    second.leave_out(unseen, seen)
    marks = without_copies(seen)
    weigh_unseen(page.marks, seen, marks)
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


def _hidden(seen: list[Mark], unseen: list[Mark]) -> int:
    """How many characters extract though no viewer shows them in their places; clipped ones are shown elsewhere as a rule."""
    places = {(round(mark.x), round(mark.y), mark.text) for mark in seen}
    hidden = (mark for mark in unseen if not mark.text.isspace() and mark.turned != SLANTING and "outside" not in mark.doubt)
    return sum(1 for mark in hidden if (round(mark.x), round(mark.y), mark.text) not in places)
