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

    def move(self, by: float, *, vertical: bool) -> None:
        """Go on along the line."""
        if vertical:
            self.down += by
        else:
            self.along += by

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
    matrix = product(line.matrix, state.matrix)
    plain = not font.vertical and not matrix[1] and not matrix[2] and matrix[0] * state.size * state.stretch > 0 and matrix[3] * state.size < 0
    marks = (_write_plain if plain else _write)(items, state, line, font, matrix, order)
    if not state.visible:
        for mark in marks:
            mark.doubt = (*mark.doubt, "hidden")
    if (clip := state.clip) is not None:
        for mark in marks:
            if mark.x0 < clip[0] or mark.x1 > clip[2] or mark.top < clip[1] or mark.bottom > clip[3]:
                mark.doubt += _cut((mark.x0, mark.top, mark.x1, mark.bottom if mark.turned else mark.y), clip)
    return marks


def _write_plain(items: list[Any], state: State, line: TextLine, font: Font, matrix: Matrix, order: int) -> list[Mark]:
    """Write upright text: what the characters of a string share is worked out once, because this is done for every character of a document."""
    a, _, _, d, e, f = matrix
    size, step = state.size, state.size * state.stretch
    spacing, word_spacing = state.spacing * state.stretch, 0.0 if font.multibyte else state.word_spacing * state.stretch
    y = d * state.rise + f
    top, bottom, height = d * (font.rise + font.height) * size + y, d * font.rise * size + y, abs(d * size) * font.height
    name, light, along = font.name, BLACK if state.fill is None else state.fill, line.along
    marks: list[Mark] = []
    for item in items:
        if isinstance(item, float):
            along -= item * 0.001 * step
        elif isinstance(item, bytes):
            for code in font.decode(item):
                text, width, repaired, doubt = font[code]
                x0 = a * along + e
                marks.append(Mark(text, x0, top, x0 + a * width * step, bottom, x0, y, name, height, 0, order, light, repaired, doubt))
                along += width * step + spacing
                if word_spacing and code == _SPACE:
                    along += word_spacing
    line.along = along
    return marks


def _write(items: list[Any], state: State, line: TextLine, font: Font, matrix: Matrix, order: int) -> list[Mark]:
    """Write text that is turned, slanted, mirrored or vertical."""
    size, step = state.size, state.size * state.stretch
    spacing, word_spacing = state.spacing * state.stretch, 0.0 if font.multibyte else state.word_spacing * state.stretch
    marks: list[Mark] = []
    for item in items:
        if isinstance(item, float):
            line.move(item * -0.001 * (size if font.vertical else step), vertical=font.vertical)
        elif isinstance(item, bytes):
            for code in font.decode(item):
                text, width, repaired, doubt = font[code]
                mark = _placed(text, width, state, line, font, matrix)
                mark.order, mark.repaired, mark.doubt = order, repaired, doubt
                marks.append(mark)
                extra = spacing + (word_spacing if code == _SPACE else 0.0)
                line.move(width * (size if font.vertical else step) + extra, vertical=font.vertical)
    return marks


def _placed(text: str, width: float, state: State, line: TextLine, font: Font, matrix: Matrix) -> Mark:
    """A character where its line has come to."""
    a, b, c, d, e, f = matrix
    size, step = state.size, state.size * state.stretch
    back = size / 2 if font.vertical else 0.0
    start, base = line.along - back, line.down - 2 * back + state.rise
    end = start + (size if back else width * step)
    low, high = base + font.rise * size, base + (font.rise + font.height) * size
    xs = [a * along + c * up + e for along in (start, end) for up in (low, high)]
    ys = [b * along + d * up + f for along in (start, end) for up in (low, high)]
    origin = a * start + c * base + e, b * start + d * base + f
    height, light = abs(size) * font.height * math.hypot(c, d), BLACK if state.fill is None else state.fill
    return Mark(text, min(xs), min(ys), max(xs), max(ys), *origin, font.name, height, turn_of(a * step, b * step), light=light)


def _cut(box: Box, clip: Box) -> tuple[str, ...]:
    """Doubt on a character of which clipping leaves a part: outside where next to nothing is left, cut where less than most is."""
    common = overlap(box, clip)
    area = (box[2] - box[0]) * (box[3] - box[1])
    share = (common[2] - common[0]) * (common[3] - common[1]) / area if common and area else 0.0
    return ("outside",) if share < _NOTHING_LEFT else ("cut",) if share < _MOST_LEFT else ()


def turn_of(right: float, down: float) -> int:
    """How a direction on the page as shown is turned.

    Args:
        right: How far it goes to the right. [1]
        down: How far it goes down. [1]

    Returns:
        Degrees anticlockwise, to the nearest quarter; 45 for any slant, because slanting text is no text of a table.
    """
    if min(abs(right), abs(down)) > _SLANT * max(abs(right), abs(down)):
        return SLANTING
    if abs(right) >= abs(down):
        return 0 if right >= 0 else 180
    return 90 if down < 0 else 270
