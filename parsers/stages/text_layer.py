"""What a document's text is worth: good, garbled (it says other than the pages show), or none."""

import re

from parsers.errors import DatasheetError
from parsers.glyphs.reader import reader_of
from parsers.glyphs.symbol_font import SYMBOL
from parsers.types import Glyph, Page, TextLayer, Word
from service.facts.reading import Box

_LOOKED_AT = 2
"""So many of the chosen pages tell. [pages]"""
_HIDDEN = 10
"""More characters than this that nobody can see are leftovers of another text. [characters]"""
_MISREAD = 3
"""So many signs that read as letters are no slip of one footnote. [characters]"""
_UNREADABLE = 0.05
"""Share of characters that nothing tells the meaning of, above which the text is garbled. [1]"""
_FIGURE = (4.0, 14.0)
"""Width and height of a picture that may be a figure of a table. [pt]"""
_PICTURED = 0.25
"""A page of pictures has more than this share of its area covered by them. [1]"""
_VALUE = re.compile(r"(?<![\w.])[-+±]?\d+(?:[.,]\d+)?\s*(?:[mk]?V|[mµμunk]?A|m?W|°|℃|m?Ω|[nµμ]?C|[pn]F|ns|mJ)")
_FEW_VALUES = 3
_FEW_CHARACTERS = 30
_LETTER = {shown: chr(code) for code, shown in SYMBOL.items() if chr(code).isascii() and chr(code).isalpha()} | {"µ": "m"}


def text_layer_of(data: bytes, texts: tuple[str, ...], chosen: tuple[int, ...]) -> TextLayer:
    """Judge a document's text.

    Args:
        data: The file's bytes.
        texts: Plain text of every page, by the fast reader.
        chosen: Pages that are read in full.

    Returns:
        NONE where the values are pictures, GARBLED where the text says other than the pages show, otherwise GOOD.
    """
    few = sum(len(text.strip()) for text in texts) < _FEW_CHARACTERS
    pages = []
    for number in chosen[:_LOOKED_AT]:
        try:
            pages.append(reader_of(data).look(number))
        except DatasheetError:
            # Why not here: whoever reads the page hears of it then; the other pages may be sound.
            continue
    if not pages:
        return TextLayer.NONE if few else TextLayer.GARBLED
    if all(_is_picture(page) or (few and not _says_something(page)) for page in pages):
        return TextLayer.NONE
    return TextLayer.GARBLED if _garbled(pages) else TextLayer.GOOD


def _says_something(page: Page) -> bool:
    """Whether a page of next to no text is short, and not a picture with a page number: no picture, and a number in one piece among its words."""
    numbers = [word for word in page.words if word.text.isdecimal() and not any("uneven_gap" in glyph.doubt for glyph in word.glyphs)]
    return not page.pictures and len(page.words) > 1 and bool(numbers)


def _is_picture(page: Page) -> bool:
    """Whether a page shows pictures where its values should be."""
    covered = sum((x1 - x0) * (bottom - top) for x0, top, x1, bottom in page.pictures)
    line = " ".join(word.text for word in page.words)
    return covered > _PICTURED * page.width * page.height and len(_VALUE.findall(line)) < _FEW_VALUES


def _garbled(pages: list[Page]) -> bool:
    words = [word for page in pages for word in page.words]
    glyphs = [glyph for word in words for glyph in word.glyphs]
    unreadable = sum(1 for glyph in glyphs if "unmapped" in glyph.doubt)
    misread = sum(1 for word in words for glyph in word.glyphs if _misread(glyph, word))
    if any(_pasted(page) for page in pages):
        return True
    return sum(page.hidden for page in pages) > _HIDDEN or misread >= _MISREAD or unreadable > _UNREADABLE * len(glyphs)


def _pasted(page: Page) -> bool:
    """Whether a picture of the size of a figure stands in a line of words: a value that was pasted in and extracts as nothing."""
    return any(_figure_sized(box) and _in_a_line(box, page.words) for box in page.pictures)


def _figure_sized(box: Box) -> bool:
    return _FIGURE[0] < box[2] - box[0] < _FIGURE[1] and _FIGURE[0] < box[3] - box[1] < _FIGURE[1]


def _in_a_line(box: Box, words: tuple[Word, ...]) -> bool:
    """Words at its left and at its right on the same height, and none over it."""
    middle = (box[1] + box[3]) / 2
    line = [word for word in words if word.box[1] < middle < word.box[3] and not word.text.isspace()]
    over = any(word.box[0] < box[2] and box[0] < word.box[2] for word in line)
    return not over and any(word.box[2] <= box[0] for word in line) and any(word.box[0] >= box[2] for word in line)


def _misread(glyph: Glyph, word: Word) -> bool:
    """Whether the fast reader takes a sign for the letter that its font puts in the same place."""
    return "symbol_font" in glyph.doubt and word.second is not None and _LETTER.get(glyph.text, "\0") in word.second
