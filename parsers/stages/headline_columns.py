"""Promises that are set as a small table of names over figures: ``VDSS  RDS(on) max  ID`` above ``200 V  0.023 Ω  94 A``."""

import re
from collections.abc import Iterator, Sequence

from parsers.grammar.number import without_marks
from parsers.grammar.unit import unit_named
from parsers.grid import Candidate, Line, hull
from parsers.stages.headline import BARE, FIGURE, KEY_OF, NAMES, promise
from parsers.stages.statements import words_at

_ROWS = 3
"""Figures stand no more lines below their names. [1]"""
_APART = 2.6
"""Lines of such a table are no further apart than this share of their size. [1]"""
_ASIDE = 45.0
"""A figure stands no further aside from its name. [pt]"""
_NAMED = {key: re.compile(rf"(?<![A-Za-z]){name}(?![A-Za-z])", re.IGNORECASE) for key, name in NAMES.items()}


def promises_below(page: int, lines: Sequence[Line]) -> Iterator[Candidate]:
    """The figures that stand under names on the front of a sheet.

    Args:
        page: Its number.
        lines: Lines above its tables, from the top.

    Yields:
        A promise for each figure whose unit fits the name over it. Such tables often list other parts as well, so that they bear values out and
        never speak against one.
    """
    for at, line in enumerate(lines):
        names = dict(_places(line))
        if len(names) < 2 or FIGURE.search(without_marks(line.text)):
            continue
        last = line
        for below in lines[at + 1 : at + 1 + _ROWS]:
            if below.y - last.y > _APART * max(line.size, below.size):
                break
            yield from _figures(page, below, names)
            last = below


def _places(line: Line) -> Iterator[tuple[str, float]]:
    """The quantities that a line names, and where the middle of each name stands."""
    text = without_marks(line.text)
    for key, pattern in _NAMED.items():
        found = pattern.search(text)
        if found:
            yield key, _middle(line, found)


def _figures(page: int, line: Line, names: dict[str, float]) -> Iterator[Candidate]:
    for hit in FIGURE.finditer(without_marks(line.text)):
        unit = unit_named(hit["after"])
        nearest = min(names, key=lambda key: abs(names[key] - _middle(line, hit)))
        if unit and KEY_OF.get(unit) == nearest and abs(names[nearest] - _middle(line, hit)) < _ASIDE:
            yield from promise(page, nearest, line.words, hit, unit, BARE)


def _middle(line: Line, hit: re.Match[str]) -> float:
    box = hull([word.box for word in words_at(line.words, *hit.span())])
    return (box[0] + box[2]) / 2
