"""What one column of a table says about each of its entries."""

import re
from collections.abc import Sequence
from dataclasses import replace

from parsers.grammar.channel import channels_in
from parsers.grammar.condition import conditions_in
from parsers.grid import Column, Table, Text
from parsers.stages.dealing import OUTSIDE, Spread, holds_value
from parsers.stages.paragraphs import Paragraph, Piece, crossing, drawn_cell, paragraphs_of, whole_cell
from parsers.types import Word

_CONDITION = re.compile(r"[=@]")

_SHARING = 4
"""No more entries than this share one drawn cell of a strip. [1]"""

_GROUP = 6
"""In a drawn cell beside more entries than this each paragraph speaks of those beside which it is centred. [1]"""

_OFF = 0.35
"""Words no further off the middle of a group of entries than this share of their size stand in the middle. [1]"""

_NEAR = 45.0
"""The unit of a neighbour no further away than this may speak of a row without one. [pt]"""


def with_stray(condition: Text, lines: Sequence[Spread], columns: Sequence[Column]) -> Text:
    """Words in a column of values that are no value are said of the row: a channel or a part in a column without a heading."""
    stray = [
        word.text
        for one in lines
        for at, words in sorted(one.words.items())
        if at != OUTSIDE and columns[at].role.numeric and not holds_value(words)
        for word in words
    ]
    return replace(condition, stray=" ".join(stray))


def together(texts: Sequence[Text]) -> Text:
    """Several columns of one role read as one."""
    if len(texts) == 1:
        return texts[0]
    return Text(
        own=" ".join(text.own for text in texts if text.own),
        block=" ".join(text.block for text in texts if text.block),
        cell=" ".join(text.cell for text in texts if text.cell),
        shared=" ".join(text.shared for text in texts if text.shared),
        centred=all(text.centred for text in texts),
        peers=max((text.peers for text in texts), default=0),
        marks=tuple(mark for text in texts for mark in text.marks),
    )


class ColumnText:
    """What one column says about each entry."""

    def __init__(self, table: Table, index: int, spread: Sequence[Spread], heights: Sequence[float]) -> None:
        column = table.columns[index]
        lines = [
            (one.line.y, one.line.size, words, tuple(mark for mark in one.line.marks if column.x0 <= mark.box[0] < column.x1))
            for one in spread
            if (words := one.words.get(index))
        ]
        self._heights = heights
        self._lines = lines
        crossings = crossing(table.rules, words_box(column, lines))
        self._inside = [column.top <= y <= column.bottom for y in heights]
        heights = [y for y, inside in zip(heights, self._inside, strict=True) if inside]
        self._cells = [drawn_cell(crossings, y) for y in self._heights]
        self._paragraphs: dict[tuple[float, float], list[Paragraph]] = {}
        for cell in {cell for cell, inside in zip(self._cells, self._inside, strict=True) if inside}:
            inside = [line for line in lines if cell[0] < line[0] < cell[1]]
            within = [y for y in heights if cell[0] < y < cell[1]]
            whole = cell[0] > -1e8 and cell[1] < 1e8 and (len(within) == 1 or (column.top > -1e8 and _says_one_thing(inside, within)))
            self._paragraphs[cell] = [whole_cell(inside, within)] if whole and inside else paragraphs_of(inside, within)

    def about(self, at: int) -> Text:
        """The column's words about one entry; a strip of a column has none about rows above or below it."""
        if not self._inside[at]:
            return Text()
        y, cell = self._heights[at], self._cells[at]
        paragraphs = self._paragraphs[cell]
        peers = sum(cell[0] < other < cell[1] for other in self._heights)
        drawn = cell[0] > -1e8 and cell[1] < 1e8
        mine = next((paragraph for paragraph in paragraphs if y in paragraph.entries), None)
        own = " ".join(text for height, text in (mine.lines if mine else ()) if mine and (mine.whole or mine.nearest(height) == y))
        everything = " ".join(paragraph.text for paragraph in paragraphs)
        loose = [paragraph for paragraph in paragraphs if paragraph is mine or not (paragraph.anchored or (paragraph.entries and peers > _GROUP))]
        return Text(
            own=own,
            block=mine.text if mine else "",
            cell=everything if drawn else "",
            centred=self._in_the_middle(cell),
            shared=" ".join(
                text
                for paragraph in (loose if drawn else [mine] if mine else [])
                for height, text in paragraph.lines
                if paragraph.nearest(height) in (y, None)
            ),
            near=self._near(y),
            peers=peers,
            marks=mine.marks if mine else (),
        )

    def _in_the_middle(self, cell: tuple[float, float]) -> bool:
        """Whether the words of a drawn cell stand in the middle of its entries: else they are those of the entry beside which they stand."""
        lines = [line for line in self._lines if cell[0] < line[0] < cell[1]]
        beside = [y for y in self._heights if cell[0] < y < cell[1]]
        off = abs(lines[0][0] + lines[-1][0] - beside[0] - beside[-1]) / 2 if lines and beside else 0.0
        return len(beside) < 2 or not lines or off < _OFF * lines[0][1]

    def _near(self, y: float) -> str:
        """The nearest words of the column above and below an entry, whatever lines are drawn between."""
        above = max((line for line in self._lines if y - _NEAR < line[0] <= y), key=lambda line: line[0], default=None)
        below = min((line for line in self._lines if y < line[0] < y + _NEAR), key=lambda line: line[0], default=None)
        return " ; ".join(" ".join(word.text for word in line[2]) for line in (above, below) if line)


def _says_one_thing(lines: Sequence[Piece], entries: Sequence[float]) -> bool:
    """Whether the lines of a drawn strip speak together of all entries beside it: fewer lines than entries, or ``Steady`` over ``State``."""
    text = " ".join(word.text for line in lines for word in line[2])
    if len(entries) > _SHARING or _CONDITION.search(text) or channels_in(text):
        return False
    return len(lines) < len(entries) or conditions_in(text).t is not None


def words_box(column: Column, lines: Sequence[tuple[float, float, tuple[Word, ...], tuple[Word, ...]]]) -> tuple[float, float]:
    """From where to where the words of a column reach; its edges where it has no words."""
    words = [word for _, _, words, _ in lines for word in words]
    if not words:
        return max(column.x0, 0.0), min(column.x1, 2000.0)
    return min(word.box[0] for word in words), max(word.box[2] for word in words)
