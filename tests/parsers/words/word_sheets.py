"""Small PDFs of invented lines, drawn by the tests themselves, and a look at their pixels."""

import io
from collections.abc import Callable

import pikepdf
import pypdfium2 as pdfium
from PIL import Image
from reportlab.pdfgen.canvas import Canvas

from parsers.stages.open_document import open_document
from parsers.stages.words import read_page
from parsers.types import Page, Word

SIZE = (400.0, 300.0)


def drawn(draw: Callable[[Canvas], None], *, size: tuple[float, float] = SIZE) -> bytes:
    """A PDF of one page."""
    buffer = io.BytesIO()
    canvas = Canvas(buffer, pagesize=size, invariant=1)
    canvas.setFont("Helvetica", 10)
    draw(canvas)
    canvas.showPage()
    canvas.save()
    return buffer.getvalue()


def with_page(data: bytes, **entries: object) -> bytes:
    """The same PDF with other entries in its page's dictionary."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        for name, value in entries.items():
            pdf.pages[0].obj[f"/{name}"] = pikepdf.Array(value) if isinstance(value, list) else value
        buffer = io.BytesIO()
        pdf.save(buffer, deterministic_id=True)
    return buffer.getvalue()


def page_of(data: bytes) -> Page:
    """Its first page, read."""
    return read_page(open_document(data), 1)


def word(page: Page, text: str) -> Word:
    """The one word of a page that says a text."""
    found = [word for word in page.words if word.text == text]
    assert len(found) == 1, f"{text!r} among {[word.text for word in page.words]}"
    return found[0]


def texts(page: Page) -> list[str]:
    """All words of a page."""
    return [word.text for word in page.words]


def doubts(word: Word) -> set[str]:
    """Signs of doubt on any character of a word."""
    return {sign for glyph in word.glyphs for sign in glyph.doubt}


def pixels(data: bytes, number: int = 1, scale: float = 4.0) -> Image.Image:
    """A page as a viewer shows it, in grey."""
    pdf = pdfium.PdfDocument(data)
    try:
        page = pdf[number - 1]
        return page.render(scale=scale, grayscale=True).to_pil().convert("L")
    finally:
        pdf.close()


def darkest(picture: Image.Image, box: tuple[float, float, float, float], scale: float = 4.0) -> int:
    """Grey level of the darkest pixel in a box: 0 black to 255 white."""
    low, _ = picture.crop(tuple(round(side * scale) for side in box)).getextrema()
    return int(low)
