"""Third stage: words become lines; small raised words become footnote marks of the line that they stand on."""

from statistics import median

from parsers.grid import Line
from parsers.types import Page, Word

_SAME = 0.45
"""Middles of words of one line differ by less than this share of their size. [1]"""
_BAND = 12.0
"""Height of the bands in which neighbours are looked up. [pt]"""
_SMALL = 0.82
"""A word smaller than this share of the word beside it is a mark or an index. [1]"""


def lines_in(page: Page) -> tuple[Line, ...]:
    """The lines of a page, from the top.

    Args:
        page: A page as shown.

    Returns:
        Its lines; every word stands in exactly one.
    """
    inside = [word for word in page.words if 0 <= _middle(word) <= page.height and word.text.strip()]
    if not inside:
        return ()
    bands = _bands(inside)
    small = {id(word): host for word in inside if (host := _host(word, bands)) is not None}
    rows: list[tuple[float, list[Word]]] = []
    for word in sorted((word for word in inside if id(word) not in small), key=_middle):
        near = [row for row in rows[-4:] if abs(row[0] - _middle(word)) < _SAME * _height(word)]
        if near:
            min(near, key=lambda row: abs(row[0] - _middle(word)))[1].append(word)
        else:
            rows.append((_middle(word), [word]))
    home = {id(word): row for row in rows for word in row[1]}
    marks: dict[int, list[Word]] = {}
    for word in inside:
        if id(word) in small:
            _settle(word, small, home, marks)
    return tuple(_line(words, marks) for _, words in sorted(rows, key=lambda row: row[0]))


def size_of(word: Word) -> float:
    """Size of a word's type. [pt]"""
    return max((glyph.size for glyph in word.glyphs), default=_height(word))


def _settle(word: Word, small: dict[int, Word], home: dict[int, tuple[float, list[Word]]], marks: dict[int, list[Word]]) -> None:
    """Put a small word on its host's line: raised ones as marks, lowered ones as part of the text."""
    host = small[id(word)]
    seen = {id(word)}
    while id(host) in small and id(host) not in seen:
        seen.add(id(host))
        host = small[id(host)]
    if id(host) not in home:
        return
    row = home[id(host)]
    if _middle(word) < _middle(host):
        marks.setdefault(id(row[1]), []).append(word)
    else:
        row[1].append(word)


def _line(words: list[Word], marks: dict[int, list[Word]]) -> Line:
    ordered = tuple(sorted(words, key=lambda word: word.box[0]))
    full = [word for word in ordered if _height(word) >= _SMALL * max(map(_height, ordered))]
    return Line(
        words=ordered,
        marks=tuple(marks.get(id(words), ())),
        y=median(_middle(word) for word in full),
        size=median(_height(word) for word in full),
    )


def _bands(words: list[Word]) -> dict[int, list[Word]]:
    """Words by the bands of height that they cross, so that neighbours are found without looking at the whole page."""
    bands: dict[int, list[Word]] = {}
    for word in words:
        for band in range(int(word.box[1] // _BAND), int(word.box[3] // _BAND) + 1):
            bands.setdefault(band, []).append(word)
    return bands


def _host(word: Word, bands: dict[int, list[Word]]) -> Word | None:
    """The larger word at whose right shoulder or foot a small word stands."""
    best, least = None, 1e9
    near = {id(other): other for band in range(int(word.box[1] // _BAND), int(word.box[3] // _BAND) + 1) for other in bands.get(band, ())}
    for other in near.values():
        if other is word or _height(word) >= _SMALL * _height(other):
            continue
        gap = word.box[0] - other.box[2]
        overlap = min(word.box[3], other.box[3]) - max(word.box[1], other.box[1])
        if -1.5 <= gap < 0.9 * _height(other) and overlap > 0.25 * _height(word) and gap < least:
            best, least = other, gap
    return best


def _middle(word: Word) -> float:
    return (word.box[1] + word.box[3]) / 2


def _height(word: Word) -> float:
    return max(0.1, word.box[3] - word.box[1])

