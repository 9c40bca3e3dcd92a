"""A document's pages as they draw themselves, read by pdfminer's objects and fonts and by our own painter."""

import io
from typing import Any

from pdfminer.pdfdocument import PDFDocument
from pdfminer.pdfinterp import PDFResourceManager
from pdfminer.pdfpage import PDFPage
from pdfminer.pdfparser import PDFParser
from pdfminer.pdftypes import PDFObjRef, PDFStream

from parsers.glyphs.annotations import shown_notes
from parsers.glyphs.doubts import PAGE_BOX
from parsers.glyphs.drawn import Drawn
from parsers.glyphs.following import followed
from parsers.glyphs.fonts import Font, font_of
from parsers.glyphs.geometry import IDENTITY, is_sound, moved, shown
from parsers.glyphs.layers import Layers
from parsers.glyphs.painter import Painter


class Source:
    """The pages of one document.

    Args:
        data: The file's bytes.

    Attributes:
        document: The document as pdfminer reads it.
        pages: Its pages.
    """

    def __init__(self, data: bytes) -> None:
        self.document = PDFDocument(PDFParser(io.BytesIO(data)))
        self.pages = list(PDFPage.create_pages(self.document))
        self._manager = PDFResourceManager(caching=True)
        self._fonts: dict[int, Font | None] = {}
        self._layers = Layers(self.document.catalog)

    def draw(self, number: int) -> Drawn:
        """Everything that a page draws.

        Args:
            number: The page, counted from 1.

        Returns:
            Its characters, lines, areas, pictures and annotations.

        Raises:
            TooLargeError: The page draws more objects than are read.
        """
        page = self.pages[number - 1]
        matrix, width, height = shown(page)
        drawn = Drawn(width, height, matrix, doubt=set() if is_sound(page) else {PAGE_BOX})
        content = b"\n".join(stream.get_data() for item in page.contents if isinstance(stream := followed(item), PDFStream))
        self._painter(drawn).paint(content, _by_name(page.resources))
        drawn.notes = [moved(matrix, box) for box in shown_notes(page.annots, self._writes)]
        return drawn

    def _painter(self, drawn: Drawn) -> Painter:
        return Painter(drawn=drawn, matrix=drawn.matrix, find_font=self._font, layers=self._layers)

    def _writes(self, form: PDFStream) -> bool:
        """Whether a form shows characters or pictures, and not lines and areas alone."""
        drawn = Drawn(0.0, 0.0, IDENTITY)
        self._painter(drawn).paint(form.get_data(), _by_name(form.get("Resources")))
        return bool(drawn.marks or any(patch.picture for patch in drawn.patches))

    def _font(self, reference: Any) -> Font | None:  # noqa: ANN401  pdfminer carries no types
        if reference is None:
            return None
        key = reference.objid if isinstance(reference, PDFObjRef) else id(reference)
        if key not in self._fonts:
            self._fonts[key] = font_of(self._manager, reference)
        return self._fonts[key]


def _by_name(resources: Any) -> dict[str, Any]:  # noqa: ANN401  pdfminer carries no types
    found = followed(resources)
    return {str(name): entry for name, entry in found.items()} if isinstance(found, dict) else {}
