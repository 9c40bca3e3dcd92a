"""A look at the rendered page: which characters leave ink there. It needs to know nothing of the many ways to hide one."""

import math
from collections.abc import Iterable

import pypdfium2 as pdfium

from parsers.glyphs.doubts import INKLESS
from parsers.glyphs.drawn import SLANTING, Mark
from service.facts.reading import Box

_SCALE = 1.5
"""Pixels to the point; fewer where the page is very large. [1/pt]"""
_MOST_PIXELS = 25_000_000
_INK = 24
"""Least difference of grey levels, of 256, that counts as ink."""
_HEIGHTS = (0.36, 0.2, 0.5, 0.05, 0.65)
"""Where a figure is looked at, above its baseline; the first look nearly always finds ink. [em]"""


class Ink:
    """One page as a viewer shows it, in grey.

    Args:
        page: The page, opened with PDFium.
    """

    def __init__(self, page: pdfium.PdfPage) -> None:
        width, height = page.get_size()
        self._scale = min(_SCALE, math.sqrt(_MOST_PIXELS / max(1.0, width * height)))
        bitmap = page.render(scale=self._scale, grayscale=True)
        try:
            self._pixels, self._stride, self._columns, self._rows = bytes(bitmap.buffer), bitmap.stride, bitmap.width, bitmap.height
        finally:
            bitmap.close()

    def in_box(self, box: Box) -> bool:
        """Whether any ink stands in a box.

        Args:
            box: On the page as shown.
        """
        x0, top, x1, bottom = box
        rows = range(max(0, int(top * self._scale)), max(0, int(bottom * self._scale)))
        seen = [level for row in rows for level in self._levels(row, x0 + 1 / self._scale, x1)]
        return bool(seen) and max(seen) - min(seen) >= _INK

    def of_figure(self, mark: Mark) -> bool:
        """Whether a figure leaves ink: a few lines through it are enough.

        Args:
            mark: An upright figure.
        """
        for height in _HEIGHTS:
            levels = self._levels(int((mark.y - height * mark.size) * self._scale), mark.x0, mark.x1)
            if levels and max(levels) - min(levels) >= _INK:
                return True
        return self.in_box((mark.x0, mark.top, mark.x1, mark.bottom))

    def _levels(self, row: int, x0: float, x1: float) -> bytes:
        """Grey levels along a line."""
        if not 0 <= row < self._rows:
            return b""
        left, right = max(0, int(x0 * self._scale)), min(self._columns, max(0, int(x1 * self._scale)))
        return self._pixels[row * self._stride + left : row * self._stride + max(left, right)]


def weigh_ink(ink: Ink, marks: Iterable[Mark]) -> None:
    """Turn characters without meaning and without ink into the spaces that they are, and doubt figures that leave no ink.

    Args:
        ink: The page.
        marks: Its characters, placed on the page as shown.
    """
    for mark in marks:
        if len(mark.text) == 1 and mark.text < " ":
            if not ink.in_box((mark.x0, mark.top, mark.x1, mark.bottom)):
                mark.text, mark.doubt = " ", ()
        elif mark.text.isdecimal() and not mark.doubt and mark.turned != SLANTING:
            inked = ink.in_box((mark.x0, mark.top, mark.x1, mark.bottom)) if mark.turned else ink.of_figure(mark)
            if not inked:
                mark.doubt = (INKLESS,)
