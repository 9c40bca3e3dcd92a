"""Which characters a page shows, and signs of doubt on those that may not show what they extract as: pale, covered, crossed, annotated."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator

from parsers.glyphs.drawn import WHITE, Drawn, Mark, Patch
from parsers.types import Rule
from service.facts.reading import Box

_CONTRAST = 0.15
"""Least difference in lightness between a character and what lies under it. [1]"""
_LEGIBLE = 2.0
"""Smaller characters leave a speck that nobody reads. [pt]"""
_NO_INK = ("outside", "off")
"""Signs that a character leaves no ink, whatever else the page draws."""
_CAPITAL = 0.72
"""Height of figures and capitals, from the baseline. [em]"""
_COVERS = 0.8
"""An area hides a character when it covers this share of its height and of its width. [1]"""
_THROUGH = (0.15, 0.55)
"""A level line strikes a figure out between these heights above its baseline. [em]"""

_SIDE = 0.3
"""An upright line splits a character when it stands further than this share of the width from both of its sides. [1]"""


class _ByHeight:
    """Characters by the height of their middles, so that an area or a line finds those that it touches.

    Args:
        marks: Characters.
    """

    def __init__(self, marks: list[Mark]) -> None:
        self._marks = sorted(marks, key=_middle)
        self._middles = [_middle(mark) for mark in self._marks]

    def between(self, top: float, bottom: float) -> Iterator[Mark]:
        """Characters whose middles lie between two heights."""
        yield from self._marks[bisect_left(self._middles, top) : bisect_right(self._middles, bottom)]

    def inside(self, box: Box) -> Iterator[Mark]:
        """Characters whose middles lie in a box."""
        x0, top, x1, bottom = box
        yield from (mark for mark in self.between(top, bottom) if x0 <= (mark.x0 + mark.x1) / 2 <= x1)


def shown_marks(drawn: Drawn) -> list[Mark]:
    """Characters that leave ink on the page, each with its signs of doubt.

    Args:
        drawn: Everything that the page draws.

    Returns:
        Characters in the order in which they are drawn. Left out is what no viewer shows: characters outside the page or their clipping, on a
        layer that is off, painted over by an area, or painted invisibly without a picture that they stand for.
    """
    marks = [mark for mark in drawn.marks if _on_page(mark, drawn) and not (mark.doubt and any(sign in _NO_INK for sign in mark.doubt))]
    lines = _ByHeight(marks)
    gone = _weigh_patches(lines, drawn.patches)
    for box in drawn.notes:
        _doubt(lines.inside(box), "annotated")
    _weigh_rules(lines, drawn.rules)
    return [mark for mark in marks if id(mark) not in gone]


def _weigh_patches(lines: _ByHeight, patches: list[Patch]) -> set[int]:
    """What lies under a character, what covers it, and whether it stands out; tells which ones are painted over or never painted."""
    under: dict[int, float | None] = {}
    gone = {id(mark) for mark in lines.between(-1e9, 1e9) if "hidden" in mark.doubt}
    for patch in patches:
        for mark in lines.inside(patch.box):
            if patch.picture and "hidden" in mark.doubt:
                gone.discard(id(mark))
            if patch.order < mark.order:
                under[id(mark)] = patch.light
            elif patch.opaque and _covers(patch.box, mark):
                if patch.light is None:
                    # Why not gone: a picture, a pattern or a course of colours may be clear where the character stands.
                    _doubt([mark], "covered")
                else:
                    gone.add(id(mark))
    for mark in lines.between(-1e9, 1e9):
        ground = under.get(id(mark), WHITE)
        if mark.size < _LEGIBLE or (ground is not None and abs(ground - mark.light) < _CONTRAST):
            _doubt([mark], "pale")
    return gone


def _weigh_rules(lines: _ByHeight, rules: list[Rule]) -> None:
    """Lines that go through a figure: looked up from the figure, because graphs have more lines than figures."""
    level = sorted((rule.top, rule.x0, rule.x1) for rule in rules if rule.top == rule.bottom)
    upright = sorted((rule.x0, rule.top, rule.bottom) for rule in rules if rule.x0 == rule.x1)
    for mark in lines.between(-1e9, 1e9):
        if mark.turned or not mark.text.isdecimal():
            continue
        margin = _SIDE * (mark.x1 - mark.x0)
        height = (mark.y - _THROUGH[1] * mark.size, mark.y - _THROUGH[0] * mark.size)
        width = (mark.x0 + margin, mark.x1 - margin)
        if _crosses(level, height, width) or _crosses(upright, width, height):
            _doubt([mark], "crossed")


def _crosses(rules: list[tuple[float, float, float]], across: tuple[float, float], along: tuple[float, float]) -> bool:
    """Whether a line lies within a stretch and spans another one at right angles to it."""
    first, last = bisect_left(rules, (across[0],)), bisect_right(rules, (across[1],))
    return first < last and any(start <= along[0] and along[1] <= end for _, start, end in rules[first:last])


def _covers(box: Box, mark: Mark) -> bool:
    bottom = mark.bottom if mark.turned else mark.y
    top = mark.top if mark.turned else mark.y - _CAPITAL * mark.size
    width, height = min(box[2], mark.x1) - max(box[0], mark.x0), min(box[3], bottom) - max(box[1], top)
    return width >= _COVERS * (mark.x1 - mark.x0) and height >= _COVERS * (bottom - top)


def _doubt(marks: Iterator[Mark] | list[Mark], sign: str) -> None:
    for mark in marks:
        if sign not in mark.doubt:
            mark.doubt = (*mark.doubt, sign)


def _middle(mark: Mark) -> float:
    return (mark.top + mark.bottom) / 2


def _on_page(mark: Mark, drawn: Drawn) -> bool:
    return 0 <= (mark.x0 + mark.x1) / 2 <= drawn.width and 0 <= _middle(mark) <= drawn.height
