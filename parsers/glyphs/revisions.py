"""Earlier revisions that a file still holds (ISO 32000-1:2008, 7.5.6): a figure that one of them shows otherwise wants a look."""

import re
from collections.abc import Iterable, Iterator
from functools import cached_property
from typing import Any

from pdfminer.pdftypes import PDFObjRef, PDFStream

from parsers.errors import TooLargeError
from parsers.glyphs.doubts import REVISED
from parsers.glyphs.drawn import Mark
from parsers.glyphs.following import followed
from parsers.glyphs.source import Source
from parsers.glyphs.structure import Place, latest_places
from parsers.glyphs.unreadable import UNREADABLE

_END = re.compile(rb"startxref\s+(\d{1,12})\s+%%EOF")
_MOST = 8
"""Of more revisions than this the later ones are not looked into. [1]"""
_GRID = 2.0
"""Places are the same when they lie in neighbouring cells of half a point. [1/pt]"""
_ELSEWHERE = frozenset(("Parent", "Annots", "Metadata", "PieceInfo", "B", "Thumb"))
"""Entries of a page that draw nothing of its content."""


class Revisions:
    """Earlier revisions of a document.

    Args:
        data: The file's bytes.
        source: The document as it stands.
    """

    def __init__(self, data: bytes, source: Source) -> None:
        self._source = source
        self._earlier = [_Revision(data, end) for end in earlier_ends(data)]
        self._now = latest_places(source.document) if self._earlier else {}

    def weigh(self, number: int, marks: Iterable[Mark]) -> None:
        """Put doubt on the figures of a page that an earlier revision of the same page does not show in their places.

        Args:
            number: The page, counted from 1.
            marks: Its characters.
        """
        for revision in self._touching(number):
            figures = [mark for mark in marks if mark.text.isdecimal() and REVISED not in mark.doubt]
            for mark in revision.missing(self._source.pages[number - 1].pageid, number, figures):
                mark.doubt = (*mark.doubt, REVISED)

    def touch(self, number: int) -> bool:
        """Whether a page draws with an object that an earlier revision has not, or has otherwise.

        Args:
            number: The page, counted from 1.
        """
        return any(True for _ in self._touching(number))

    def _touching(self, number: int) -> Iterator["_Revision"]:
        places = {item: self._now.get(item) for item in objects_of(self._source.pages[number - 1])} if self._earlier else {}
        yield from (revision for revision in self._earlier if any(revision.places.get(item) != place for item, place in places.items()))


def earlier_ends(data: bytes) -> tuple[int, ...]:
    """Where earlier revisions of a file end.

    Args:
        data: The file's bytes.

    Returns:
        Lengths, the oldest first. The first part of a file that is made for slow lines is no revision: its table stands behind it.
    """
    ends = list(_END.finditer(data))[:-1]
    return tuple(match.end() for match in ends if 0 < int(match[1]) < match.start())[:_MOST]


def objects_of(page: Any) -> frozenset[int]:  # noqa: ANN401  pdfminer carries no types
    """Numbers of the objects that a page draws with, its own among them.

    Args:
        page: A page as pdfminer reads it.
    """
    found, todo = {page.pageid}, list(_parts(page.attrs))
    while todo:
        item = todo.pop()
        if not isinstance(item, PDFObjRef):
            todo.extend(_parts(item))
        elif item.objid not in found:
            found.add(item.objid)
            todo.append(followed(item))
    return frozenset(found)


class _Revision:
    """One earlier revision, opened when it is asked for; one that cannot be read says nothing."""

    def __init__(self, data: bytes, end: int) -> None:
        self._data, self._end = data, end

    @cached_property
    def places(self) -> dict[int, Place]:
        """Where its objects lie."""
        return latest_places(self._source.document) if self._source else {}

    def missing(self, identity: object, number: int, figures: list[Mark]) -> Iterator[Mark]:
        """Figures that it does not show, though it has the page and shows text on it."""
        shown = self._drawn(identity, number)
        return (mark for mark in figures if shown and not _among(mark, shown))

    @cached_property
    def _source(self) -> Source | None:
        try:
            return Source(self._data[: self._end])
        except UNREADABLE:
            return None

    def _drawn(self, identity: object, number: int) -> frozenset[tuple[int, int, str]]:
        """What it draws on the page of the same object, or else of the same number."""
        pages = self._source.pages if self._source else []
        at = next((index for index, page in enumerate(pages, start=1) if page.pageid == identity), number)
        if self._source is None or at > len(pages):
            return frozenset()
        try:
            return frozenset((round(mark.x * _GRID), round(mark.y * _GRID), mark.text) for mark in self._source.draw(at).marks)
        except (*UNREADABLE, TooLargeError):
            return frozenset()


def _among(mark: Mark, shown: frozenset[tuple[int, int, str]]) -> bool:
    column, row = round(mark.x * _GRID), round(mark.y * _GRID)
    return any((column + right, row + down, mark.text) in shown for right in (0, -1, 1) for down in (0, -1, 1))


def _parts(item: Any) -> Iterator[Any]:  # noqa: ANN401  pdfminer carries no types
    """What an object holds."""
    held = item.attrs if isinstance(item, PDFStream) else item
    if isinstance(held, dict):
        yield from (value for key, value in held.items() if key not in _ELSEWHERE)
    elif isinstance(held, list):
        yield from held
