"""Matrices and boxes of a page."""

import math
from typing import Any

from parsers.glyphs.following import followed
from service.facts.reading import Box

Matrix = tuple[float, float, float, float, float, float]
IDENTITY: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def product(inner: Matrix, outer: Matrix) -> Matrix:
    """First the one matrix, then the other (ISO 32000-1:2008, 8.3.4)."""
    a, b, c, d, e, f = inner
    oa, ob, oc, od, oe, of = outer
    return a * oa + b * oc, a * ob + b * od, c * oa + d * oc, c * ob + d * od, e * oa + f * oc + oe, e * ob + f * od + of


def moved(matrix: Matrix, box: Box) -> Box:
    """The upright box around a box after a matrix."""
    a, b, c, d, e, f = matrix
    corners = [(a * x + c * y + e, b * x + d * y + f) for x in (box[0], box[2]) for y in (box[1], box[3])]
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    return min(xs), min(ys), max(xs), max(ys)


def overlap(box: Box, other: Box) -> Box | None:
    """What two boxes have in common."""
    x0, top, x1, bottom = max(box[0], other[0]), max(box[1], other[1]), min(box[2], other[2]), min(box[3], other[3])
    return (x0, top, x1, bottom) if x0 < x1 and top < bottom else None


def shown(page: Any) -> tuple[Matrix, float, float]:  # noqa: ANN401  pdfminer carries no types
    """How a page's own points become points from the top left of the page as shown, and its width and height.

    Args:
        page: A page as pdfminer reads it.

    Returns:
        The matrix, then width and height of the page as shown. [pt]
    """
    media = _ordered(page.mediabox)
    x0, y0, x1, y1 = overlap(_ordered(page.cropbox), media) or media
    width, height = x1 - x0, y1 - y0
    return {
        90: ((0.0, 1.0, 1.0, 0.0, -y0, -x0), height, width),
        180: ((-1.0, 0.0, 0.0, 1.0, x1, -y0), width, height),
        270: ((0.0, -1.0, -1.0, 0.0, y1, x1), height, width),
    }.get(page.rotate % 360, ((1.0, 0.0, 0.0, -1.0, -x0, y1), width, height))


def is_sound(page: Any) -> bool:  # noqa: ANN401  pdfminer carries no types
    """Whether a page's own entries say validly which part of it is shown, and how it is turned.

    Args:
        page: A page as pdfminer reads it.

    Returns:
        False where viewers have to make something up (ISO 32000-1:2008, table 30).
    """
    media, turn = followed(page.attrs.get("MediaBox")), followed(page.attrs.get("Rotate", 0))
    crop = followed(page.attrs.get("CropBox", media))
    return _is_box(media) and _is_box(crop) and isinstance(turn, int) and turn % 90 == 0


def _is_box(sides: Any) -> bool:  # noqa: ANN401  pdfminer carries no types
    """Whether four numbers are there, two opposite corners apart from each other."""
    numbers = [followed(side) for side in sides] if isinstance(sides, list) else []
    if len(numbers) != 4 or not all(isinstance(side, int | float) and math.isfinite(side) for side in numbers):
        return False
    return bool(numbers[0] != numbers[2] and numbers[1] != numbers[3])


def _ordered(box: Any) -> Box:  # noqa: ANN401  pdfminer carries no types
    """A box given by any two opposite corners."""
    x0, y0, x1, y1 = (float(side) for side in box)
    return min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)
