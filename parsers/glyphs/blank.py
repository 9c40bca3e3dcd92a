"""Characters that extract as control codes: a look at the rendered page tells spaces from characters with ink."""

from collections.abc import Sequence

import pypdfium2 as pdfium

from parsers.glyphs.drawn import Mark

_SCALE = 2.0
_INK = 24
"""Least difference of grey levels, of 256, that counts as ink."""
_MOST_PIXELS = 25_000_000


def settle_blanks(page: pdfium.PdfPage, marks: Sequence[Mark]) -> None:
    """Turn characters without ink into the spaces that they are.

    Args:
        page: The page, opened with PDFium.
        marks: Its characters, placed on the page as shown.
    """
    odd = [mark for mark in marks if len(mark.text) == 1 and mark.text < " "]
    width, height = page.get_size()
    if not odd or width * height * _SCALE**2 > _MOST_PIXELS:
        return
    bitmap = page.render(scale=_SCALE, grayscale=True)
    try:
        pixels, stride = bytes(bitmap.buffer), bitmap.stride
        for mark in odd:
            if _spread(pixels, stride, bitmap.height, mark) < _INK:
                mark.text, mark.doubt = " ", ()
    finally:
        bitmap.close()


def _spread(pixels: bytes, stride: int, rows: int, mark: Mark) -> int:
    """Difference between the darkest and the lightest pixel of a character's box."""
    left, right = max(0, int(mark.x0 * _SCALE) + 1), max(0, int(mark.x1 * _SCALE))
    upper, lower = max(0, int(mark.top * _SCALE)), min(rows, int(mark.bottom * _SCALE))
    seen = [pixels[row * stride + column] for row in range(upper, lower) for column in range(left, min(right, stride))]
    return max(seen) - min(seen) if seen else 0
