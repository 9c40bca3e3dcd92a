"""Follows a page's content stream and keeps what it draws: characters, lines, areas and pictures, in order."""

from typing import Any, ClassVar

from pdfminer.pdftypes import PDFObjRef, PDFStream, resolve1

from parsers.glyphs.drawn import Drawn
from parsers.glyphs.geometry import IDENTITY, Matrix, moved, product
from parsers.glyphs.layers import Layers
from parsers.glyphs.lexer import Name, Picture, operations
from parsers.glyphs.operators.drawing import Drawing
from parsers.glyphs.operators.settings import Settings
from parsers.glyphs.operators.stage import is_name
from parsers.glyphs.operators.writing import FindFont, Writing
from parsers.glyphs.paths import Path
from parsers.glyphs.text import TextLine

_DEEPEST = 16
_WITHOUT_TRACE = frozenset((
    b"BI", b"BX", b"CS", b"DP", b"ET", b"EX", b"G", b"J", b"K", b"M", b"MP", b"RG", b"SC", b"SCN", b"d", b"d0", b"d1", b"i", b"j", b"ri", b"w",
))  # fmt: skip
"""The operators of ISO 32000-1:2008, Annex A, that change nothing of what is kept, and the one that opens a picture in the stream."""
_UNSEEN = 0.05
"""A picture fainter than this is not there. [1]"""


class Painter(Settings, Writing, Drawing):
    """One page's content as it is drawn; adds pictures, forms and layers to what the other operators do.

    Args:
        drawn: Where to keep what is drawn.
        matrix: From the page's own points to the page as shown.
        layers: Which layers are off.
        find_font: Gives the font behind an entry of the resources.
    """

    OBJECTS: ClassVar[dict[bytes, str]] = {
        b"Do": "draw_object", b"EI": "draw_inline_picture", b"BMC": "begin_tag", b"BDC": "begin_tag", b"EMC": "end_tag",
    }  # fmt: skip

    def __init__(self, *, drawn: Drawn, matrix: Matrix, layers: Layers, find_font: FindFont) -> None:
        super().__init__(drawn=drawn, matrix=matrix, layers=layers, find_font=find_font)
        names = {**self.SETTINGS, **self.WRITING, **self.DRAWING, **self.OBJECTS}
        self._operators = {operator: getattr(self, name) for operator, name in names.items()}
        self._open: list[int] = []

    def paint(self, content: bytes, resources: dict[str, Any]) -> None:
        """Follow one content stream.

        Args:
            content: The stream.
            resources: Names that it uses.

        Raises:
            TooLargeError: The page draws more objects than are read.
        """
        outer, self.resources = self.resources, resources
        find = self._operators.get
        for operator, operands in operations(content):
            if (run := find(operator)) is not None:
                try:
                    run(*operands)
                except (TypeError, ValueError, IndexError, AttributeError):
                    # Why go on: a viewer skips an operator with wrong operands and shows the rest of the page.
                    self.lose()
            elif operator not in _WITHOUT_TRACE:
                self.lose()
        self.resources = outer

    def draw_inline_picture(self, picture: object) -> None:
        """Place a picture that lies in the stream itself."""
        if isinstance(picture, Picture):
            self._place_picture(opaque=not (picture.get("IM") or picture.get("ImageMask")))

    def draw_object(self, name: Name) -> None:
        """Place a picture, or follow a form."""
        reference = self.entry("XObject", name)
        stream = resolve1(reference)
        if not isinstance(stream, PDFStream) or ("OC" in stream and self.layers.off(stream["OC"])):
            return
        if is_name(stream.get("Subtype"), "Image"):
            self._place_picture(opaque=not any(key in stream for key in ("SMask", "Mask", "ImageMask")))
        elif is_name(stream.get("Subtype"), "Form"):
            self._form(reference.objid if isinstance(reference, PDFObjRef) else id(stream), stream)

    def begin_tag(self, tag: object = None, properties: object = None) -> None:
        """Begin content that may belong to a layer."""
        self.tags.append(tag == "OC" and isinstance(properties, Name) and self.layers.off(self.entry("Properties", properties)))

    def end_tag(self, *_: object) -> None:
        """End such content."""
        if self.tags:
            self.tags.pop()

    def _place_picture(self, *, opaque: bool) -> None:
        if not self.off and self.state.opacity > _UNSEEN:
            self.patch(moved(self.state.matrix, (0.0, 0.0, 1.0, 1.0)), self.count(), picture=True, opaque=opaque)

    def _form(self, identity: int, stream: PDFStream) -> None:
        """Follow a form with a state of its own, unless it is open already."""
        if len(self._open) >= _DEEPEST:
            self.lose()
        if identity in self._open or len(self._open) >= _DEEPEST:
            return
        self.count()
        outer = self.state, self.line, self.saved, self.path, self.tags
        self.state, self.line, self.saved, self.path, self.tags = self.state.copy(), TextLine(), [], Path(), [self.off]
        self._open.append(identity)
        try:
            self._follow(stream)
        finally:
            self._open.pop()
            self.state, self.line, self.saved, self.path, self.tags = outer

    def _follow(self, stream: PDFStream) -> None:
        """Follow a form through its matrix, clipped by its box."""
        a, b, c, d, e, f = (float(resolve1(part)) for part in resolve1(stream.get("Matrix")) or IDENTITY)
        self.state.matrix = product((a, b, c, d, e, f), self.state.matrix)
        if box := resolve1(stream.get("BBox")):
            x0, y0, x1, y1 = (float(resolve1(side)) for side in box)
            self.narrow(moved(self.state.matrix, (x0, y0, x1, y1)))
        self.paint(stream.get_data(), resolve1(stream.get("Resources")) or self.resources)
