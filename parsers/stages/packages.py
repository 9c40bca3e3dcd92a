"""Columns headed by packages, where a sheet covers several parts that differ by package: which part each of them is of."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from parsers.grid import Column, Line, Table
from parsers.stages.heading_words import PACKAGE, PART

_TOP = 4
"""A sheet names its parts in the first lines of a page. [1]"""


def with_parts(table: Table, lines: Sequence[Line], everywhere: Iterable[Line] = ()) -> Table:
    """Name the parts of columns that are headed by packages.

    Args:
        table: A table.
        lines: Lines of its page.
        everywhere: Lines of all pages; a list of what to order says which part comes in which package.

    Returns:
        The table with parts in the order in which one of the page's first lines names as many. Where the sheet says in lines of their own which
        of them comes in which package, and says the same, that is certain; otherwise the columns keep their packages, and remain in doubt.
    """
    headed = [column for column in table.columns if PACKAGE.match(column.cond.part or "")]
    parts = next((named for line in lines[:_TOP] if len(named := _parts(line)) == len(headed)), ()) if headed else ()
    if not parts:
        return table
    pairs = {(column.cond.part or "", part) for column, part in zip(headed, parts, strict=True)}
    certain = pairs == set(_said(everywhere, {package for package, _ in pairs}, {part for _, part in pairs}))
    return replace(table, columns=tuple(_named(column, headed, parts, certain=certain) for column in table.columns))


def _said(lines: Iterable[Line], packages: set[str], parts: set[str]) -> Iterable[tuple[str, str]]:
    """Package and part of every line that names one of each."""
    for line in lines:
        words = {word.text.strip(" ,;/") for word in line.words}
        if len(words & packages) == 1 and len(words & parts) == 1:
            yield (words & packages).pop(), (words & parts).pop()


def _parts(line: Line) -> list[str]:
    words = (word.text.strip(" ,;/") for word in line.words)
    return [word for word in words if PART.match(word) and not PACKAGE.match(word)]


def _named(column: Column, headed: Sequence[Column], parts: Sequence[str], *, certain: bool) -> Column:
    if column not in headed:
        return column
    return replace(column, cond=replace(column.cond, part=parts[headed.index(column)], note=None if certain else column.cond.part))
