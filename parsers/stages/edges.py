"""Where one column ends and the next begins: at a drawn line, else in the gap that the fewest words cross."""

from collections.abc import Iterator

from parsers.grid import Region

COVERS = 0.4
"""A drawn line bounds a column when it runs along at least this share of the table. [1]"""

_BELOW = 14.0
"""An upright line of a table begins no further below its heading than this. [pt]"""

_BESIDE_ROW = 9.0
"""A line no further than this above or below a row belongs to it. [pt]"""

_STRIP = 3
"""Text of the next column begins after the first strip of this many steps that no word crosses. [1]"""

_CLEAR = 14
"""Numbers begin after a strip of so many steps that no word crosses: a sign may stand closer before them. [1]"""

_UNDER = 22.0
"""A line with a word no further aside from a value's heading than this is a row; others do not speak on gaps. [pt]"""

_STEP = 1.0
"""Gaps between columns are looked for in steps of this width. [pt]"""


def edge_between(region: Region, left: float, right: float, *, near_right: bool, first: bool = False, last: bool = False) -> tuple[float, bool]:
    """The edge between two headings: a drawn line, else the middle of the emptiest gap between them."""
    drawn = sorted(_uprights(region, left, right))
    if drawn:
        return (drawn[-1] if near_right else drawn[0]), True
    return _gap(region, left, right, first=first, last=last), False


def _uprights(region: Region, left: float, right: float) -> Iterator[float]:
    """Places of upright lines that run along enough of the table."""
    top, bottom = region.top, max((line.y for line in region.lines), default=region.heading_bottom) + 4
    covered: dict[int, float] = {}
    for rule in region.page.rules:
        if abs(rule.x1 - rule.x0) < 1 and left < rule.x0 < right:
            length = min(rule.bottom, bottom) - max(rule.top, top)
            if length > 0:
                covered[round(rule.x0)] = covered.get(round(rule.x0), 0.0) + length
    beside = {
        round(rule.x0)
        for rule in region.page.rules
        if abs(rule.x1 - rule.x0) < 1 and rule.top < region.heading_bottom + _BELOW and rule.bottom > top - 2
    }
    return (float(x) for x, length in covered.items() if length >= COVERS * (bottom - top) and (region.carried or x in beside))


def _gap(region: Region, left: float, right: float, *, first: bool, last: bool) -> float:
    """The middle of the widest strip between two places that the fewest words cross: of the first before text, of the last before numbers."""
    crossed = _crossings(region, left, right)
    least = min(crossed)
    strips: list[tuple[int, int]] = []
    start = None
    for step, count in enumerate([*crossed, least + 1]):
        if count == least and start is None:
            start = step
        elif count != least and start is not None:
            strips.append((step - start, start))
            start = None
    wide = [strip for strip in strips if strip[0] >= _STRIP]
    before = [strip for strip in strips if strip[0] >= _CLEAR and strip[0] + strip[1] < len(crossed) - 1]
    if last and before:
        width, begin = before[-1]
        return left + (begin + width / 2) * _STEP
    width, begin = wide[0] if first and wide else max(strips)
    return left + (begin + width / 2) * _STEP


def _crossings(region: Region, left: float, right: float) -> list[int]:
    """How many words of rows cross each step between two places."""
    steps = max(2, int((right - left) / _STEP))
    crossed = [0] * steps
    below = [head.middle for head in region.heads if head.role.numeric]
    rows = [line.y for line in region.lines if any(abs((word.box[0] + word.box[2]) / 2 - middle) < _UNDER for word in line.words for middle in below)]
    for line in region.lines:
        if not any(abs(line.y - y) < _BESIDE_ROW for y in rows):
            continue
        for word in line.words:
            for step in range(max(0, int((word.box[0] - left) / _STEP)), min(steps, int((word.box[2] - left) / _STEP) + 1)):
                crossed[step] += 1
    return crossed
