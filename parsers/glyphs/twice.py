"""Characters drawn twice to look bold count once; different characters drawn over each other raise doubt."""

from parsers.glyphs.drawn import Mark

_NEAR = 0.2
"""A copy lies within this share of the size. [1]"""
_OVER = 0.3
"""Another character lies over this one when both begin within this share of the size. [1]"""
_SHARED = 0.5
"""They overlap when they have more than this share of the narrower one's width in common. [1]"""
_CELL = 6.0
"""Side of the squares in which neighbours are looked up. [pt]"""


def without_copies(marks: list[Mark]) -> list[Mark]:
    """Leave out each character that repeats another one in almost the same place.

    Args:
        marks: Characters in the order in which they are drawn.

    Returns:
        One of each, the less doubtful where they differ, sorted from left to right. Of different characters over each other both are kept, in
        doubt.
    """
    squares: dict[tuple[int, int], list[Mark]] = {}
    kept = []
    for mark in sorted(marks, key=lambda mark: bool(mark.doubt)):
        if mark.text.isspace():
            kept.append(mark)
            continue
        reach = _OVER * mark.size
        left, right = int((mark.x0 - reach) // _CELL), int((mark.x0 + reach) // _CELL)
        upper, lower = int((mark.y - reach) // _CELL), int((mark.y + reach) // _CELL)
        near = [
            other
            for column in range(left, right + 1)
            for row in range(upper, lower + 1)
            for other in squares.get((column, row), ())
            if abs(mark.x0 - other.x0) < reach and abs(mark.y - other.y) < reach
        ]
        if near and any(_repeats(mark, other) for other in near):
            continue
        for other in near:
            _note_overlap(mark, other)
        squares.setdefault((int(mark.x0 // _CELL), int(mark.y // _CELL)), []).append(mark)
        kept.append(mark)
    return sorted(kept, key=lambda mark: (mark.x0, mark.x1))


def _repeats(mark: Mark, other: Mark) -> bool:
    reach = _NEAR * mark.size
    return mark.text == other.text and abs(mark.x0 - other.x0) < reach and abs(mark.y - other.y) < reach


def _note_overlap(mark: Mark, other: Mark) -> None:
    """Doubt on two letters or figures that lie over each other; signs such as a bar under a plus belong together."""
    common = min(mark.x1, other.x1) - max(mark.x0, other.x0)
    if mark.text.isalnum() and other.text.isalnum() and common > _SHARED * min(mark.x1 - mark.x0, other.x1 - other.x0):
        mark.doubt, other.doubt = (*mark.doubt, "overlapped"), (*other.doubt, "overlapped")
