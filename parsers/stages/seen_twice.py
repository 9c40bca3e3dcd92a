"""Whether both readers see the characters of a figure, and what they are in doubt about where they do not."""

import re
from collections.abc import Iterable, Sequence

from parsers.glyphs.unseen import HIDDEN_VALUE
from parsers.grammar.number import numbers_in, without_marks
from parsers.grammar.unit import unit_named
from parsers.types import Word

UNSURE = frozenset({"symbol_font", "unmapped", "cut", "uneven_gap", "sign_apart"})
"""Signs that a figure may have been taken for another; evidence from elsewhere on the sheet outweighs them. Any other sign says that a viewer
may show something else, and nothing outweighs it but a look."""


def doubts_of(words: Iterable[Word], unit: str) -> frozenset[str]:
    """Every sign of doubt on the characters of a figure.

    Args:
        words: The figure's words.
        unit: The figure's unit: a value that the page hides bears on figures of its own unit, whatever their prefix.
    """
    signs = frozenset(sign for word in words for glyph in word.glyphs for sign in glyph.doubt)
    return frozenset(sign for sign in signs if not sign.startswith(f"{HIDDEN_VALUE}:") or _of_kind(sign.partition(":")[2], unit))


def _of_kind(hidden: str, unit: str) -> bool:
    """Whether a hidden unit and the unit of a figure differ in nothing but a prefix."""
    return (unit_named(hidden) or "").lstrip("mun") == unit.lstrip("mun")


def same_figures(words: Sequence[Word]) -> bool:
    """Whether the second reader sees the same number in the words' boxes."""
    first, second = "".join(word.text for word in words), "".join(word.second or "" for word in words)
    return bool(second) and _digits(first) == _digits(second)


def _digits(text: str) -> list[str]:
    return [re.sub(r"\s", "", number.printed) for number in numbers_in(without_marks(re.sub(r"[\u2212\u2013\u2014]", "-", text)))]
