"""Whether a file's table of objects and the objects that it holds fit each other (ISO 32000-1:2008, 7.5.4 and 7.5.8)."""

import re
from collections.abc import Iterator
from itertools import islice

from pdfminer.pdfdocument import PDFDocument, PDFXRefFallback, PDFXRefStream
from pdfminer.pdfexceptions import PDFException

from parsers.glyphs.doubts import REBUILT, STRAY

Place = tuple[int | None, int]
"""Where an object lies: the number of the stream that holds it and its position there, or None and its offset in the file."""

_MOST_OBJECTS = 300_000
"""A table that names more is no datasheet's."""
_WORD = re.compile(rb"obj")
_NUMBERS = re.compile(rb"(?<!\d)(\d{1,10})[\s\x00]+\d{1,5}[\s\x00]+\Z")
_REACH = 64
"""So far before the word its two numbers are looked for. [byte]"""
_BEFORE = re.compile(rb"(?>[\s\x00]+|%[^\r\n]*)*+")
"""Blanks and comments may stand before an object; some programs keep a whole header there."""


def places_of(document: PDFDocument) -> dict[int, list[Place]]:
    """Where the tables of a document say that its objects lie.

    Args:
        document: As pdfminer reads it.

    Returns:
        Places by object number, the latest first.
    """
    places: dict[int, list[Place]] = {}
    for number, place in islice(_entries(document), _MOST_OBJECTS):
        known = places.setdefault(number, [])
        if place not in known:
            known.append(place)
    return places


def latest_places(document: PDFDocument) -> dict[int, Place]:
    """Where the objects of a document lie that count.

    Args:
        document: As pdfminer reads it.
    """
    return {number: places[0] for number, places in places_of(document).items()}


def signs_of(data: bytes, document: PDFDocument) -> frozenset[str]:
    """Signs of doubt on a whole file.

    Args:
        data: The file's bytes.
        document: The same as pdfminer reads it.

    Returns:
        ``rebuilt`` where no table was found or one names a place without an object; ``stray`` where the file holds a further object under a
        number in use, in a place that no table names, so that a viewer that searches may show another page.
    """
    if any(isinstance(table, PDFXRefFallback) for table in document.xrefs):
        return frozenset({REBUILT})
    places = places_of(document)
    if sum(map(len, places.values())) >= _MOST_OBJECTS:
        return frozenset({REBUILT})
    heads = dict(_heads(data))
    named = {_head_at(data, offset) for held in places.values() for stream, offset in held if stream is None}
    stray = any(number in places for start, number in heads.items() if start not in named)
    return frozenset(({STRAY} if stray else set()) | (set() if named <= heads.keys() else {REBUILT}))


def _entries(document: PDFDocument) -> Iterator[tuple[int, Place]]:
    for table in document.xrefs:
        # Why not the stream's own list: it takes every range for the first one.
        ranges = table.ranges if isinstance(table, PDFXRefStream) else ()
        numbers = (number for start, count in ranges for number in range(start, start + count)) if ranges else table.get_objids()
        for number in numbers:
            try:
                stream, position, _ = table.get_pos(number)
            except (KeyError, PDFException):
                continue
            yield number, (stream, position)


def _heads(data: bytes) -> Iterator[tuple[int, int]]:
    """Where in the file an object begins, and its number: the word is sought first, because nothing else in a file is as quick to find."""
    for word in _WORD.finditer(data):
        start = max(0, word.start() - _REACH)
        if data[word.start() - 1 : word.start()].strip(b" \t\r\n\f\v\0") == b"" and (numbers := _NUMBERS.search(data[start : word.start()])):
            yield start + numbers.start(), int(numbers[1])


def _head_at(data: bytes, offset: int) -> int:
    """Where an object begins that a table says lies at an offset."""
    match = _BEFORE.match(data, offset)
    return match.end() if match else offset
