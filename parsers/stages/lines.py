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
_BACK = -1.5
"""A mark may begin so far inside the word that it stands at. [pt]"""
_FURTHEST = 50.0
"""No type is so tall that a mark stands further behind it. [pt]"""
_BESIDE = 0.9
"""It begins no further behind the word than this share of the word's height. [1]"""


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
    rows: list[list[Word]] = []
    heights: list[float] = []
    for word in sorted((word for word in inside if id(word) not in small), key=_middle):
        at = next((at for at in range(len(rows) - 1, max(-1, len(rows) - 5), -1) if abs(heights[at] - _middle(word)) < _SAME * _height(word)), None)
        if at is None:
            rows.append([word])
            heights.append(_middle(word))
        else:
            heights[at] += (_middle(word) - heights[at]) / (len(rows[at]) + 1)
            rows[at].append(word)
    home = {id(word): row for row in rows for word in row}
    marks: dict[int, list[Word]] = {}
    for word in inside:
        if id(word) in small:
            _settle(word, small, home, marks)
    return tuple(sorted((_line(words, marks) for words in rows), key=lambda line: line.y))


def _settle(word: Word, small: dict[int, Word], home: dict[int, list[Word]], marks: dict[int, list[Word]]) -> None:
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
        marks.setdefault(id(row), []).append(word)
    else:
        row.append(word)


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
    best, least = None, _FURTHEST
    left, high = word.box[0], _height(word)
    near = (other for band in range(int(word.box[1] // _BAND), int(word.box[3] // _BAND) + 1) for other in bands.get(band, ()))
    for other in near:
        # Why the gap first: it parts most words at once, and a page has thousands of pairs.
        gap = left - other.box[2]
        if gap < _BACK or gap >= least or other is word:
            continue
        tall = _height(other)
        overlap = min(word.box[3], other.box[3]) - max(word.box[1], other.box[1])
        if gap < _BESIDE * tall and high < _SMALL * tall and overlap > 0.25 * high:
            best, least = other, gap
    return best


def _middle(word: Word) -> float:
    """Middle height of a word's largest glyphs: an index below the line does not pull it down [pt]."""
    if not word.glyphs:
        return (word.box[1] + word.box[3]) / 2
    largest = max(word.glyphs, key=lambda glyph: glyph.size)
    return (largest.box[1] + largest.box[3]) / 2


def _height(word: Word) -> float:
    return max(0.1, word.box[3] - word.box[1])
