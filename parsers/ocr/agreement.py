"""Two readings of the same page: what the second sees in a word's place stands beside what the first sees."""

from bisect import bisect_left
from dataclasses import replace

from parsers.types import Glyph, Word
from service.facts.reading import Box

_REACH = 0.3
"""Places of one character in two readings differ by less than this share of its height. [1]"""


def side_by_side(first: list[Word], second: list[Word]) -> list[Word]:
    """Put the second reading beside the first.

    Args:
        first: Words of the first reading.
        second: Words of the second reading, at another scale.

    Returns:
        The first reading's words, each with what the second sees in its place; an empty text where it sees nothing.
    """
    glyphs = sorted((glyph for word in second for glyph in word.glyphs), key=_middle_x)
    places = [_middle_x(glyph) for glyph in glyphs]
    return [replace(word, second=_seen(word, second, glyphs, places)) for word in first]


def _seen(word: Word, second: list[Word], glyphs: list[Glyph], places: list[float]) -> str:
    """The same characters in the same place, however they were cut into words; otherwise the words that stand there."""
    reach = _REACH * (word.box[3] - word.box[1])
    within = glyphs[bisect_left(places, word.box[0] - reach) : bisect_left(places, word.box[2] + reach)]
    text = "".join(glyph.text for glyph in within if _on_one_line(glyph.box, word.box))
    if word.text == text:
        return text
    standing = [other for other in second if _on_one_line(other.box, word.box) and _overlap(other.box, word.box) > 0.5]
    return "".join(other.text for other in sorted(standing, key=lambda other: other.box[0]))


def _middle_x(glyph: Glyph) -> float:
    return (glyph.box[0] + glyph.box[2]) / 2


def _on_one_line(one: Box, other: Box) -> bool:
    common = min(one[3], other[3]) - max(one[1], other[1])
    return common > 0.5 * min(one[3] - one[1], other[3] - other[1])


def _overlap(one: Box, other: Box) -> float:
    """Share of the narrower box that lies over the other."""
    narrower = max(0.1, min(one[2] - one[0], other[2] - other[0]))
    return (min(one[2], other[2]) - max(one[0], other[0])) / narrower
