"""Sees a circuit drawing that shows one switch beside another, where its letters are part of a picture and cannot be read."""

import pypdfium2 as pdfium
from PIL import Image, ImageChops, ImageFilter

from parsers.types import Document, Page
from service.facts.reading import Box

DOTS_PER_POINT = 1.5
DARK = 140  # of 255
LEAST_INK, MOST_INK = 0.005, 0.12  # share of the picture: lines on paper, neither empty nor a photograph
ALIKE = 0.9  # share of either half's ink that meets the other's; real single drawings stay below 0.75
MOST_PICTURES = 6


def is_drawn_twice(document: Document, page: Page) -> bool:
    """Whether a picture on the page is a line drawing whose left half comes again as its right half."""
    boxes = [box for box in page.pictures if 50 <= box[2] - box[0] <= 350 and 30 <= box[3] - box[1] <= 300][:MOST_PICTURES]
    if not boxes or page.turned:
        return False
    pdf = pdfium.PdfDocument(document.data)
    try:
        return any(_repeats(_ink(pdf[page.number - 1], page, box)) for box in boxes)
    finally:
        pdf.close()


def _ink(shown: pdfium.PdfPage, page: Page, box: Box) -> Image.Image:
    """The dark dots of a part of the page, white on black."""
    crop = (max(box[0], 0), max(page.height - box[3], 0), max(page.width - box[2], 0), max(box[1], 0))
    picture: Image.Image = shown.render(scale=DOTS_PER_POINT, grayscale=True, crop=crop).to_pil()
    return picture.point(lambda grey: 255 if grey < DARK else 0)


def _repeats(ink: Image.Image) -> bool:
    width, height = ink.size
    if not LEAST_INK <= _dots(ink) / (width * height) <= MOST_INK:
        return False
    thick = ink.filter(ImageFilter.MaxFilter(3))
    return any(_alike(ink, thick, step) >= ALIKE for step in range(round(0.3 * width), round(0.62 * width)))


def _alike(ink: Image.Image, thick: Image.Image, step: int) -> float:
    """How much of each side's ink meets the other's when one is moved by so many dots."""
    width, height = ink.size
    reach = min(step, width - step)
    first, again = (0, 0, reach, height), (step, 0, step + reach, height)
    forth = ImageChops.multiply(ink.crop(first), thick.crop(again))
    back = ImageChops.multiply(ink.crop(again), thick.crop(first))
    left, right = _dots(ink.crop((0, 0, step, height))), _dots(ink.crop((step, 0, width, height)))
    return min(_dots(forth) / max(left, 1), _dots(back) / max(right, 1))


def _dots(ink: Image.Image) -> int:
    return ink.histogram()[255]
