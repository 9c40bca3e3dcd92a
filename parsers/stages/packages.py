"""Columns headed by packages, where a sheet covers several parts that differ by package: the parts by their order."""

from collections.abc import Sequence
from dataclasses import replace

from parsers.grid import Column, Line, Table
from parsers.stages.heading_words import PACKAGE, PART

_TOP = 4
"""A sheet names its parts in the first lines of a page. [1]"""


def with_parts(table: Table, lines: Sequence[Line]) -> Table:
    """Name the parts of columns that are headed by packages.

    Args:
        table: A table.
        lines: Lines of its page.

    Returns:
        The table with parts in the order in which one of the page's first lines names as many; they remain in doubt.
    """
    headed = [column for column in table.columns if PACKAGE.match(column.cond.part or "")]
    parts = next((named for line in lines[:_TOP] if len(named := _parts(line)) == len(headed)), ()) if headed else ()
    return replace(table, columns=tuple(_named(column, headed, parts) for column in table.columns)) if parts else table


def _parts(line: Line) -> list[str]:
    words = (word.text.strip(" ,;/") for word in line.words)
    return [word for word in words if PART.match(word) and not PACKAGE.match(word)]


def _named(column: Column, headed: Sequence[Column], parts: Sequence[str]) -> Column:
    if column not in headed:
        return column
    return replace(column, cond=replace(column.cond, part=parts[headed.index(column)], note=column.cond.part))
