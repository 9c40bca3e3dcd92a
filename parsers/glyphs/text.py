"""Shown strings become characters at their places (ISO 32000-1:2008, 9.4.4)."""

import math
from dataclasses import dataclass
from typing import Any

from parsers.glyphs.drawn import BLACK, SLANTING, Mark
from parsers.glyphs.fonts import Font
from parsers.glyphs.geometry import IDENTITY, Matrix, overlap, product
from parsers.glyphs.state import State
from service.facts.reading import Box

_SPACE = 32
_SLANT = 0.15
"""Text that climbs by more than this share of its way is set at a slant. [1]"""
_NOTHING_LEFT, _MOST_LEFT = 0.15, 0.6


@dataclass(slots=True)
class TextLine:
    """Where the next string of a text object goes.

    Attributes:
        matrix: Of the line.
        along: How far the line has been written. [text space]
        down: How far a vertical line has been written. [text space]
    """

    matrix: Matrix = IDENTITY
    along: float = 0.0
    down: float = 0.0

    def place(self, matrix: Matrix) -> None:
        """Start a line at a place of its own."""
        self.matrix, self.along, self.down = matrix, 0.0, 0.0

    def step(self, right: float, up: float) -> None:
        """Start a line at a distance from the start of this one."""
        self.place(product((1.0, 0.0, 0.0, 1.0, right, up), self.matrix))


def show(items: list[Any], state: State, line: TextLine, order: int) -> list[Mark]:
    """Write strings.

    Args:
        items: Strings of character codes, and numbers that move the next string back.
        state: The current state.
        line: Where to write; moved on.
        order: When they are drawn.

    Returns:
        The characters.
    """
    font = state.font
    if font is None:
        return []
    step = state.size * state.stretch
    spacing, word_spacing = state.spacing * state.stretch, 0.0 if font.multibyte else state.word_spacing * state.stretch
    write = _writer(state, line, font, order)
    marks = []
    for item in items:
        if isinstance(item, float):
            if font.vertical:
                line.down -= item * 0.001 * state.size
            else:
                line.along -= item * 0.001 * step
        elif isinstance(item, bytes):
            for code in font.decode(item):
                text, width, repaired, doubt = font[code]
                marks.append(write(text, width, repaired, doubt))
                extra = spacing + (word_spacing if code == _SPACE else 0.0)
                if font.vertical:
                    line.down += width * state.size + extra
                else:
                    line.along += width * step + extra
    return marks


def _writer(state: State, line: TextLine, font: Font, order: int) -> Any:  # noqa: ANN401  a function of four plain values
    """What puts one character of a string at its place: everything that the string's characters share is worked out once."""
    a, b, c, d, e, f = product(line.matrix, state.matrix)
    size, step, clip = state.size, state.size * state.stretch, state.clip
    low, high = font.rise * size + state.rise, (font.rise + font.height) * size + state.rise
    height = abs(size) * font.height * math.hypot(c, d)
    turned = _turned(a * step, b * step)
    hidden = () if state.visible else ("hidden",)
    back = size / 2 if font.vertical else 0.0
    name, light = font.name, BLACK if state.fill is None else state.fill

    def write(text: str, width: float, repaired: bool, doubt: tuple[str, ...]) -> Mark:  # noqa: FBT001  the hottest call of all
        start, base = line.along - back, line.down - 2 * back
        end = start + (size if back else width * step)
        x, y = a * start + c * (base + state.rise) + e, b * start + d * (base + state.rise) + f
        if not b and not c:
            x0, x1, top, bottom = x, a * end + e, d * (base + high) + f, d * (base + low) + f
            if x0 > x1:
                x0, x1 = x1, x0
            if top > bottom:
                top, bottom = bottom, top
        else:
            corners_x = [a * s + c * (base + t) + e for s in (start, end) for t in (low, high)]
            corners_y = [b * s + d * (base + t) + f for s in (start, end) for t in (low, high)]
            x0, x1, top, bottom = min(corners_x), max(corners_x), min(corners_y), max(corners_y)
        signs = doubt + hidden if hidden else doubt
        if clip is not None and not (clip[0] <= x0 and x1 <= clip[2] and clip[1] <= top and bottom <= clip[3]):
            signs += _cut((x0, top, x1, y if not turned else bottom), clip)
        return Mark(text, x0, top, x1, bottom, x, y, name, height, turned, order, light, repaired, signs)

    return write


def _cut(box: Box, clip: Box) -> tuple[str, ...]:
    """Doubt on a character of which clipping leaves a part: outside where next to nothing is left, cut where less than most is."""
    common = overlap(box, clip)
    area = (box[2] - box[0]) * (box[3] - box[1])
    share = (common[2] - common[0]) * (common[3] - common[1]) / area if common and area else 0.0
    return ("outside",) if share < _NOTHING_LEFT else ("cut",) if share < _MOST_LEFT else ()


def _turned(right: float, down: float) -> int:
    """Anticlockwise turn of a direction on the page as shown, to the nearest quarter; slanting text is no text of a table."""
    if min(abs(right), abs(down)) > _SLANT * max(abs(right), abs(down)):
        return SLANTING
    if abs(right) >= abs(down):
        return 0 if right >= 0 else 180
    return 90 if down < 0 else 270
