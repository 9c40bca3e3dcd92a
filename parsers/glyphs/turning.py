"""Turned text: a page is turned until most of its text stands upright, then it is read."""

from collections import Counter
from dataclasses import replace

from parsers.glyphs.drawn import Drawn, Mark, Patch
from parsers.types import Rule
from service.facts.reading import Box

_MOSTLY = 0.5


def main_turn(marks: list[Mark]) -> int:
    """How most of a page's text is turned.

    Args:
        marks: The page's characters.

    Returns:
        Degrees anticlockwise: 0, 90, 180 or 270. 0 unless more than half of the characters share another turn.
    """
    counts = Counter(mark.turned for mark in marks if not mark.text.isspace())
    turn, count = counts.most_common(1)[0] if counts else (0, 0)
    return turn if count > _MOSTLY * counts.total() else 0


def turned_box(box: Box, turn: int, width: float, height: float) -> Box:
    """A box after the page has been turned clockwise.

    Args:
        box: A place on the page before.
        turn: Degrees: 0, 90, 180 or 270.
        width: Of the page before. [pt]
        height: Of the page before. [pt]

    Returns:
        The place on the turned page.
    """
    x0, top, x1, bottom = box
    match turn:
        case 90:
            return height - bottom, x0, height - top, x1
        case 180:
            return width - x1, height - bottom, width - x0, height - top
        case 270:
            return top, width - x1, bottom, width - x0
    return box


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
    width, height = drawn.width, drawn.height
    sides = (height, width) if turn in (90, 270) else (width, height)
    boxes = [turned_box((rule.x0, rule.top, rule.x1, rule.bottom), turn, width, height) for rule in drawn.rules]
    return Drawn(
        *sides,
        marks=[_turned_mark(mark, turn, width, height) for mark in drawn.marks],
        rules=[Rule(x0=x0, top=top, x1=x1, bottom=bottom) for x0, top, x1, bottom in boxes],
        patches=[Patch(turned_box(patch.box, turn, width, height), patch.order, patch.light) for patch in drawn.patches],
        notes=[turned_box(note, turn, width, height) for note in drawn.notes],
    )


def _turned_mark(mark: Mark, turn: int, width: float, height: float) -> Mark:
    x0, top, x1, bottom = turned_box((mark.x0, mark.top, mark.x1, mark.bottom), turn, width, height)
    x, y, _, _ = turned_box((mark.x, mark.y, mark.x, mark.y), turn, width, height)
    return replace(mark, x0=x0, top=top, x1=x1, bottom=bottom, x=x, y=y, turned=(mark.turned - turn) % 360)
