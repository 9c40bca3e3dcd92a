"""Text set in a Symbol font that a reader took for letters: Greek letters, ohm, micro and signs by the font's own code.

The code positions are those of the Symbol encoding in ISO 32000-1:2008, Annex D.5.
"""

from dataclasses import replace

from parsers.glyphs.drawn import Mark

SYMBOL = {
    "W": "Ω", "m": "µ", "q": "θ", "Q": "Θ", "D": "Δ", "a": "α", "b": "β", "g": "γ", "d": "δ", "e": "ε", "h": "η", "l": "λ",
    "p": "π", "r": "ρ", "s": "σ", "S": "Σ", "t": "τ", "f": "φ", "F": "Φ", "w": "ω", "n": "ν", "j": "ϕ", "J": "ϑ",
    "°": "°", "±": "±", "£": "≤", "³": "≥", "´": "×", "¸": "÷", "¹": "≠", "»": "≈", "¥": "∞", "·": "•", "®": "→", "-": "−",
    "¤": "⁄", "¢": "′", "²": "″", "@": "≅", "~": "∼",
}  # fmt: skip
"""What a Latin reading of the code stands for in the Symbol encoding."""


def repaired(mark: Mark) -> Mark:
    """Put right the text of a character set in a Symbol font.

    Args:
        mark: A drawn character.

    Returns:
        The same character, or one with the text repaired and marked as such.
    """
    if "symbol" not in mark.font.lower():
        return mark
    text = SYMBOL.get(mark.text, mark.text)
    if text == mark.text:
        return mark
    return replace(mark, text=text, repaired=True, doubt=(*mark.doubt, "symbol_font"))
