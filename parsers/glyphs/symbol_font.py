"""The Symbol font by its own codes: ohm, micro, degree and Greek letters that readers take for Latin ones.

Codes as in ISO 32000-1:2008, Annex D.5 (Symbol set and encoding).
"""

import re

_LOWER_HALF = (
    " !∀#∃%&∋()∗+,−./0123456789:;<=>?"  # noqa: RUF001  the set has look-alikes of Latin signs
    "≅ΑΒΧΔΕΦΓΗΙϑΚΛΜΝΟΠΘΡΣΤΥςΩΞΨΖ[∴]⊥_"
    "\u203eαβχδεφγηιϕκλµνοπθρστυϖωξψζ{|}∼"  # noqa: RUF001
)
_UPPER_HALF = (
    "€ϒ′≤⁄∞ƒ♣♦♥♠↔←↑→↓"  # noqa: RUF001
    "°±″≥×∝∂•÷≠≡≈…"
)
SYMBOL: dict[int, str] = {
    **{0x20 + index: char for index, char in enumerate(_LOWER_HALF)},
    **{0xA0 + index: char for index, char in enumerate(_UPPER_HALF)},
    0xBE: "\u2014", 0xD2: "®", 0xD3: "©", 0xD4: "™", 0xD7: "⋅", 0xE2: "®", 0xE3: "©", 0xE4: "™",
}  # fmt: skip
"""What a code of the Symbol font shows."""

_CIRCLED = {0x80 + digit: chr(0x245F + digit) if digit else "\u24ea" for digit in range(11)}
_CIRCLED_ON_BLACK = {0x8B + digit: chr(0x2775 + digit) if digit else "\u24ff" for digit in range(11)}
DINGBATS: dict[int, str] = {**_CIRCLED, **_CIRCLED_ON_BLACK, 0x6C: "•", 0x9F: "•", 0xA7: "▪", 0x6E: "▪"}
"""What a code of the Wingdings font shows, as far as tables use it: circled figures that mark footnotes, and bullets."""

_FAMILY = re.compile(r"(?:.*\+)?(symbol|wingdings)(?!s?and|ic)", re.IGNORECASE)


def family_codes(font_name: str) -> dict[int, str] | None:
    """The code table of a font of signs.

    Args:
        font_name: Name of a font, with or without the tag of a subset.

    Returns:
        The table, or None for a font of letters.
    """
    match = _FAMILY.match(font_name)
    return None if match is None else SYMBOL if match[1].lower() == "symbol" else DINGBATS
