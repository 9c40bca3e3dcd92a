"""Whether the two readers see the same number, sign and unit in a word."""

import unicodedata

from parsers.glyphs.symbol_font import SYMBOL
from parsers.types import Glyph, Word

_SAME = str.maketrans({
    "\u2212": "-", "\u2013": "-", "\u2014": "-", "\u2010": "-", "\u2011": "-", "\u00ad": "-", "\u2126": "Ω", "\u00b5": "μ", "\u2206": "Δ",
    "\u00ba": "°", "\u02da": "°", "\u2218": "°", "\u2266": "≤", "\u2267": "≥", "\uff0c": ",", "\uff1a": ":", "\uff1b": ";", "\uff08": "(",
    "\uff09": ")", "\uff1d": "=", "\uff0d": "-", "\uff0b": "+", "\u2103": "°C", "\u22c5": "·", "\u2022": "·", "\u25cf": "·",
})  # fmt: skip
"""Signs that mean the same in a table, brought to one of them. Figures are left alone: a raised or full-width one is another character."""
_LIGATURES = str.maketrans({char: unicodedata.normalize("NFKC", char) for char in "ﬀﬁﬂﬃﬄ"})


def agrees(word: Word) -> bool:
    """Whether the second reader sees in a word's place what the word says.

    Args:
        word: A word of a page.

    Returns:
        False where it sees other text or none, or was not asked.
    """
    if word.second is None:
        return False
    rest = _folded(word.second)
    for glyph in word.glyphs:
        taken = next((spelling for spelling in _spellings(glyph) if rest.startswith(spelling)), None)
        if taken is None:
            return False
        rest = rest[len(taken) :]
    return not rest


def confirmed(text: str, second: str) -> bool:
    """Whether the second reader by itself sees a character as it was repaired.

    Args:
        text: The repaired character.
        second: What the second reader sees in the word around it.

    Returns:
        True where the repaired character stands in the second reading.
    """
    return _folded(text) in _folded(second)


def _spellings(glyph: Glyph) -> list[str]:
    """How a character may come out of the second reader; a repaired one also by the code that its font of signs gives it."""
    text = _folded(glyph.text)
    if not glyph.repaired:
        return [text]
    codes = [code for code, shown in SYMBOL.items() if _folded(shown) == text]
    return [text, *(spelling for code in codes for spelling in (chr(code), chr(0xF000 + code)))]


def _folded(text: str) -> str:
    return "".join(text.translate(_SAME).translate(_LIGATURES).split())
