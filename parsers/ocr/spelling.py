"""How a picture reader's characters are spelled in ours, and which of them are easily taken for one another.

Only characters that cannot stand for anything else are put right; a digit is never changed.
"""

import re
from dataclasses import replace

from parsers.ocr.seen import Character

_SPELLED = {
    "\u2103": "°C", "\u2126": "\u03a9", "\u03bc": "\u00b5", "\u2206": "\u0394", "\u2266": "≤", "\u2267": "≥",
    "\u2212": "-", "\u2013": "-", "\u300d": "J", "_": "",
}  # fmt: skip
"""Other characters for the same sign; a corner bracket is a lowered J, and a line under nothing announces an index."""
_WIDE, _WIDE_TO_PLAIN = range(0xFF01, 0xFF5F), 0xFEE0
"""Full-width forms of ASCII characters, and how far away the plain ones lie: The Unicode Standard, Halfwidth and Fullwidth Forms."""
_THETA = re.compile(r"^R[0OoeθΘ86Q&]+(?=(?:[Jj]-?[CcAaLl]|[Cc][Ss])\b)")
"""The theta of a thermal resistance's symbol, which readers take for 0, O, e or 8."""
_PER_WATT = re.compile(r"°C[/|lI1]?[WMN]{1,2}")
_PER_WATT_ALONE = re.compile(r"C[/|lI1]?[WMN]{1,2}")
"""Degrees Celsius per watt with the slash lost or the W turned over, where nothing stands beside it the degree as well: nothing else looks so."""
_NUMBER_LIKE = re.compile(r"[-+±=<>≤≥]*(?=\S*\d)[\d.,OoQDlI|iSsBZzbgq]+(?:[AVWΩµm%,;)].*)?$")
LOOK_ALIKE = frozenset("OoQDlI|iSsBZzbgq")
"""Letters that look like a digit; beside digits nobody can be sure of either."""


def spelled(characters: tuple[Character, ...], *, alone: bool) -> tuple[Character, ...]:
    """Bring one word's characters to our spelling.

    Args:
        characters: A word as it was seen.
        alone: Whether it stands alone, as a unit does in its cell.

    Returns:
        The word with signs, theta and the unit of thermal resistance put right.
    """
    plain = [part for character in characters for part in _plain(character)]
    plain = [part for position, part in enumerate(plain) if not (part.text == "°" and position and plain[position - 1].text == "°")]
    text = "".join(part.text for part in plain)
    if len(text) == len(plain):
        if found := _THETA.match(text):
            plain[1 : found.end()] = [replace(plain[1], text="θ")]
        if _PER_WATT.fullmatch(text) or (alone and _PER_WATT_ALONE.fullmatch(text)):
            plain = [replace(plain[min(position, len(plain) - 1)], text=mark) for position, mark in enumerate("°C/W")]
    return tuple(plain)


def is_doubtful(text: str, word: str) -> bool:
    """Whether a character may be another one: a letter like a digit, in a word of digits.

    Args:
        text: The character.
        word: The word that it stands in.
    """
    return text in LOOK_ALIKE and _NUMBER_LIKE.match(word) is not None


def _plain(character: Character) -> list[Character]:
    """One character as ours; a degree Celsius in one becomes two side by side."""
    text = _SPELLED.get(character.text, character.text)
    if len(text) == 1 and ord(text) in _WIDE:
        text = chr(ord(text) - _WIDE_TO_PLAIN)
    left, top, right, bottom = character.box
    width = (right - left) / len(text) if text else 0.0
    return [
        replace(character, text=mark, box=(left + position * width, top, left + (position + 1) * width, bottom)) for position, mark in enumerate(text)
    ]
