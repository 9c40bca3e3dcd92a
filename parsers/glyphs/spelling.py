"""A cluster of characters becomes a word, with what the second reader sees in its place."""

from parsers.glyphs.agreement import confirmed
from parsers.glyphs.clusters import Cluster
from parsers.glyphs.drawn import Mark
from parsers.glyphs.second_reader import SecondReader
from parsers.types import Glyph, Word

_SHORT = 4
"""Words up to this length may be units or signs, so the second reader is asked about them as about numbers. [characters]"""
_MARGIN = 0.15
"""The second reader is asked from this share of the size before a word to half of its last character. [1]"""


def word_of(cluster: Cluster, second: SecondReader | None) -> Word:
    """Spell a word.

    Args:
        cluster: Its characters, left to right.
        second: The second reader, or None where it is not asked.

    Returns:
        The word; a repair that the second reader sees by itself is no doubt any more.
    """
    marks = cluster.marks
    text = "".join(mark.text for mark in marks)
    seen = _second(cluster, second) if second and _matters(text) else None
    glyphs = tuple([_glyph(mark, seen) for mark in marks])
    hull = (
        min([mark.x0 for mark in marks]),
        min([mark.top for mark in marks]),
        max([mark.x1 for mark in marks]),
        max([mark.bottom for mark in marks]),
    )
    return Word(text=text, box=hull, glyphs=glyphs, second=seen)


def _second(cluster: Cluster, second: SecondReader) -> str:
    first, last = cluster.marks[0], cluster.marks[-1]
    return second.between(
        left=first.x0 - _MARGIN * cluster.size,
        right=max(last.x + (last.x1 - last.x0) / 2, last.x + _MARGIN * cluster.size),
        baselines={mark.y for mark in cluster.marks},
        size=cluster.size,
    )


def _matters(text: str) -> bool:
    """Whether a word holds a figure, or may be a unit or a sign."""
    return len(text) <= _SHORT or not text.isascii() or any(char.isdecimal() for char in text)


def _glyph(mark: Mark, seen: str | None) -> Glyph:
    doubt = mark.doubt
    if doubt and mark.repaired and seen and confirmed(mark.text, seen):
        doubt = tuple(sign for sign in doubt if sign != "symbol_font")
    return Glyph(
        text=mark.text,
        box=(mark.x0, mark.top, mark.x1, mark.bottom),
        font=mark.font,
        size=mark.size,
        upright=not mark.turned,
        repaired=mark.repaired,
        doubt=doubt,
    )
