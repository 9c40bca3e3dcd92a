"""The slow way to a page's characters, by the reference library: for pages that the own device cannot follow.

It tells characters, lines and pictures. Whether a viewer shows them it does not tell, so all figures of such a page are in doubt.
"""

import io
from collections.abc import Iterator
from typing import Any

import pdfplumber
from pdfminer.layout import LTChar, LTCurve, LTFigure, LTImage, LTRect
from pdfplumber.utils.exceptions import MalformedPDFException, PdfminerException

from parsers.glyphs.doubts import PAGE_BOX, UNWEIGHED
from parsers.glyphs.drawn import Drawn, Mark, Patch
from parsers.glyphs.geometry import Matrix, is_sound, moved, product, shown
from parsers.glyphs.paths import Path, rules_of
from parsers.glyphs.symbol_font import family_codes
from parsers.glyphs.text import turn_of
from service.facts.reading import Box

REFUSALS = (PdfminerException, MalformedPDFException)
"""What the library raises of its own."""
_ABOVE, _BELOW = 0.78, 0.22
"""Reach of a character's box from its baseline, as the own device takes it. [em]"""
_PRIVATE = 0xF000
_UNNAMED = "(cid:"
"""How the library writes a code of which it does not know the text."""


def drawn_page(data: bytes, number: int) -> Drawn:
    """What a page draws, as far as the reference library tells.

    Args:
        data: The file's bytes.
        number: The page, counted from 1.

    Returns:
        Its characters, lines and pictures, in doubt as a whole.
    """
    with pdfplumber.open(io.BytesIO(data), pages=[number]) as pdf:
        page = pdf.pages[0]
        matrix, width, height = shown(page.page_obj)
        drawn = Drawn(width, height, matrix, doubt={UNWEIGHED} if is_sound(page.page_obj) else {UNWEIGHED, PAGE_BOX})
        place = _place(page.page_obj, matrix)
        for order, item in enumerate(_leaves(page.layout)):
            if isinstance(item, LTChar):
                drawn.marks.append(_mark(item, place, order))
            elif isinstance(item, LTImage):
                drawn.patches.append(Patch(moved(place, item.bbox), order, None, picture=True))
            else:
                drawn.rules.extend(rules_of(_path(item), place, stroked=item.stroke, filled=item.fill))
        page.close()
    return drawn


def _place(page: Any, matrix: Matrix) -> Matrix:  # noqa: ANN401  the library carries no types
    """From the library's places, counted up from the turned page's lower left corner, to the page as shown."""
    x0, y0, x1, y1 = page.mediabox
    left, low = {90: (-y0, x1), 180: (x1, y1), 270: (y1, -x0)}.get(page.rotate, (-x0, -y0))
    return 1.0, 0.0, 0.0, -1.0, matrix[4] - left, matrix[5] + low


def _leaves(container: Any) -> Iterator[Any]:  # noqa: ANN401  the library carries no types
    """Characters, lines and pictures, out of whatever forms they lie in."""
    for item in container:
        if isinstance(item, LTFigure):
            yield from _leaves(item)
        elif isinstance(item, LTChar | LTImage | LTCurve):
            yield item


def _path(item: LTCurve) -> Path:
    if isinstance(item, LTRect):
        return Path(boxes=[item.bbox])
    return Path(lines=[list(item.pts)], curved=any(step[0] not in ("m", "l", "h") for step in item.original_path or ()))


def _mark(item: LTChar, place: Matrix, order: int) -> Mark:
    a, b, _, _, x, y = product(item.matrix, place)
    turned = turn_of(a, b)
    x0, top, x1, bottom = moved(place, item.bbox)
    size = x1 - x0 if turned in (90, 270) else bottom - top
    font = str(item.fontname).rpartition("+")[2]
    text, repaired, doubt = _text(item.get_text(), font)
    return Mark(text, *_box((x0, top, x1, bottom), x, y, turned, size), x, y, font, size, turned, order, repaired=repaired, doubt=doubt)


def _box(own: Box, x: float, y: float, turned: int, size: float) -> Box:
    """One em across the line from a little below the baseline, and along the line what the library says."""
    x0, top, x1, bottom = own
    above, below = _ABOVE * size, _BELOW * size
    return {
        0: (x0, y - above, x1, y + below),
        90: (x - above, top, x + below, bottom),
        180: (x0, y - below, x1, y + above),
        270: (x - below, top, x + above, bottom),
    }.get(turned, own)


def _text(text: str, font: str) -> tuple[str, bool, tuple[str, ...]]:
    """A character's text, whether it was put right because its font is one of signs, and its signs of doubt."""
    if text.startswith(_UNNAMED):
        return "\ufffd", False, ("unmapped",)
    codes = family_codes(font)
    if codes is None or len(text) != 1 or not (text.isascii() or _PRIVATE <= ord(text) <= _PRIVATE + 0xFF):
        return text, False, ()
    sign = codes.get(ord(text) & 0xFF, text)
    return (sign, True, ("symbol_font",)) if sign != text else (text, False, ())
