"""What the text of a page holds and no viewer shows, or shows twice or across: it puts the figures beside it in doubt."""

import re
from collections.abc import Iterable, Iterator

from parsers.glyphs.doubts import INKLESS
from parsers.glyphs.drawn import SLANTING, Mark

BESIDE_HIDDEN, HIDDEN_VALUE, DOUBLED, STAMPED = "beside_hidden", "hidden_value", "doubled", "stamped"
"""Hidden figures stand on the same line; the page hides a value (the sign goes on with its unit: it bears on values in that unit alone); the whole
page is drawn twice; figures are stamped across the page."""

_UNSEEN = frozenset(("pale", INKLESS))
_SAME_LINE = 0.5
"""Baselines of one line differ by less than this share of the size. [1]"""
_DRAWN_TWICE = 0.8
"""Where more than this share of the characters is left once copies are gone, only headings were drawn twice to look bold. [1]"""
_ENOUGH = 100
"""On a page of fewer characters a share means little. [1]"""
_STAMP_PT = 36.0
"""Slanting type of this size is stamped across a page, not written beside a graph. [pt]"""
_VALUE = re.compile(r"\d\s*m?(?P<unit>V|A|W|Ω|J|nC|pF|°C(?!/)|K/W|°C/W)(?![A-Za-z])")


def weigh_unseen(drawn: list[Mark], seen: list[Mark], shown_once: list[Mark]) -> None:
    """Put signs of doubt on the figures that a viewer shows.

    Args:
        drawn: Every character that the page draws, shown or not.
        seen: Those that a viewer shows upright or square.
        shown_once: The same without copies.
    """
    figures = [mark for mark in shown_once if mark.text.isdecimal()]
    unseen = list(_unseen(drawn, seen))
    hidden_figures = [mark for mark in unseen if mark.text.isdecimal()]
    for mark in figures:
        if any(abs(mark.y - other.y) < _SAME_LINE * mark.size for other in hidden_figures):
            mark.doubt = (*mark.doubt, BESIDE_HIDDEN)
    for sign in _signs_of_page(drawn, seen, shown_once, unseen):
        for mark in figures:
            mark.doubt = (*mark.doubt, sign)


def _unseen(drawn: list[Mark], seen: list[Mark]) -> Iterator[Mark]:
    """Characters that extract though nobody sees them; one that is seen in the same place is not hidden."""
    legible = [mark for mark in seen if not _UNSEEN & set(mark.doubt)]
    kept = set(map(id, legible))
    places = {(round(mark.x), round(mark.y), mark.text) for mark in legible}
    for mark in drawn:
        if id(mark) not in kept and mark.turned != SLANTING and not mark.text.isspace() and (round(mark.x), round(mark.y), mark.text) not in places:
            yield mark


def _signs_of_page(drawn: list[Mark], seen: list[Mark], shown_once: list[Mark], unseen: list[Mark]) -> Iterator[str]:
    inked = sum(1 for mark in seen if not mark.text.isspace())
    if inked > _ENOUGH and sum(1 for mark in shown_once if not mark.text.isspace()) < _DRAWN_TWICE * inked:
        yield DOUBLED
    yield from sorted({f"{HIDDEN_VALUE}:{hit['unit']}" for line in _lines(unseen) for hit in _VALUE.finditer(line)})
    if any(mark.turned == SLANTING and mark.size >= _STAMP_PT and mark.text.isdecimal() for mark in drawn):
        yield STAMPED


def _lines(marks: Iterable[Mark]) -> Iterator[str]:
    """Hidden characters by their baselines, each line from left to right."""
    rows: dict[int, list[Mark]] = {}
    for mark in marks:
        rows.setdefault(round(mark.y / 3), []).append(mark)
    for row in rows.values():
        yield "".join(mark.text for mark in sorted(row, key=lambda mark: mark.x))
