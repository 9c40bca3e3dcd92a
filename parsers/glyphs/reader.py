"""Both readers over one document: a page's content becomes words, lines and pictures, each with its place."""

import functools
from collections.abc import Iterator
from dataclasses import dataclass

import pypdfium2 as pdfium

from parsers.errors import DamagedError
from parsers.glyphs import reference
from parsers.glyphs.clusters import clusters
from parsers.glyphs.doubts import INCOMPLETE, REBUILT, REVISED, doubted
from parsers.glyphs.drawn import SLANTING, Drawn, Mark
from parsers.glyphs.ink import Ink, weigh_ink
from parsers.glyphs.numbers import weigh_gaps
from parsers.glyphs.revisions import Revisions
from parsers.glyphs.second_reader import SecondReader
from parsers.glyphs.source import Source
from parsers.glyphs.spelling import word_of
from parsers.glyphs.structure import signs_of
from parsers.glyphs.turning import main_turn, turn_matrix, turned_mark, turned_page
from parsers.glyphs.twice import without_copies
from parsers.glyphs.unreadable import UNREADABLE
from parsers.glyphs.unseen import weigh_unseen
from parsers.glyphs.visibility import shown_marks
from parsers.types import Page, Word

_FEWEST = 0.7
"""Of the characters that the second reader sees, this share at least is drawn where nothing was lost; 0.9 on real sheets. [1]"""


@dataclass(frozen=True, slots=True)
class _Sight:
    """A page turned upright, how far it was turned, and the second reader's characters in the same places."""

    page: Drawn
    turn: int
    second: SecondReader


class Reader:
    """One document, open with both readers.

    Args:
        data: The file's bytes.

    Attributes:
        doubt: Signs of doubt on the whole file.

    Raises:
        DamagedError: The file cannot be opened.
    """

    def __init__(self, data: bytes) -> None:
        try:
            self._source = Source(data)
            self._second = pdfium.PdfDocument(data)
            self._revisions = Revisions(data, self._source)
            self.doubt = signs_of(data, self._source.document)
        except (*UNREADABLE, pdfium.PdfiumError) as error:
            raise DamagedError(f"The file cannot be read ({type(error).__name__}); fetch it again from its maker.") from error
        self._data = data
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
        except (*UNREADABLE, *reference.REFUSALS, pdfium.PdfiumError) as error:
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

    def doubts_of_picture(self, number: int) -> frozenset[str]:
        """Signs of doubt on a page whose text is not asked: those of the file, and that an earlier revision had another page there.

        Args:
            number: The page, counted from 1.
        """
        return self.doubt | ({REVISED} if number <= len(self._source.pages) and self._revisions.touch(number) else set())

    def _read(self, number: int) -> Page:
        open_page = self._second[number - 1]
        try:
            sight = self._sight(open_page, number)
        finally:
            open_page.close()
        page = sight.page
        seen = [mark for mark in shown_marks(page) if mark.turned != SLANTING]
        kept = set(map(id, seen))
        unseen = [mark for mark in page.marks if id(mark) not in kept]
        read = Page(
            number=number,
            width=page.width,
            height=page.height,
            words=tuple(_words(page, seen, unseen, sight.second)),
            rules=tuple(page.rules),
            pictures=tuple(patch.box for patch in page.patches if patch.picture),
            turned=sight.turn,
            hidden=_hidden(seen, unseen),
        )
        return doubted(read, sorted(page.doubt | self.doubt))

    def _sight(self, open_page: pdfium.PdfPage, number: int) -> _Sight:
        """The page by the own device; by the reference where that declines; as far as the own device goes where both do."""
        own = self._own_sight(open_page, number)
        if own is not None and INCOMPLETE not in own.page.doubt:
            return own
        try:
            return _beside(open_page, reference.drawn_page(self._data, number))
        except (*UNREADABLE, *reference.REFUSALS, MemoryError):
            if own is None:
                raise
            return own

    def _own_sight(self, open_page: pdfium.PdfPage, number: int) -> _Sight | None:
        """The page by the own device; None where it contradicts itself, incomplete where the second reader sees a good deal more."""
        try:
            shown = self._source.draw(number)
            self._revisions.weigh(number, shown.marks)
            own = _beside(open_page, shown)
        except UNREADABLE:
            return None
        if sum(1 for mark in own.page.marks if not mark.text.isspace()) < _FEWEST * own.second.count:
            own.page.doubt.add(INCOMPLETE)
        return own


@functools.lru_cache(maxsize=1)
def reader_of(data: bytes) -> Reader:
    """The reader of a document: its pages share fonts, so the last one is kept open.

    Args:
        data: The file's bytes.

    Returns:
        The same reader for the same bytes, until other ones are read.
    """
    return Reader(data)


def doubts_of_picture(data: bytes, number: int) -> frozenset[str]:
    """Signs of doubt on a page that is read by looking at it.

    Args:
        data: The file's bytes.
        number: The page, counted from 1.

    Returns:
        Those of its file; one that only the second reader can open is damaged.
    """
    try:
        return reader_of(data).doubts_of_picture(number)
    except DamagedError:
        return frozenset({REBUILT})


def _beside(open_page: pdfium.PdfPage, shown: Drawn) -> _Sight:
    weigh_ink(Ink(open_page), shown.marks)
    turn = main_turn(shown.marks)
    page = turned_page(shown, turn)
    return _Sight(page, turn, SecondReader(open_page, page.matrix))


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
