"""Painted paths: which are lines that a table is ruled with, and which are areas that lie under text or over it."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise

from parsers.glyphs.geometry import Matrix, moved
from parsers.types import Rule
from service.facts.reading import Box

Point = tuple[float, float]
_THIN = 1.6
"""An area no thicker than this is a line drawn as an area. [pt]"""
_STRAIGHT = 0.5
"""A line is upright or level when its ends differ by less than this. [pt]"""
_SHORT = 1.0
"""Shorter lines are dots. [pt]"""


@dataclass(slots=True)
class Path:
    """A path while it is built.

    Attributes:
        boxes: Rectangles.
        lines: Chains of points joined by straight lines.
        curved: Whether any part is a curve; then it is neither a rule nor a rectangle.
    """

    boxes: list[Box] = field(default_factory=list)
    lines: list[list[Point]] = field(default_factory=list)
    curved: bool = False

    def hull(self) -> Box | None:
        """The box around everything, in the stream's own points."""
        points = [point for chain in self.lines for point in chain]
        points += [point for x0, y0, x1, y1 in self.boxes for point in ((x0, y0), (x1, y1))]
        if not points:
            return None
        xs, ys = [x for x, _ in points], [y for _, y in points]
        return min(xs), min(ys), max(xs), max(ys)


def rules_of(path: Path, matrix: Matrix, *, stroked: bool, filled: bool) -> Iterator[Rule]:
    """Lines that a painted path draws.

    Args:
        path: The path.
        matrix: From its own points to the page as shown.
        stroked: Whether its outline is drawn.
        filled: Whether its area is.

    Yields:
        Level and upright lines.
    """
    for own in path.boxes:
        yield from _box_rules(moved(matrix, own))
    if path.curved:
        return
    for chain in path.lines:
        points = _placed(chain, matrix)
        if stroked:
            for start, end in pairwise(points):
                yield from _line_rule(start, end)
        elif filled and (box := _rectangle(points)):
            yield from _box_rules(box)


def areas_of(path: Path, matrix: Matrix) -> Iterator[Box]:
    """Rectangles that a filled path covers.

    Args:
        path: The path.
        matrix: From its own points to the page as shown.

    Yields:
        Boxes too thick to be lines.
    """
    boxes = [moved(matrix, box) for box in path.boxes]
    if not path.curved:
        boxes += [box for chain in path.lines if (box := _rectangle(_placed(chain, matrix)))]
    yield from (box for box in boxes if box[2] - box[0] > _THIN and box[3] - box[1] > _THIN)


def shapes_of(path: Path, matrix: Matrix) -> Iterator[Box]:
    """Boxes around filled shapes that are no rectangles: which part of its box a shape fills is not known.

    Args:
        path: The path.
        matrix: From its own points to the page as shown.

    Yields:
        Boxes too thick to be lines.
    """
    for chain in path.lines:
        points = _placed(chain, matrix)
        if len(points) > 2 and (path.curved or not _rectangle(points)):
            xs, ys = [x for x, _ in points], [y for _, y in points]
            if max(xs) - min(xs) > _THIN and max(ys) - min(ys) > _THIN:
                yield min(xs), min(ys), max(xs), max(ys)


def _placed(chain: list[Point], matrix: Matrix) -> list[Point]:
    a, b, c, d, e, f = matrix
    return [(a * x + c * y + e, b * x + d * y + f) for x, y in chain]


def _rectangle(points: list[Point]) -> Box | None:
    """The box that four corners make, if they make one."""
    if len(points) not in (4, 5) or (len(points) == 5 and points[0] != points[4]):
        return None
    level = [abs(start[1] - end[1]) < _STRAIGHT for start, end in zip(points[:4], [*points[1:4], points[0]], strict=True)]
    upright = [abs(start[0] - end[0]) < _STRAIGHT for start, end in zip(points[:4], [*points[1:4], points[0]], strict=True)]
    if not all(one or other for one, other in zip(level, upright, strict=True)):
        return None
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def _line_rule(start: Point, end: Point) -> Iterator[Rule]:
    (x0, y0), (x1, y1) = start, end
    if abs(y0 - y1) < _STRAIGHT and abs(x0 - x1) >= _SHORT:
        middle = (y0 + y1) / 2
        yield Rule(x0=min(x0, x1), top=middle, x1=max(x0, x1), bottom=middle)
    elif abs(x0 - x1) < _STRAIGHT and abs(y0 - y1) >= _SHORT:
        middle = (x0 + x1) / 2
        yield Rule(x0=middle, top=min(y0, y1), x1=middle, bottom=max(y0, y1))


def _box_rules(box: Box) -> Iterator[Rule]:
    """A thin box is one line along its middle, a thick one has four edges."""
    x0, top, x1, bottom = box
    if x1 - x0 <= _THIN or bottom - top <= _THIN:
        x, y = (x0 + x1) / 2, (top + bottom) / 2
        yield from _line_rule((x0, y), (x1, y)) if x1 - x0 >= bottom - top else _line_rule((x, top), (x, bottom))
        return
    for start, end in (((x0, top), (x1, top)), ((x0, bottom), (x1, bottom)), ((x0, top), (x0, bottom)), ((x1, top), (x1, bottom))):
        yield from _line_rule(start, end)
