"""Strips of text become words: cut at spaces, at wide gaps and around footnote marks."""

import re
from collections.abc import Iterator

from parsers.ocr.seen import Character, Strip
from parsers.ocr.spelling import is_doubtful, spelled
from parsers.types import Glyph, Word
from service.facts.reading import Box

_FOOTNOTE_MARKS = frozenset("①②③④⑤⑥⑦⑧⑨⑩")
_GAP = 0.55
"""A gap wider than this share of the strip's height ends a word, whether a space was seen or not. [1]"""
_TYPE = 0.72
"""Size of type as a share of the height of the strip that it was found in. [1]"""
_SURE = 0.5
"""Below this certainty a character may as well be another. [1]"""
_TORN = re.compile(r"[iIl|!][AVWΩmµ]")
"""What is left of a digit one and the unit after it."""
FONT = "picture"
UNSURE, LOOKS_ALIKE = "unsure", "looks_alike"


def words_of(strip: Strip) -> Iterator[Word]:
    """The words of a strip.

    Args:
        strip: A piece of a line.

    Yields:
        Words, left to right, as high as the strip.
    """
    pieces = list(_cut(strip))
    for characters in pieces:
        put_right = spelled(characters, alone=len(pieces) == 1)
        if put_right:
            yield _word(put_right, strip.box)


def _cut(strip: Strip) -> Iterator[tuple[Character, ...]]:
    height = strip.box[3] - strip.box[1]
    begin, marks = 0, strip.characters
    for position in range(1, len(marks) + 1):
        if position == len(marks) or (_parts(strip, position, height) and not _tears(marks, position)):
            yield marks[begin:position]
            begin = position


def _parts(strip: Strip, position: int, height: float) -> bool:
    """Whether a word ends before a character: at a space, at a wide gap though no space was seen, and around footnote marks."""
    left, right = strip.characters[position - 1], strip.characters[position]
    wide = right.box[0] - left.box[2] > _GAP * height
    return wide or position in strip.spaces or left.text in _FOOTNOTE_MARKS or right.text in _FOOTNOTE_MARKS


def _tears(marks: tuple[Character, ...], position: int) -> bool:
    """Whether cutting there would tear a number: "-11 A" read as "-1 iA" is one word that is no number, never the number -1."""
    rest = "".join(mark.text for mark in marks[position : position + 2])
    return marks[position - 1].text.isdigit() and _TORN.match(rest) is not None


def _word(characters: tuple[Character, ...], strip: Box) -> Word:
    """One word; a footnote mark stands raised and small, as it is printed."""
    text = "".join(character.text for character in characters)
    top, bottom = strip[1], strip[3]
    if text in _FOOTNOTE_MARKS:
        bottom = top + 0.6 * (bottom - top)
    size = _TYPE * (bottom - top)
    glyphs = tuple(
        Glyph(
            text=character.text,
            box=(character.box[0], top, character.box[2], bottom),
            font=FONT,
            size=size,
            doubt=_doubt(character, text),
        )
        for character in characters
    )
    return Word(text=text, box=(min(glyph.box[0] for glyph in glyphs), top, max(glyph.box[2] for glyph in glyphs), bottom), glyphs=glyphs)


def _doubt(character: Character, word: str) -> tuple[str, ...]:
    unsure = (UNSURE,) if character.certainty < _SURE else ()
    return (*unsure, LOOKS_ALIKE) if is_doubtful(character.text, word) else unsure
