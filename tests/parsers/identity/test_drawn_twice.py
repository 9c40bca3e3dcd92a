"""Two switches side by side in a picture are seen without reading a word."""

from io import BytesIO

import pytest
from PIL import Image, ImageDraw
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas

from parsers.stages.identity.drawn_twice import is_drawn_twice
from parsers.stages.open_document import open_document
from parsers.stages.words import read_page


def switch(pen: ImageDraw.ImageDraw, x: int) -> None:
    """A circuit symbol at a place."""
    pen.line([(x, 140), (x + 60, 140)], fill=0, width=4)
    pen.line([(x + 60, 100), (x + 60, 180)], fill=0, width=4)
    pen.line([(x + 75, 100), (x + 75, 180)], fill=0, width=4)
    pen.line([(x + 75, 110), (x + 120, 110), (x + 120, 30)], fill=0, width=4)
    pen.line([(x + 75, 170), (x + 120, 170), (x + 120, 250)], fill=0, width=4)


def picture(places: list[int]) -> Image.Image:
    """White paper with a symbol at each place."""
    paper = Image.new("L", (480, 280), 255)
    for place in places:
        switch(ImageDraw.Draw(paper), place)
    return paper


@pytest.mark.parametrize(("places", "twice"), [([40, 290], True), ([160], False), ([], False)], ids=["two", "one", "none"])
def test_a_second_symbol_is_the_first_one_again(places: list[int], *, twice: bool):
    """A drawing whose right half repeats its left half shows two of a kind."""
    out = BytesIO()
    canvas = Canvas(out, pagesize=(595, 842))
    canvas.drawString(60, 780, "AB12N04 N-Channel MOSFET, a line of text so that the page is no mere picture")
    canvas.drawImage(ImageReader(picture(places)), 300, 500, 160, 93)
    canvas.showPage()
    canvas.save()
    document = open_document(out.getvalue())

    assert is_drawn_twice(document, read_page(document, 1)) is twice
