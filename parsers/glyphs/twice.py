"""Characters drawn twice to look bold count once."""

from parsers.glyphs.drawn import Mark

_NEAR = 0.2
"""The second copy lies within this share of the size. [1]"""
_CELL = 4.0
"""Side of the squares in which copies are looked up. [pt]"""


def without_copies(marks: list[Mark]) -> list[Mark]:
    """Leave out each character that repeats an earlier one in almost the same place.

    Args:
        marks: Characters in the order in which they are drawn.

    Returns:
        The first of each, in the same order.
    """
    seen: dict[tuple[str, int, int], list[Mark]] = {}
    kept = []
    for mark in marks:
        column, row = int(mark.x0 // _CELL), int(mark.y // _CELL)
        near = (seen.get((mark.text, column + dx, row + dy), ()) for dx in (-1, 0, 1) for dy in (-1, 0, 1))
        if not any(_same_place(mark, other) for others in near for other in others):
            seen.setdefault((mark.text, column, row), []).append(mark)
            kept.append(mark)
    return kept


def _same_place(mark: Mark, other: Mark) -> bool:
    reach = _NEAR * mark.size
    return abs(mark.x0 - other.x0) < reach and abs(mark.y - other.y) < reach
