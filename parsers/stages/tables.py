"""Fifth stage: a region's headings become columns with edges, from drawn lines where there are any, else from the gaps."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from parsers.family import Meaning
from parsers.grid import Column, Region, Role, Table
from parsers.layouts import FAMILIES
from parsers.stages.edges import COVERS, edge_between
from parsers.types import Rule

_BESIDE = 40.0
"""Without a drawn line the last column ends this far right of its heading. [pt]"""
_TEXT = (Role.LABEL, Role.CONDITION)
_FURTHEST = 120.0
"""No column reaches further beyond its heading. [pt]"""
_FLUSH = 4.0
"""Rows that end within this width end at one place. [pt]"""
_MOST, _MANY = 0.6, 5
"""Share of the lines that must end there, or how many. [1]"""
_FRAME = 16.0
"""A line that shows how wide a table is stands this close over or under its heading. [pt]"""
_INSIDE = 8.0
"""An inner line stands this far from both edges of its column. [pt]"""
_TOUCHING = 3.0
"""Pieces of one line are no further apart. [pt]"""
_SHORT = 8.0
"""An inner line is at least this long. [pt]"""


def table_of(region: Region) -> Table | None:
    """Name and bound the columns of a region.

    Args:
        region: A heading with its lines.

    Returns:
        The table, or None where no layout family knows the heading.
    """
    for family in FAMILIES:
        meanings = family.read(region.heads)
        if meanings is not None:
            region = _between_frames(region)
            columns = tuple(_columns(region, meanings))
            return Table(region=region, layout=family.name, columns=(*columns, *_inner(region, columns)), rules=tuple(_inside(region)))
    return None


def _between_frames(region: Region) -> Region:
    """The region without what stands beside it, where a drawn line over or under its heading shows how wide it is."""
    left, right = region.heads[0].box[0], region.heads[-1].box[2]
    across = [
        rule
        for rule in region.page.rules
        if abs(rule.bottom - rule.top) < 1
        and region.top - _FRAME < rule.top < region.heading_bottom + _FRAME
        and min(rule.x1, right) - max(rule.x0, left) > COVERS * (right - left)
    ]
    if not across or region.carried:
        return region
    x0, x1 = min(rule.x0 for rule in across) - 2, max(rule.x1 for rule in across) + 2
    if x0 > left or x1 < right:
        return region
    lines = [
        replace(line, words=words, marks=tuple(mark for mark in line.marks if x0 <= mark.box[0] <= x1))
        for line in region.lines
        if (words := tuple(word for word in line.words if x0 <= (word.box[0] + word.box[2]) / 2 <= x1))
    ]
    return replace(region, lines=tuple(lines))


def _inner(region: Region, columns: Sequence[Column]) -> Iterator[Column]:
    """Strips of a text column that an upright line parts over a few rows only: a sub-column for a duration, a channel, a temperature."""
    for column in columns:
        if column.role not in _TEXT:
            continue
        uprights = _joined(rule for rule in region.page.rules if abs(rule.x1 - rule.x0) < 1 and _in_body(rule, region))
        words = (word.box[0] for line in region.lines for word in line.words if column.x0 <= word.box[0] < column.x1)
        left = max(column.x0, min(words, default=column.x0))
        inside = sorted((rule for rule in uprights if left + _INSIDE < rule.x0 < column.x1 - _INSIDE), key=lambda rule: rule.x0)
        for rule in inside:
            beside = [other.x0 for other in inside if other.x0 > rule.x0 + _INSIDE and other.top < rule.bottom and other.bottom > rule.top]
            yield replace(column, x0=rule.x0, x1=min([*beside, column.x1]), top=rule.top - 1, bottom=rule.bottom + 1, ruled=True)


def _joined(rules: Iterable[Rule]) -> Iterator[Rule]:
    """Upright lines whose pieces touch are one line: many sheets draw one piece a row."""
    last: Rule | None = None
    for rule in sorted(rules, key=lambda rule: (round(rule.x0), rule.top)):
        if last is not None and round(rule.x0) == round(last.x0) and rule.top <= last.bottom + _TOUCHING:
            last = replace(last, bottom=max(last.bottom, rule.bottom))
            continue
        if last is not None:
            yield last
        last = rule
    if last is not None:
        yield last


def _in_body(rule: Rule, region: Region) -> bool:
    """Whether an upright line stands below the heading, beside the rows."""
    last = max((line.y for line in region.lines), default=region.heading_bottom)
    return rule.bottom - rule.top > _SHORT and rule.bottom > region.heading_bottom + 2 and rule.top < last


def _columns(region: Region, meanings: Sequence[Meaning]) -> Iterator[Column]:
    """Each heading with the edges on both sides of it; left of the first value column stands a label, headed or not."""
    edges: list[tuple[float, bool]] = [(-1e9, False)]
    first = meanings[0].head
    if first.role.numeric:
        edges.append(edge_between(region, first.box[0] - 60, first.middle, near_right=True))
        yield Column(role=Role.LABEL, x0=-1e9, x1=edges[-1][0], ruled=edges[-1][1])
    for meaning, following in pairwise(meanings):
        soon = following.head.role in _TEXT and meaning.head.role not in _TEXT
        late = following.head.role.numeric and not meaning.head.role.numeric
        edges.append(
            edge_between(region, meaning.head.middle, following.head.middle, near_right=not meaning.head.role.numeric, first=soon, last=late)
        )
        left, right = edges[-2], edges[-1]
        yield _column(meaning, left, right)
    last = meanings[-1]
    right = edge_between(region, last.head.middle, last.head.box[2] + 80, near_right=False) if last.head.role is not Role.CONDITION else (1e9, False)
    open_end = 1e9 if last.head.role is Role.CONDITION else _reach(region, last.head.box[2])
    yield _column(last, edges[-1], right if right[1] else (open_end, False))


def _reach(region: Region, right: float) -> float:
    """How far the last column reaches: further than usual where most rows end at one place, as numbers set to the right do."""
    ends = [line.words[-1].box[2] for line in region.lines]
    far = [end for end in ends if right + _BESIDE < end < right + _FURTHEST]
    edge = max(far, default=0.0)
    flush = sum(edge - end < _FLUSH for end in far)
    return edge + 1 if flush >= min(_MANY, max(2, _MOST * len(ends))) else right + _BESIDE


def _column(meaning: Meaning, left: tuple[float, bool], right: tuple[float, bool]) -> Column:
    return Column(
        role=meaning.head.role,
        x0=left[0],
        x1=right[0],
        text=meaning.head.text,
        cond=meaning.cond,
        ruled=left[1] and right[1],
        middle=meaning.head.middle,
    )


def _inside(region: Region) -> Iterator[Rule]:
    """Horizontal lines from the heading down to just below the last line."""
    bottom = max((line.y for line in region.lines), default=region.heading_bottom) + 30
    for rule in region.page.rules:
        if abs(rule.bottom - rule.top) < 1 and rule.x1 - rule.x0 > 4 and region.top - 4 <= rule.top <= bottom:
            yield rule
