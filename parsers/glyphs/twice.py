"""Characters drawn twice to look bold count once; different characters drawn over each other raise doubt."""

from parsers.glyphs.drawn import Mark

_NEAR = 0.2
"""A copy lies within this share of the size. [1]"""
_OVER = 0.3
"""Another character lies over this one when both begin within this share of the size. [1]"""
_SHARED = 0.5
"""They overlap when they have more than this share of the narrower one's width in common. [1]"""
_ROW = 6.0
"""Height of the rows in which neighbours are looked up; taller characters than about three rows are titles. [pt]"""


def without_copies(marks: list[Mark]) -> list[Mark]:
    """Leave out each character that repeats another one in almost the same place.

    Args:
        marks: Characters in the order in which they are drawn.

    Returns:
        One of each, the less doubtful where they differ, sorted from left to right. Of different characters over each other both are kept, in
        doubt.
    """
    rows: dict[int, list[Mark]] = {}
    dropped: set[int | None] = set()
    ordered = sorted(marks, key=_from_left)
    for mark in ordered:
        if mark.text.isspace():
            continue
        reach, row = _OVER * mark.size, int(mark.y // _ROW)
        left = mark.x0 - reach
        for near in (row - 1, row, row + 1):
            for other in reversed(rows.get(near, ())):
                if other.x0 < left:
                    break
                if abs(mark.y - other.y) < reach:
                    dropped.add(_worse(mark, other))
        rows.setdefault(row, []).append(mark)
    return [mark for mark in ordered if id(mark) not in dropped]


def _from_left(mark: Mark) -> tuple[float, float]:
    return mark.x0, mark.x1


def _worse(mark: Mark, other: Mark) -> int | None:
    """Which of two characters so near to each other goes, by its identity; None where both stay."""
    if not _repeats(mark, other):
        _note_overlap(mark, other)
        return None
    return id(other) if other.doubt and not mark.doubt else id(mark)


def _repeats(mark: Mark, other: Mark) -> bool:
    reach = _NEAR * mark.size
    return mark.text == other.text and abs(mark.x0 - other.x0) < reach and abs(mark.y - other.y) < reach


def _note_overlap(mark: Mark, other: Mark) -> None:
    """Doubt on two letters or figures that lie over each other; signs such as a bar under a plus belong together."""
    common = min(mark.x1, other.x1) - max(mark.x0, other.x0)
    if mark.text.isalnum() and other.text.isalnum() and common > _SHARED * min(mark.x1 - mark.x0, other.x1 - other.x0):
        mark.doubt, other.doubt = (*mark.doubt, "overlapped"), (*other.doubt, "overlapped")
