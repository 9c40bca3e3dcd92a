"""Turned text: a page is turned until most of its text stands upright, then it is read."""

from collections import Counter
from dataclasses import replace

from parsers.glyphs.drawn import SLANTING, Drawn, Mark
from parsers.glyphs.geometry import IDENTITY, Matrix, moved, product
from parsers.types import Rule

_MOSTLY = 0.5


def main_turn(marks: list[Mark]) -> int:
    """How most of a page's text is turned.

    Args:
        marks: The page's characters.

    Returns:
        Degrees anticlockwise: 0, 90, 180 or 270. 0 unless more than half of the characters share another turn.
    """
    counts = Counter(mark.turned for mark in marks if mark.turned != SLANTING and not mark.text.isspace())
    turn, count = counts.most_common(1)[0] if counts else (0, 0)
    return turn if count > _MOSTLY * counts.total() else 0


def turn_matrix(turn: int, width: float, height: float) -> Matrix:
    """A clockwise turn of a page.

    Args:
        turn: Degrees: 0, 90, 180 or 270.
        width: Of the page before. [pt]
        height: Of the page before. [pt]

    Returns:
        From places on the page before to places on the turned page.
    """
    return {
        90: (0.0, 1.0, -1.0, 0.0, height, 0.0),
        180: (-1.0, 0.0, 0.0, -1.0, width, height),
        270: (0.0, -1.0, 1.0, 0.0, 0.0, width),
    }.get(turn, IDENTITY)


def turned_page(drawn: Drawn, turn: int) -> Drawn:
    """A page turned clockwise, so that text that was turned as much anticlockwise stands upright.

    Args:
        drawn: The page as shown.
        turn: Degrees: 0, 90, 180 or 270.

    Returns:
        The turned page; the same one for 0.
    """
    if not turn:
        return drawn
    matrix = turn_matrix(turn, drawn.width, drawn.height)
    boxes = [moved(matrix, (rule.x0, rule.top, rule.x1, rule.bottom)) for rule in drawn.rules]
    return replace(
        drawn,
        width=drawn.height if turn in (90, 270) else drawn.width,
        height=drawn.width if turn in (90, 270) else drawn.height,
        matrix=product(drawn.matrix, matrix),
        marks=[turned_mark(mark, turn, matrix) for mark in drawn.marks],
        rules=[Rule(x0=x0, top=top, x1=x1, bottom=bottom) for x0, top, x1, bottom in boxes],
        patches=[replace(patch, box=moved(matrix, patch.box)) for patch in drawn.patches],
        notes=[moved(matrix, note) for note in drawn.notes],
    )


def turned_mark(mark: Mark, turn: int, matrix: Matrix) -> Mark:
    """A character on a page that is turned.

    Args:
        mark: The character.
        turn: Degrees by which the page is turned clockwise.
        matrix: The same turn as a matrix.

    Returns:
        The character at its new place.
    """
    x0, top, x1, bottom = moved(matrix, (mark.x0, mark.top, mark.x1, mark.bottom))
    x, y, _, _ = moved(matrix, (mark.x, mark.y, mark.x, mark.y))
    return replace(mark, x0=x0, top=top, x1=x1, bottom=bottom, x=x, y=y, turned=(mark.turned - turn) % 360)
