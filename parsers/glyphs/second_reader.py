"""The second reader: PDFium's characters, put beside pdfminer's by the place where each one stands on its baseline."""

import ctypes
from collections.abc import Iterable

import pypdfium2 as pdfium
from pypdfium2 import raw

from parsers.glyphs.drawn import Mark
from parsers.glyphs.geometry import Matrix

Seen = tuple[float, float, int, str]
"""Origin on the page as shown, position in the page's content, and text."""
_ROW = 4.0
"""Height of the rows in which characters are looked up. [pt]"""
_BLANK = frozenset((0, 9, 10, 13, 32, 160, 0xFFFE))
"""Codes without ink, those that PDFium makes up between words among them."""
_HYPHEN = 2
"""What PDFium gives for a hyphen at the end of a line."""
_COPY = 0.1
"""The same character again within this share of the size is a copy that makes it bold. [1]"""
_BESIDE = 0.2
"""A character stands on a line when it is off by less than this share of the size. [1]"""


class SecondReader:
    """Characters of one page as PDFium reads them.

    Args:
        page: The page, opened with PDFium.
        matrix: From the page's own points to the page as shown.

    Attributes:
        count: How many characters with ink it sees.
    """

    def __init__(self, page: pdfium.PdfPage, matrix: Matrix) -> None:
        self._rows: dict[int, list[Seen]] = {}
        text = page.get_textpage()
        try:
            self._take(text, matrix)
        finally:
            text.close()
        self.count = sum(map(len, self._rows.values()))

    def _take(self, text: pdfium.PdfTextPage, matrix: Matrix) -> None:
        """Sort every character with ink into its row."""
        a, b, c, d, e, f = matrix
        rows, x, y = self._rows, ctypes.c_double(), ctypes.c_double()
        to_x, to_y, code_of, origin_of = ctypes.byref(x), ctypes.byref(y), raw.FPDFText_GetUnicode, raw.FPDFText_GetCharOrigin
        for index in range(text.count_chars()):
            code = code_of(text, index)
            if code not in _BLANK and origin_of(text, index, to_x, to_y):
                px, py = x.value, y.value
                down = b * px + d * py + f
                shown = "-" if code == _HYPHEN and raw.FPDFText_IsHyphen(text, index) else chr(code)
                rows.setdefault(int(down // _ROW), []).append((a * px + c * py + e, down, index, shown))

    def leave_out(self, unseen: Iterable[Mark], kept: Iterable[Mark]) -> None:
        """Forget characters that the first reader knows not to belong to any line: hidden ones, and those of a slanting watermark.

        Args:
            unseen: Characters to forget.
            kept: Characters that stay, even where one to forget stands in the same place.
        """
        stay = {(round(mark.x), round(mark.y), mark.text) for mark in kept}
        for mark in unseen:
            if (round(mark.x), round(mark.y), mark.text) in stay:
                continue
            for row in {int((mark.y - 1) // _ROW), int((mark.y + 1) // _ROW)}:
                self._rows[row] = [seen for seen in self._rows.get(row, ()) if not _is_at(seen, mark)]

    def between(self, *, left: float, right: float, baselines: Iterable[float], size: float) -> str:
        """What stands on a stretch of a line.

        Args:
            left: Where the stretch begins. [pt]
            right: Where it ends. [pt]
            baselines: Of the characters that the first reader sees there. [pt]
            size: Of the largest one. [pt]

        Returns:
            The text, from left to right.
        """
        ends = tuple(baselines)
        upper, lower = min(ends) - _BESIDE * size, max(ends) + _BESIDE * size
        found = sorted(
            seen
            for row in range(int(upper // _ROW), int(lower // _ROW) + 1)
            for seen in self._rows.get(row, ())
            if left <= seen[0] < right and upper <= seen[1] <= lower
        )
        kept: list[Seen] = []
        for seen in found:
            if not any(_repeats(seen, other, _COPY * size) for other in kept[-2:]):
                kept.append(seen)
        return "".join(text for *_, text in kept)


def _is_at(seen: Seen, mark: Mark) -> bool:
    return seen[3] == mark.text and abs(seen[0] - mark.x) < 1 and abs(seen[1] - mark.y) < 1


def _repeats(seen: Seen, other: Seen, reach: float) -> bool:
    """Whether a character is drawn again in its place; neighbours in the content are the letters of one ligature."""
    return seen[3] == other[3] and seen[0] - other[0] < reach and abs(seen[2] - other[2]) != 1
