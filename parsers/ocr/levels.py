"""Strips of one size of type get one height: a reader's boxes are higher around a "p" than around an "x"."""

from dataclasses import replace
from statistics import median

from parsers.ocr.seen import Strip

_ALIKE = (0.7, 1.45)
"""Heights within these shares of the page's usual one are of its usual type. [1]"""


def levelled(strips: tuple[Strip, ...]) -> tuple[Strip, ...]:
    """Give the strips of a page's usual type the same height.

    Args:
        strips: Everything that was seen on one page.

    Returns:
        The same strips; larger and smaller type keeps its height.
    """
    usual = median(map(_height, strips)) if strips else 0.0
    return tuple(_set(strip, usual) if _ALIKE[0] * usual <= _height(strip) <= _ALIKE[1] * usual else strip for strip in strips)


def _height(strip: Strip) -> float:
    return strip.box[3] - strip.box[1]


def _set(strip: Strip, height: float) -> Strip:
    left, top, right, bottom = strip.box
    middle = (top + bottom) / 2
    return replace(strip, box=(left, middle - height / 2, right, middle + height / 2))
