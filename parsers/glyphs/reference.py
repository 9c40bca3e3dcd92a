"""The slow, reference way to a page's characters: pdfplumber's page, its places brought to the page as shown."""

import io
from collections.abc import Iterator
from typing import Any

import pdfplumber
from pdfminer.layout import LTChar, LTCurve, LTFigure, LTImage, LTLine, LTRect

from parsers.glyphs.drawn import Drawn, Mark
from parsers.types import Rule

_STRAIGHT = 0.7
"""Two ends of a line differ by less than this when the line is horizontal or vertical. [pt]"""


def drawn_page(data: bytes, number: int) -> Drawn:
    """Everything that a page draws.

    Args:
        data: The file's bytes.
        number: The page, counted from 1.

    Returns:
        Characters, lines and pictures with places on the page as shown.
    """
    with pdfplumber.open(io.BytesIO(data), pages=[number]) as pdf:
        page = pdf.pages[0]
        left, upper, width, height = _shown(page.page_obj)
        drawn = Drawn(width=width, height=height)
        for item in _leaves(page.layout):
            x0, x1 = item.x0 - left, item.x1 - left
            top, bottom = upper - item.y1, upper - item.y0
            if isinstance(item, LTChar):
                drawn.marks.append(_mark(item, x0, top, x1, bottom, left, upper))
            elif isinstance(item, LTImage):
                drawn.pictures.append((x0, top, x1, bottom))
            else:
                drawn.rules.extend(_rules(item, x0, top, x1, bottom))
        page.close()
    return drawn


def _shown(page: Any) -> tuple[float, float, float, float]:  # noqa: ANN401  pdfminer carries no types
    """Left and upper edge of the shown page in the turned page's own points, and its width and height."""
    mx0, my0, mx1, my1 = page.mediabox
    cx0, cy0, cx1, cy1 = page.cropbox
    cx0, cy0, cx1, cy1 = max(cx0, mx0), max(cy0, my0), min(cx1, mx1), min(cy1, my1)
    if cx1 <= cx0 or cy1 <= cy0:
        cx0, cy0, cx1, cy1 = mx0, my0, mx1, my1
    edges = {
        0: (cx0 - mx0, cy1 - my0),
        90: (cy0 - my0, mx1 - cx0),
        180: (mx1 - cx1, my1 - cy0),
        270: (my1 - cy1, cx1 - mx0),
    }
    left, upper = edges.get(page.rotate, edges[0])
    width, height = cx1 - cx0, cy1 - cy0
    return (left, upper, height, width) if page.rotate in (90, 270) else (left, upper, width, height)


def _leaves(container: Any) -> Iterator[Any]:  # noqa: ANN401  pdfminer carries no types
    """Characters, lines and pictures, out of whatever forms they lie in."""
    for item in container:
        if isinstance(item, LTFigure):
            yield from _leaves(item)
        elif isinstance(item, LTChar | LTImage | LTCurve):
            yield item


def _mark(item: LTChar, x0: float, top: float, x1: float, bottom: float, left: float, upper: float) -> Mark:
    a, b, _, _, e, f = item.matrix
    turned = 0 if abs(a) >= abs(b) and a >= 0 else 180 if abs(a) >= abs(b) else 90 if b > 0 else 270
    along = {0: upper - f, 90: e - left, 180: -(upper - f), 270: -(e - left)}[turned]
    size = float(item.size)
    return Mark(text=item.get_text(), x0=x0, top=top, x1=x1, bottom=bottom, baseline=along, font=str(item.fontname), size=size, turned=turned)


def _rules(item: LTCurve, x0: float, top: float, x1: float, bottom: float) -> Iterator[Rule]:
    """A thin box or a straight line gives one rule, a wide box its four edges, a curve none."""
    if x1 - x0 < _STRAIGHT or bottom - top < _STRAIGHT:
        yield _straight(x0, top, x1, bottom)
    elif isinstance(item, LTRect) and not isinstance(item, LTLine):
        yield from (
            Rule(x0=x0, top=top, x1=x1, bottom=top),
            Rule(x0=x0, top=bottom, x1=x1, bottom=bottom),
            Rule(x0=x0, top=top, x1=x0, bottom=bottom),
            Rule(x0=x1, top=top, x1=x1, bottom=bottom),
        )


def _straight(x0: float, top: float, x1: float, bottom: float) -> Rule:
    """The middle of a thin box, along its longer side."""
    if x1 - x0 >= bottom - top:
        middle = (top + bottom) / 2
        return Rule(x0=x0, top=middle, x1=x1, bottom=middle)
    middle = (x0 + x1) / 2
    return Rule(x0=middle, top=top, x1=middle, bottom=bottom)
