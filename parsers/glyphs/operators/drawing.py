"""Operators that build paths, paint them and clip by them."""

from typing import ClassVar

from parsers.glyphs.drawn import WHITE
from parsers.glyphs.geometry import moved, overlap
from parsers.glyphs.operators.stage import Stage
from parsers.glyphs.paths import Path, areas_of, rules_of, shapes_of
from service.facts.reading import Box


class Drawing(Stage):
    """Path construction, painting and clipping."""

    DRAWING: ClassVar[dict[bytes, str]] = {
        b"m": "move", b"l": "draw_line", b"c": "draw_curve", b"v": "draw_curve", b"y": "draw_curve", b"h": "close", b"re": "draw_box", b"W": "clip",
        b"W*": "clip", b"n": "end", b"S": "stroke", b"s": "close_and_stroke", b"f": "fill", b"F": "fill", b"f*": "fill", b"B": "fill_and_stroke",
        b"B*": "fill_and_stroke", b"b": "close_fill_and_stroke", b"b*": "close_fill_and_stroke", b"sh": "shade",
    }  # fmt: skip

    def move(self, x: float, y: float) -> None:
        """Begin a chain of lines."""
        self.path.lines.append([(x, y)])

    def draw_line(self, x: float, y: float) -> None:
        """Go on to a point."""
        try:
            self.path.lines[-1].append((x, y))
        except IndexError:
            self.move(x, y)

    def draw_curve(self, *operands: float) -> None:
        """Go on to a point by a curve; it lies within the points that bend it."""
        self.path.curved = True
        for x, y in zip(operands[::2], operands[1::2], strict=True):
            self.draw_line(x, y)

    def close(self, *_: object) -> None:
        """Go back to where the chain began."""
        if self.path.lines:
            self.path.lines[-1].append(self.path.lines[-1][0])

    def draw_box(self, x: float, y: float, width: float, height: float) -> None:
        """Add a rectangle."""
        self.path.boxes.append((x, y, x + width, y + height))

    def clip(self, *_: object) -> None:
        """Clip by the path once it has been painted."""
        self.clips = True

    def end(self, *_: object) -> None:
        """End the path without painting it."""
        self._finish(stroked=False, filled=False)

    def stroke(self, *_: object) -> None:
        """Draw the outline."""
        self._finish(stroked=True, filled=False)

    def close_and_stroke(self, *_: object) -> None:
        """Close the outline and draw it."""
        self.close()
        self._finish(stroked=True, filled=False)

    def fill(self, *_: object) -> None:
        """Fill the area."""
        self._finish(stroked=False, filled=True)

    def fill_and_stroke(self, *_: object) -> None:
        """Fill the area and draw its outline."""
        self._finish(stroked=True, filled=True)

    def close_fill_and_stroke(self, *_: object) -> None:
        """Close the outline, fill the area and draw the outline."""
        self.close()
        self._finish(stroked=True, filled=True)

    def shade(self, *_: object) -> None:
        """Fill everything that clipping leaves with a course of colours."""
        if not self.off:
            self.patch((0.0, 0.0, self.drawn.width, self.drawn.height), self.count(), opaque=True)

    def narrow(self, box: Box) -> None:
        """Clip by one more box.

        Args:
            box: On the page as shown.
        """
        clip = self.state.clip
        self.state.clip = box if clip is None else overlap(clip, box) or (0.0, 0.0, 0.0, 0.0)

    def _finish(self, *, stroked: bool, filled: bool) -> None:
        path, self.path = self.path, Path()
        if (stroked or filled) and not self.off:
            self._keep(path, stroked=stroked, filled=filled)
        if self.clips:
            self.clips = False
            if hull := path.hull():
                self.narrow(moved(self.state.matrix, hull))

    def _keep(self, path: Path, *, stroked: bool, filled: bool) -> None:
        order, state = self.count(1 + len(path.boxes) + len(path.lines)), self.state
        if stroked or state.fill != WHITE:
            self.drawn.rules.extend(rules_of(path, state.matrix, stroked=stroked, filled=filled))
        if filled:
            for box in areas_of(path, state.matrix):
                self.patch(box, order, light=state.fill, opaque=True)
            for box in shapes_of(path, state.matrix):
                self.patch(box, order, opaque=True)
