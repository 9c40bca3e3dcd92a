"""Fourth stage: each heading of a page with the lines that stand below it."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from parsers.grid import Head, Line, Region, Role, hull
from parsers.stages.headings import headings_in, subheads_in
from parsers.types import Page

_NOTES = re.compile(r"^(?:notes?\b\s*[:\uff1a]?$|notes?\s*[:\uff1a]|※|备注|注[:\uff1a]|footnote)", re.IGNORECASE)
_FIGURE = re.compile(r"^fig(?:ure|\.)?\s*\d+", re.IGNORECASE)
_REACH = 75.0
"""A gap of more than this below the last line of a table ends it. [pt]"""
_ABOVE = 38.0
"""A caption stands no further above its heading, nor its lines from each other. [pt]"""
_CLOSE = 17.0
"""A line of sub-headings stands no further below its heading. [pt]"""


def regions_in(page: Page, lines: tuple[Line, ...], before: Region | None = None) -> tuple[Region, ...]:
    """The tables of a page by their headings.

    Args:
        page: The page.
        lines: Its lines.
        before: Last region of the page before, whose heading carries over where this page begins with rows.

    Returns:
        Regions from the top; each takes the lines down to the next heading, the notes, or a wide gap.
    """
    headings = headings_in(lines)
    starts = [first for first, _, _ in headings] + [len(lines)]
    regions = []
    for (first, last, heads), following in zip(headings, starts[1:], strict=True):
        caption = " ".join([_caption(lines, first), *(line.text for line in lines[first : last + 1])])
        for beside, body in _beside(heads, tuple(_body(lines[last + 1 : following], lines[last]))):
            parted, rest = _subheaded(beside, body)
            box = hull([head.box for head in parted])
            regions.append(Region(page=page, heads=parted, top=box[1], heading_bottom=box[3], caption=caption, lines=rest))
    carried = _carried(page, lines[: starts[0]], before)
    return (*([carried] if carried else []), *regions)


def _beside(heads: tuple[Head, ...], body: tuple[Line, ...]) -> Iterator[tuple[tuple[Head, ...], tuple[Line, ...]]]:
    """One table, or two that stand side by side under one line of headings: the names begin anew right of the units."""
    for at in range(1, len(heads) - 1):
        left, right = heads[:at], heads[at:]
        anew = heads[at - 1].role is Role.UNIT and heads[at].role in {Role.LABEL, Role.SYMBOL}
        if anew and all(any(head.role.numeric for head in part) for part in (left, right)):
            cut = _cut(body, heads[at - 1].middle, heads[at].middle)
            yield left, _between(body, 0.0, cut)
            yield from _beside(right, _between(body, cut, 1e9))
            return
    yield heads, body


def _cut(body: Sequence[Line], left: float, right: float) -> float:
    """The middle of the widest strip between two places in which no word stands."""
    inside = sorted(
        (max(word.box[0], left), min(word.box[2], right)) for line in body for word in line.words if word.box[2] > left and word.box[0] < right
    )
    best, at = (0.0, (left + right) / 2), left
    for x0, x1 in [*inside, (right, right)]:
        best = max(best, (x0 - at, (x0 + at) / 2))
        at = max(at, x1)
    return best[1]


def _between(body: Sequence[Line], left: float, right: float) -> tuple[Line, ...]:
    """The words of lines between two places."""
    parts = (
        replace(
            line,
            words=tuple(word for word in line.words if left <= word.box[0] < right),
            marks=tuple(mark for mark in line.marks if left <= mark.box[0] < right),
        )
        for line in body
    )
    return tuple(line for line in parts if line.words)


def _subheaded(heads: tuple[Head, ...], body: tuple[Line, ...]) -> tuple[tuple[Head, ...], tuple[Line, ...]]:
    """A lone value column whose first line names parts or packages is one column for each of them."""
    values = [head for head in heads if head.role is Role.VALUE]
    if len(values) != 1 or not body or body[0].y - values[0].box[3] > _CLOSE:
        return heads, body
    names = subheads_in(body[0])
    if not names:
        return heads, body
    return tuple(sorted([*(head for head in heads if head is not values[0]), *names], key=lambda head: head.box[0])), body[1:]


def _body(lines: Sequence[Line], heading: Line) -> Iterator[Line]:
    """Lines of a table, until notes begin, a figure's caption stands at its left, or nothing follows for long."""
    y = heading.y
    for line in lines:
        figure = _FIGURE.match(line.text) and line.words[0].box[0] < heading.words[0].box[2]
        if line.y - y > _REACH or _NOTES.match(line.text) or figure:
            return
        yield line
        y = line.y


def _caption(lines: tuple[Line, ...], first: int) -> str:
    """Up to three lines that stand close above a heading."""
    taken: list[str] = []
    y = lines[first].y
    for line in reversed(lines[max(0, first - 3) : first]):
        if y - line.y > _ABOVE:
            break
        taken.insert(0, line.text)
        y = line.y
    return " ".join(taken)


def _carried(page: Page, lines: tuple[Line, ...], before: Region | None) -> Region | None:
    """A table that runs on from the page before without a heading of its own."""
    if before is None or not lines:
        return None
    top = lines[0].y
    return Region(page=page, heads=before.heads, top=top, heading_bottom=top, caption=before.caption, lines=lines, carried=True)
