"""Sixth stage: a table's lines become entries, one a line of values, each with what the other columns say about it."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from parsers.grammar.channel import channel_named
from parsers.grid import Cell, Column, Entry, Line, Role, Table, hull
from parsers.stages.column_text import ColumnText, together, with_stray
from parsers.stages.dealing import LIMIT_WORD, OUTSIDE, Spread, holds_value, spread_over
from parsers.types import Word

_LEFT = (Role.LABEL, Role.SYMBOL, Role.CONDITION, Role.UNIT)
_CLOSE = 1.3
"""Lines beside one number stand no further from it than this share of their size. [1]"""
_APART = 0.9
"""Words of one value stand no further apart than this share of their size. [1]"""
_SHORT = 6
"""A line that heads a section has no more words than this. [1]"""


def entries_in(table: Table) -> tuple[Entry, ...]:
    """The entries of a table, from the top.

    Args:
        table: A table with bounded columns.

    Returns:
        One entry for each line with at least one number or dash in a value column.
    """
    spread = [spread_over(line, table.columns) for line in table.region.lines]
    rows = [(one, cells) for one in spread if (cells := tuple(_cells(one, table.columns)))]
    heights = [one.line.y for one in spread if any(index != OUTSIDE and table.columns[index].role.numeric for index in one.words)]
    said = {index: ColumnText(table, index, spread, heights) for index, column in enumerate(table.columns) if column.role in _LEFT}
    homes = [one.line for one, _ in rows]
    entries = (_entry(table, one, cells, heights.index(one.line.y), spread, said) for one, cells in rows)
    return tuple(
        replace(entry, condition=with_stray(entry.condition, _around(homes[at], homes, spread), table.columns)) for at, entry in enumerate(entries)
    )


def _around(home: Line, homes: Sequence[Line], spread: Sequence[Spread]) -> list[Spread]:
    """A row's line, and the lines without a value that stand nearer to it than to any other row: what is said in two lines beside one number."""
    return [
        one
        for one in spread
        if one.line is home
        or (
            one.line not in homes
            and abs(one.line.y - home.y) < _CLOSE * home.size
            and all(abs(one.line.y - home.y) < abs(one.line.y - other.y) for other in homes if other is not home)
        )
    ]


def _entry(table: Table, one: Spread, cells: tuple[Cell, ...], at: int, spread: Sequence[Spread], said: "dict[int, ColumnText]") -> Entry:
    texts = {role: together([said[index].about(at) for index in said if table.columns[index].role is role]) for role in _LEFT}
    boxes = [cell.box for cell in cells] + [word.box for word in one.line.words]
    return Entry(
        table=table,
        y=one.line.y,
        cells=cells,
        label=texts[Role.LABEL],
        symbol=texts[Role.SYMBOL],
        condition=texts[Role.CONDITION],
        unit=texts[Role.UNIT],
        caption=_section(table, one.line, spread),
        box=hull(boxes),
        channel=_channel(table, one.line, spread),
    )


def _cells(one: Spread, columns: Sequence[Column]) -> Iterator[Cell]:
    """The value cells of a line; a cell of mere words is none, a limit word before a number is taken off it."""
    for index, words in one.words.items():
        if index == OUTSIDE or not columns[index].role.numeric:
            continue
        said = words[0].text.strip(".").lower() if len(words) > 1 and LIMIT_WORD.match(words[0].text) else ""
        rest = words[1:] if said else words
        if holds_value(rest):
            values = [run for run in _runs(rest, one.line.size) if holds_value(run)]
            crowded = len(values) > 1 and sum(map(len, values)) == len(rest)
            mine = min(values, key=lambda run: abs(_middle(run) - columns[index].middle)) if crowded else rest
            marks = tuple(mark for mark in one.line.marks if _beside(mark, mine))
            yield from (Cell(column=column, words=mine, marks=marks, said=said, crowded=crowded) for column in _speaks_of(one, index, mine, columns))


def _speaks_of(one: Spread, index: int, words: Sequence[Word], columns: Sequence[Column]) -> Sequence[Column]:
    """The columns that a value speaks of: a lone one that stands between the columns of parts or channels speaks of each."""
    split = [at for at, column in enumerate(columns) if column.role.numeric and (column.cond.part or column.cond.ch)]
    if index not in split or sum(at in split and holds_value(each) for at, each in one.words.items()) != 1:
        return (columns[index],)
    middle = _middle(words)
    common = (columns[split[0]].middle + columns[split[-1]].middle) / 2
    return [columns[at] for at in split] if abs(middle - common) < abs(middle - columns[index].middle) else (columns[index],)


def _runs(words: Sequence[Word], size: float) -> list[tuple[Word, ...]]:
    """Words with wide gaps between: each may be a value of its own."""
    runs: list[tuple[Word, ...]] = []
    for word in words:
        if runs and word.box[0] - runs[-1][-1].box[2] <= _APART * size:
            runs[-1] += (word,)
        else:
            runs.append((word,))
    return runs


def _middle(words: Sequence[Word]) -> float:
    return (words[0].box[0] + words[-1].box[2]) / 2


def _beside(mark: Word, words: Sequence[Word]) -> bool:
    return words[0].box[0] <= mark.box[0] <= words[-1].box[2] + 8


def _section(table: Table, line: Line, spread: Sequence[Spread]) -> str:
    """The last line above that speaks of a temperature for all that follow, else the caption of the table."""
    caption = table.region.caption
    for one in spread:
        if one.line.y >= line.y:
            break
        if "otherwise" in one.line.text.lower() or "unless" in one.line.text.lower():
            caption = one.line.text
    return caption


def _channel(table: Table, line: Line, spread: Sequence[Spread]) -> str | None:
    """The channel that the last short line of mere words above names, else the caption of the table."""
    channel = channel_named(table.region.caption)
    for one in spread:
        if one.line.y >= line.y:
            break
        if len(one.line.words) <= _SHORT and not any(True for _ in _cells(one, table.columns)):
            channel = channel_named(one.line.text) or channel
    return channel
