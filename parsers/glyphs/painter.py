"""Follows a page's content stream and keeps what it draws: characters, lines, areas and pictures, in order."""

from collections.abc import Callable
from typing import Any

from pdfminer.pdftypes import PDFObjRef, PDFStream, resolve1
from pdfminer.psparser import PSLiteral

from parsers.errors import TooLargeError
from parsers.glyphs.colour import colour_family, lightness
from parsers.glyphs.drawn import BLACK, WHITE, Drawn, Patch
from parsers.glyphs.fonts import Font
from parsers.glyphs.geometry import IDENTITY, Matrix, moved, overlap, product
from parsers.glyphs.layers import Layers
from parsers.glyphs.lexer import Name, Picture, operations
from parsers.glyphs.paths import Path, areas_of, rules_of
from parsers.glyphs.state import State
from parsers.glyphs.text import TextLine, show
from service.facts.reading import Box

MOST_OBJECTS = 200_000
_DEEPEST = 16
_MOST_SAVED = 512
_OPAQUE = 0.9
"""From this opacity on a fill hides what lies under it. [1]"""

Find = Callable[[Any], Font | None]


class Painter:
    """One page's content as it is drawn.

    Args:
        drawn: Where to keep what is drawn.
        matrix: From the page's own points to the page as shown.
        find_font: Gives the font behind an entry of the resources.
        layers: Which layers are off.
    """

    def __init__(self, *, drawn: Drawn, matrix: Matrix, find_font: Find, layers: Layers) -> None:
        self._drawn, self._find_font, self._layers = drawn, find_font, layers
        self._state, self._saved = State(matrix), list[State]()
        self._line, self._path = TextLine(), Path()
        self._clips = False
        self._tags: list[bool] = []
        self._objects = 0
        self._resources: dict[str, Any] = {}
        self._open: list[int] = []

    def paint(self, content: bytes, resources: dict[str, Any]) -> None:
        """Follow one content stream.

        Args:
            content: The stream.
            resources: Names that it uses.

        Raises:
            TooLargeError: The page draws more objects than are read.
        """
        outer, self._resources = self._resources, resources
        for operator, operands in operations(content):
            if (run := _OPERATORS.get(operator)) is not None:
                try:
                    run(self, *operands)
                except (TypeError, ValueError, IndexError, AttributeError):
                    # Why go on: a viewer skips an operator with wrong operands and shows the rest of the page.
                    continue
        self._resources = outer

    def _count(self, more: int = 1) -> int:
        self._objects += more
        if self._objects > MOST_OBJECTS:
            raise TooLargeError(f"A page draws more than {MOST_OBJECTS} objects; print the datasheet to a new PDF and read that.")
        return self._objects

    def _entry(self, kind: str, name: object) -> Any:  # noqa: ANN401  pdfminer carries no types
        found = resolve1(self._resources.get(kind))
        return found.get(str(name)) if isinstance(found, dict) else None

    # state

    def _save(self, *_: object) -> None:
        if len(self._saved) < _MOST_SAVED:
            self._saved.append(self._state.copy())

    def _restore(self, *_: object) -> None:
        if self._saved:
            self._state = self._saved.pop()

    def _concatenate(self, a: float, b: float, c: float, d: float, e: float, f: float) -> None:
        self._state.matrix = product((a, b, c, d, e, f), self._state.matrix)

    def _dictionary(self, name: Name) -> None:
        entries = resolve1(self._entry("ExtGState", name))
        if isinstance(entries, dict):
            self._state.opacity = float(resolve1(entries.get("ca", self._state.opacity)))
            if "BM" in entries:
                self._state.blended = not any(_is(entries["BM"], name) for name in ("Normal", "Compatible"))

    def _colour(self, *operands: Any) -> None:  # noqa: ANN401  operands of any kind
        self._state.fill = lightness(list(operands), self._state.fill_family)

    def _gray(self, *operands: float) -> None:
        self._state.fill_family = "gray"
        self._colour(*operands)

    def _rgb(self, *operands: float) -> None:
        self._state.fill_family = "rgb"
        self._colour(*operands)

    def _cmyk(self, *operands: float) -> None:
        self._state.fill_family = "cmyk"
        self._colour(*operands)

    def _colour_space(self, name: Name) -> None:
        spaces = resolve1(self._resources.get("ColorSpace"))
        self._state.fill_family = colour_family(str(name), spaces if isinstance(spaces, dict) else {})
        self._state.fill = BLACK

    # text

    def _begin_text(self, *_: object) -> None:
        self._line.place(IDENTITY)

    def _font(self, name: Name, size: float) -> None:
        self._state.font, self._state.size = self._find_font(self._entry("Font", name)), size

    def _set(attribute: str, factor: float = 1.0) -> Callable[..., None]:  # noqa: N805  makes methods
        def setter(self: "Painter", value: float) -> None:
            setattr(self._state, attribute, value * factor)

        return setter

    _spacing, _word_spacing, _stretch, _leading, _rise = _set("spacing"), _set("word_spacing"), _set("stretch", 0.01), _set("leading"), _set("rise")

    def _mode(self, mode: float) -> None:
        self._state.mode = int(mode)

    def _step(self, right: float, up: float) -> None:
        self._line.step(right, up)

    def _step_and_lead(self, right: float, up: float) -> None:
        self._state.leading = -up
        self._line.step(right, up)

    def _place(self, a: float, b: float, c: float, d: float, e: float, f: float) -> None:
        self._line.place((a, b, c, d, e, f))

    def _next_line(self, *_: object) -> None:
        self._line.step(0.0, -self._state.leading)

    def _show(self, items: list[Any]) -> None:
        marks = show(items, self._state, self._line, self._count())
        self._count(len(marks))
        if True in self._tags:
            for mark in marks:
                mark.doubt = (*mark.doubt, "off")
        self._drawn.marks.extend(marks)

    def _show_one(self, text: bytes) -> None:
        self._show([text])

    def _show_on_next_line(self, text: bytes) -> None:
        self._next_line()
        self._show([text])

    def _show_spaced(self, word_spacing: float, spacing: float, text: bytes) -> None:
        self._state.word_spacing, self._state.spacing = word_spacing, spacing
        self._show_on_next_line(text)

    # paths

    def _move(self, x: float, y: float) -> None:
        self._path.lines.append([(x, y)])

    def _draw_line(self, x: float, y: float) -> None:
        self._path.lines[-1].append((x, y))

    def _curve(self, *operands: float) -> None:
        self._path.curved = True
        self._path.lines[-1].append((operands[-2], operands[-1]))

    def _close(self, *_: object) -> None:
        chain = self._path.lines[-1]
        chain.append(chain[0])

    def _box(self, x: float, y: float, width: float, height: float) -> None:
        self._path.boxes.append((x, y, x + width, y + height))

    def _clip(self, *_: object) -> None:
        self._clips = True

    def _end(self, *_: object, stroked: bool = False, filled: bool = False) -> None:
        path, self._path = self._path, Path()
        if (stroked or filled) and True not in self._tags:
            self._keep(path, stroked=stroked, filled=filled)
        if self._clips:
            self._clips = False
            if hull := path.hull():
                self._narrow(moved(self._state.matrix, hull))

    def _keep(self, path: Path, *, stroked: bool, filled: bool) -> None:
        order, state = self._count(1 + len(path.boxes) + len(path.lines)), self._state
        if stroked or state.fill != WHITE:
            self._drawn.rules.extend(rules_of(path, state.matrix, stroked=stroked, filled=filled))
        if filled:
            for box in areas_of(path, state.matrix):
                self._patch(box, order, light=state.fill, opaque=state.fill is not None)

    def _narrow(self, box: Box) -> None:
        clip = self._state.clip
        self._state.clip = box if clip is None else overlap(clip, box) or (0.0, 0.0, 0.0, 0.0)

    def _patch(self, box: Box, order: int, *, light: float | None = None, picture: bool = False, opaque: bool) -> None:
        state = self._state
        visible = box if state.clip is None else overlap(box, state.clip)
        if visible:
            self._drawn.patches.append(Patch(visible, order, light, picture, opaque and state.opacity >= _OPAQUE and not state.blended))

    def _painted(*, stroked: bool, filled: bool, closed: bool = False) -> Callable[..., None]:  # makes methods
        def painter(self: "Painter", *_: object) -> None:
            if closed and self._path.lines:
                self._close()
            self._end(stroked=stroked, filled=filled)

        return painter

    _stroke, _fill, _both = _painted(stroked=True, filled=False), _painted(stroked=False, filled=True), _painted(stroked=True, filled=True)
    _close_stroke, _close_both = _painted(stroked=True, filled=False, closed=True), _painted(stroked=True, filled=True, closed=True)

    # pictures, forms and layers

    def _inline_picture(self, picture: object) -> None:
        if isinstance(picture, Picture):
            self._place_picture(opaque=not (picture.get("IM") or picture.get("ImageMask")))

    def _place_picture(self, *, opaque: bool) -> None:
        if True not in self._tags and self._state.opacity > _OPAQUE / 10:
            self._patch(moved(self._state.matrix, (0.0, 0.0, 1.0, 1.0)), self._count(), picture=True, opaque=opaque)

    def _object(self, name: Name) -> None:
        reference = self._entry("XObject", name)
        stream = resolve1(reference)
        if not isinstance(stream, PDFStream) or ("OC" in stream and self._layers.off(stream["OC"])):
            return
        if _is(stream.get("Subtype"), "Image"):
            self._place_picture(opaque=not any(key in stream for key in ("SMask", "Mask", "ImageMask")))
        elif _is(stream.get("Subtype"), "Form"):
            self._form(reference.objid if isinstance(reference, PDFObjRef) else id(stream), stream)

    def _form(self, identity: int, stream: PDFStream) -> None:
        if identity in self._open or len(self._open) >= _DEEPEST:
            return
        self._count()
        saved, saved_line, saved_stack, saved_path = self._state, self._line, self._saved, self._path
        self._state, self._line, self._saved, self._path = saved.copy(), TextLine(), [], Path()
        self._open.append(identity)
        a, b, c, d, e, f = (float(resolve1(part)) for part in resolve1(stream.get("Matrix")) or IDENTITY)
        self._state.matrix = product((a, b, c, d, e, f), self._state.matrix)
        if box := resolve1(stream.get("BBox")):
            x0, y0, x1, y1 = (float(resolve1(side)) for side in box)
            self._narrow(moved(self._state.matrix, (x0, y0, x1, y1)))
        tags, self._tags = self._tags, [True in self._tags]
        self.paint(stream.get_data(), resolve1(stream.get("Resources")) or self._resources)
        self._tags = tags
        self._open.pop()
        self._state, self._line, self._saved, self._path = saved, saved_line, saved_stack, saved_path

    def _begin_tag(self, tag: object = None, properties: object = None) -> None:
        off = tag == "OC" and isinstance(properties, Name) and self._layers.off(self._entry("Properties", properties))
        self._tags.append(off)

    def _end_tag(self, *_: object) -> None:
        if self._tags:
            self._tags.pop()


def _is(value: Any, name: str) -> bool:  # noqa: ANN401  pdfminer carries no types
    found = resolve1(value)
    return isinstance(found, PSLiteral) and found.name == name


_OPERATORS: dict[bytes, Callable[..., None]] = {
    b"q": Painter._save, b"Q": Painter._restore, b"cm": Painter._concatenate, b"gs": Painter._dictionary,
    b"g": Painter._gray, b"rg": Painter._rgb, b"k": Painter._cmyk, b"cs": Painter._colour_space, b"sc": Painter._colour, b"scn": Painter._colour,
    b"BT": Painter._begin_text, b"Tf": Painter._font, b"Tc": Painter._spacing, b"Tw": Painter._word_spacing, b"Tz": Painter._stretch,
    b"TL": Painter._leading, b"Ts": Painter._rise, b"Tr": Painter._mode, b"Td": Painter._step, b"TD": Painter._step_and_lead, b"Tm": Painter._place,
    b"T*": Painter._next_line, b"TJ": Painter._show, b"Tj": Painter._show_one, b"'": Painter._show_on_next_line, b'"': Painter._show_spaced,
    b"m": Painter._move, b"l": Painter._draw_line, b"c": Painter._curve, b"v": Painter._curve, b"y": Painter._curve, b"h": Painter._close,
    b"re": Painter._box, b"W": Painter._clip, b"W*": Painter._clip, b"n": Painter._end, b"S": Painter._stroke, b"s": Painter._close_stroke,
    b"f": Painter._fill, b"F": Painter._fill, b"f*": Painter._fill, b"B": Painter._both, b"B*": Painter._both, b"b": Painter._close_both,
    b"b*": Painter._close_both, b"Do": Painter._object, b"EI": Painter._inline_picture, b"BMC": Painter._begin_tag, b"BDC": Painter._begin_tag,
    b"EMC": Painter._end_tag,
}  # fmt: skip
"""What each operator does; operators that change nothing that is kept here are left out."""
