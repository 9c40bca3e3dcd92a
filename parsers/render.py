"""Pictures of a page as shown, whole or a crop around a value, so that a person can hold a number against what is printed."""

import io
import math

import pypdfium2 as pdfium
from PIL import Image, ImageDraw

from parsers.errors import DamagedError
from parsers.stages.open_document import opened
from service.facts.reading import Box

MOST_PIXELS = 25_000_000
_MARK_COLOUR = (196, 0, 98)
_MARK_GAP = 1.0
"""Between a value and the line drawn around it. [pt]"""


def page_png(data: bytes, page: int, *, scale: float = 2.0) -> bytes:
    """Picture of a whole page.

    Args:
        data: The file's bytes.
        page: The page, counted from 1.
        scale: Pixels to the point; taken down where the picture would pass 25 megapixels. [1/pt]

    Returns:
        A PNG file.

    Raises:
        DatasheetError: The file or the page cannot be opened.
    """
    return _png(_picture(data, page, None, scale)[0])


def crop_png(data: bytes, page: int, bbox: Box, *, mark: Box | None = None, scale: float = 3.0) -> bytes:
    """Picture of a part of a page.

    Args:
        data: The file's bytes.
        page: The page, counted from 1.
        bbox: The part: x0, top, x1, bottom from the top left of the page as shown. [pt]
        mark: A box to draw a line around, in the same points: the value's.
        scale: Pixels to the point; taken down where the picture would pass 25 megapixels. [1/pt]

    Returns:
        A PNG file.

    Raises:
        DatasheetError: The file or the page cannot be opened, or the part lies outside the page.
    """
    picture, (left, upper), scale = _picture(data, page, bbox, scale)
    if mark is not None:
        x0, top, x1, bottom = mark
        around = (x0 - left - _MARK_GAP, top - upper - _MARK_GAP, x1 - left + _MARK_GAP, bottom - upper + _MARK_GAP)
        ImageDraw.Draw(picture).rectangle([side * scale for side in around], outline=_MARK_COLOUR, width=max(1, round(scale / 2)))
    return _png(picture)


def _picture(data: bytes, number: int, bbox: Box | None, scale: float) -> tuple[Image.Image, tuple[float, float], float]:
    """The pixels of a part of a page, its upper left corner, and the scale that was used."""
    with opened(data) as pdf:
        if not 1 <= number <= len(pdf):
            raise DamagedError(f"Page {number} was asked for and the file has {len(pdf)}.")
        page = pdf[number - 1]
        try:
            width, height = page.get_size()
            x0, top, x1, bottom = _inside(bbox or (0.0, 0.0, width, height), width, height)
            scale = min(scale, math.sqrt(MOST_PIXELS / ((x1 - x0) * (bottom - top))))
            bitmap = page.render(scale=scale, crop=(x0, height - bottom, width - x1, top))
            try:
                return bitmap.to_pil().convert("RGB"), (x0, top), scale
            finally:
                bitmap.close()
        except pdfium.PdfiumError as error:
            raise DamagedError(f"Page {number} cannot be drawn ({error}).") from error
        finally:
            page.close()


def _inside(bbox: Box, width: float, height: float) -> Box:
    """The part of a box that lies on the page."""
    x0, top, x1, bottom = max(0.0, bbox[0]), max(0.0, bbox[1]), min(width, bbox[2]), min(height, bbox[3])
    if x1 - x0 < 1 or bottom - top < 1:
        raise DamagedError(f"The part {tuple(round(side) for side in bbox)} lies outside the page of {width:.0f} by {height:.0f} points.")
    return x0, top, x1, bottom


def _png(picture: Image.Image) -> bytes:
    buffer = io.BytesIO()
    picture.save(buffer, "PNG", optimize=False)
    return buffer.getvalue()
