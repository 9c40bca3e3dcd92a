"""Fonts whose characters extract as others than they show, and what they show."""

import re
from collections.abc import Callable
from typing import Any

from pdfminer.glyphlist import glyphname2unicode
from pdfminer.pdftypes import resolve1
from pdfminer.psparser import PSLiteral

from parsers.glyphs.symbol_font import SYMBOL, family_codes

Repair = Callable[[int, str], str | None]
"""From a character code and the text that a reader takes it for, to the text that it shows; None where nothing is known."""

_NUMBERED = re.compile(r"([A-Za-z])0*(\d{1,3})(?:\..*)?")
_GLYPH_ORDER = 29
"""A TrueType font's glyphs usually follow ASCII from glyph 3, the space (code 32) on: common practice, no source."""

_LAST, _LAST_IN_ORDER = 255, 126
_SIGN_LETTERS = frozenset("WmqDbadlpstS")
_TRUE_SIGNS = frozenset("µ×®©")
"""Signs outside ASCII that a font of signs maps to themselves, whatever their codes would stand for in it."""


def repair_of(spec: dict[str, Any]) -> Repair | None:
    """What a font needs for its characters to extract as they show.

    Args:
        spec: The font's dictionary in the file.

    Returns:
        The repair, or None for a font that needs none.
    """
    name, names = _base_font(spec), _names(spec)
    codes = family_codes(name)
    if "dingbat" in name.lower():
        return None
    if numbered := _numbered(names, glyph_order=_literal(spec.get("Subtype")) == "Type3"):
        codes = SYMBOL if codes is None and _signs_only(numbered) else codes
        return lambda code, _: _shown(numbered[code], codes) if code in numbered else None
    if codes is None or names:
        return None
    by_code = "ToUnicode" not in spec and _literal(spec.get("Subtype")) != "Type0"
    return lambda code, text: _of_family(codes, code if by_code or not text else ord(text[0]), text)


def _of_family(codes: dict[int, str], code: int, text: str) -> str | None:
    """A code below 256, or a private-use character that stands for one, by the font's own table."""
    if text in _TRUE_SIGNS or not (code < 0x100 or 0xF000 <= code <= 0xF0FF):
        return None
    return codes.get(code & 0xFF, text)


def _shown(code: int, codes: dict[int, str] | None) -> str | None:
    if codes is not None:
        return next((text for number in (code, code + _GLYPH_ORDER) if not (text := codes.get(number, "")).isascii()), None)
    return bytes((code,)).decode("cp1252", "ignore") or None


def _numbered(names: dict[int, str], *, glyph_order: bool) -> dict[int, int]:
    """Codes of glyphs that are all named by one letter and a number; empty where they are named otherwise."""
    matches = {code: match for code, name in names.items() if name not in glyphname2unicode and (match := _NUMBERED.fullmatch(name))}
    if not matches or len(matches) < len(names) or len({match[1] for match in matches.values()}) > 1:
        return {}
    numbers = {code: int(match[2]) + (_GLYPH_ORDER if glyph_order else 0) for code, match in matches.items()}
    last = _LAST_IN_ORDER if glyph_order else _LAST
    return {code: number for code, number in numbers.items() if number <= last} if min(numbers.values()) >= ord(" ") else {}


def _signs_only(numbers: dict[int, int]) -> bool:
    """Whether the letters of a font are those alone that a table sets in a font of signs, as W for ohm."""
    letters = {chr(number) for number in numbers.values() if chr(number).isalnum()}
    return bool(letters) and letters <= _SIGN_LETTERS


def _names(spec: dict[str, Any]) -> dict[int, str]:
    """Names of the glyphs that the font's encoding sets apart, by code."""
    encoding = resolve1(spec.get("Encoding"))
    names: dict[int, str] = {}
    code = 0
    for item in (resolve1(encoding.get("Differences")) or ()) if isinstance(encoding, dict) else ():
        entry = resolve1(item)
        if isinstance(entry, int):
            code = entry
        elif isinstance(entry, PSLiteral):
            if (name := _literal(entry)) != ".notdef":
                names[code] = name
            code += 1
    return names


def _base_font(spec: dict[str, Any]) -> str:
    return _literal(spec.get("BaseFont"))


def _literal(value: Any) -> str:  # noqa: ANN401  pdfminer carries no types
    value = resolve1(value)
    name = value.name if isinstance(value, PSLiteral) else ""
    return name.decode("latin-1") if isinstance(name, bytes) else name
