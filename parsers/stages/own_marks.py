"""What a sheet says of itself: that it is preliminary, that its figures are targets, or that the part is no longer made."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from service.facts.reading import Reading, Status

PRELIMINARY, OBSOLETE, TARGET = "preliminary", "obsolete", "target"
"""Two flags of a sheet, and the mark of a sheet whose figures are wishes; such a sheet is preliminary too."""
FLAGS = frozenset({PRELIMINARY, OBSOLETE})
"""The marks that are flags of the sheet."""

_PATTERNS = {
    PRELIMINARY: re.compile(r"\b(?:preliminary|tentative)\b|暂定|暫定", re.IGNORECASE),
    OBSOLETE: re.compile(
        r"\bobsolete\b|\bdiscontinued\b|not recommended for new design|\bNRND\b|end[- ]of[- ]life|last[- ]time[- ]buy|停产|生産終了", re.IGNORECASE
    ),
    TARGET: re.compile(r"\b(?:target|objective)\s+(?:data\s?sheet|specifications?|data)\b|\badvanced?\s+information\b", re.IGNORECASE),
}
_LONGEST = 60
"""A mark is a line of its own, or part of a page's header or footer; longer lines are sentences about marks. [characters]"""
_SHARE = 0.5
"""A mark that the front does not bear stands on at least this share of the pages: lists of what marks mean stand on one. [1]"""
_WHY = "The sheet calls itself a target specification: nobody has measured its values yet."


def marks_of(page_text: Sequence[str]) -> frozenset[str]:
    """The marks that a sheet bears.

    Args:
        page_text: Plain text of every page.

    Returns:
        Of ``preliminary``, ``obsolete`` and ``target`` those that stand on the front or on at least half of the pages.
    """
    pages = [{mark for line in text.splitlines() for mark in _in_line(line)} for text in page_text]
    every = {mark for marks in pages for mark in marks}
    borne = {mark for mark in every if mark in pages[0] or sum(mark in marks for marks in pages) >= _SHARE * len(pages)}
    return frozenset(borne | ({PRELIMINARY} if TARGET in borne else set()))


def marked(readings: Iterable[Reading], marks: frozenset[str]) -> tuple[Reading, ...]:
    """Readings with what the marks say of their values.

    Args:
        readings: Of one sheet.
        marks: As :func:`marks_of` finds them.

    Returns:
        Every value of a preliminary sheet flagged; those of a target specification wait for a person. That a part is no longer made says
        nothing about its values.
    """
    return tuple(_marked(reading, marks) for reading in readings)


def _marked(reading: Reading, marks: frozenset[str]) -> Reading:
    flagged = replace(reading, flags=(*reading.flags, PRELIMINARY)) if PRELIMINARY in marks else reading
    if TARGET not in marks:
        return flagged
    return replace(flagged, status=Status.REVIEW, why=_WHY if reading.status is Status.ACCEPTED else f"{reading.why} {_WHY}")


def _in_line(line: str) -> Iterator[str]:
    if len(line.strip()) <= _LONGEST:
        yield from (mark for mark, pattern in _PATTERNS.items() if pattern.search(line))
