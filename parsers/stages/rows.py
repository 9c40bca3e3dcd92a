"""Sixth stage: a table's lines become entries, one a line of values, each with what the other columns say about it."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from parsers.grammar.channel import channels_in
from parsers.grammar.condition import conditions_in
from parsers.grammar.number import is_placeholder, numbers_in, without_marks
from parsers.grid import Cell, Column, Entry, Line, Role, Table, Text, hull
from parsers.stages.paragraphs import Paragraph, Piece, crossing, drawn_cell, paragraphs_of, whole_cell
from parsers.types import Word

_CONDITION = re.compile(r"[=@]")
_LIMIT_WORD = re.compile(r"^(?:min|typ|max)\.?$", re.IGNORECASE)
_RANGE = re.compile(r"^[-\u2212\u2013]\s?\d{2}\s*(?:°\s?C)?\s*(?:to|~|\.\.+|…)\s*\+?\s?\d{2,3}", re.IGNORECASE)
_SHARING = 4
"""No more entries than this share one drawn cell of a strip. [1]"""
_NEAR = 26.0
"""The unit of a neighbour no further away than this may speak of a row without one. [pt]"""
_OUTSIDE = -1
"""Place of a word that stands beside the table."""
_TOUCHES = 0.08
"""Words with a smaller gap than this share of their size touch. [1]"""
_LEFT = (Role.LABEL, Role.SYMBOL, Role.CONDITION, Role.UNIT)


@dataclass(frozen=True, slots=True)
class Spread:
    """One line with its words dealt out to the columns."""

    line: Line
    words: dict[int, tuple[Word, ...]]


def entries_in(table: Table) -> tuple[Entry, ...]:
    """The entries of a table, from the top.

    Args:
        table: A table with bounded columns.

    Returns:
        One entry for each line with at least one number or dash in a value column.
    """
    spread = [_spread(line, table.columns) for line in table.region.lines]
    rows = [(one, cells) for one in spread if (cells := tuple(_cells(one, table.columns)))]
    heights = [one.line.y for one in spread if any(index != _OUTSIDE and table.columns[index].role.numeric for index in one.words)]
    said = {index: _Said(table, index, spread, heights) for index, column in enumerate(table.columns) if column.role in _LEFT}
    return tuple(_entry(table, one, cells, heights.index(one.line.y), spread, said) for one, cells in rows)


def _entry(table: Table, one: Spread, cells: tuple[Cell, ...], at: int, spread: Sequence[Spread], said: "dict[int, _Said]") -> Entry:
    texts = {role: _together([said[index].about(at) for index in said if table.columns[index].role is role]) for role in _LEFT}
    texts[Role.CONDITION] = _with_stray(texts[Role.CONDITION], one, table.columns)
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
    )


def _with_stray(condition: Text, one: Spread, columns: Sequence[Column]) -> Text:
    """Words in a column of values that are no value are said of the row: a channel or a part in a column without a heading."""
    stray = [
        word.text
        for at, words in sorted(one.words.items())
        if at != _OUTSIDE and columns[at].role.numeric and not _holds_value(words)
        for word in words
    ]
    return replace(condition, stray=" ".join(stray))


def _together(texts: Sequence[Text]) -> Text:
    """Several columns of one role read as one."""
    if len(texts) == 1:
        return texts[0]
    return Text(
        own=" ".join(text.own for text in texts if text.own),
        block=" ".join(text.block for text in texts if text.block),
        cell=" ".join(text.cell for text in texts if text.cell),
        shared=" ".join(text.shared for text in texts if text.shared),
        peers=max((text.peers for text in texts), default=0),
        marks=tuple(mark for text in texts for mark in text.marks),
    )


class _Said:
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
        loose = [paragraph for paragraph in paragraphs if paragraph is mine or not paragraph.anchored]
        return Text(
            own=own,
            block=mine.text if mine else "",
            cell=everything if drawn else "",
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


def _spread(line: Line, columns: Sequence[Column]) -> Spread:
    """Deal a line's words out to the columns: words that stand together go together unless all are values."""
    dealt: dict[int, list[Word]] = {}
    for run in _runs(line):
        places = _places(run, line, columns)
        if len(set(places)) > 1 and not _splits(run, places, columns):
            places = [places[0]] * len(run)
        if _RANGE.match(" ".join(word.text for word in run)):
            places = [_place((run[0].box[0] + run[-1].box[2]) / 2, line.y, columns)] * len(run)
        if len(run) == 1 and columns[places[0]].role is Role.VALUE and _LIMIT_WORD.match(run[0].text):
            places = [next((at for at in range(places[0], -1, -1) if columns[at].role is Role.LABEL), places[0])]
        for word, place in zip(run, places, strict=True):
            dealt.setdefault(place, []).append(word)
    return Spread(line, {index: tuple(words) for index, words in dealt.items()})


def _runs(line: Line) -> Iterator[list[Word]]:
    """Words with no more than a space between them."""
    run: list[Word] = []
    for word in line.words:
        if run and word.box[0] - run[-1].box[2] > 0.45 * line.size:
            yield run
            run = []
        run.append(word)
    if run:
        yield run


def _splits(run: Sequence[Word], places: Sequence[int], columns: Sequence[Column]) -> bool:
    """Whether words that stand together may go to different columns: a drawn line parts them, or they are values."""
    if _OUTSIDE in places:
        return True
    touched = {columns[place] for place in places}
    if all(column.ruled for column in touched):
        return True
    right = [word for word, place in zip(run, places, strict=True) if columns[place].role.numeric or columns[place].role is Role.UNIT]
    left = [word for word, place in zip(run, places, strict=True) if not (columns[place].role.numeric or columns[place].role is Role.UNIT)]
    if not left:
        return True
    return bool(right) and all(_is_value(word.text) for word in right) and not left[-1].text.rstrip().endswith(("=", "@", "≤", "<", ",", "≥"))


def _is_value(text: str) -> bool:
    plain = without_marks(text).strip()
    return is_placeholder(plain) or any(number.start == 0 for number in numbers_in(plain))


def _places(run: Sequence[Word], line: Line, columns: Sequence[Column]) -> list[int]:
    """The column of each word; words that touch were one word and go by their common middle."""
    glued: list[list[Word]] = []
    for word in run:
        if glued and word.box[0] - glued[-1][-1].box[2] < _TOUCHES * line.size and not word.text[0].isdigit():
            glued[-1].append(word)
        else:
            glued.append([word])
    return [_place((words[0].box[0] + words[-1].box[2]) / 2, line.y, columns) for words in glued for _ in words]


def _place(middle: float, y: float, columns: Sequence[Column]) -> int:
    """The column of a place; a strip of a column goes before the column."""
    for index in range(len(columns) - 1, -1, -1):
        column = columns[index]
        if column.x0 <= middle < column.x1 and column.top <= y <= column.bottom:
            return index
    return _OUTSIDE


def _cells(one: Spread, columns: Sequence[Column]) -> Iterator[Cell]:
    """The value cells of a line; a cell of mere words is none, a limit word before a number is taken off it."""
    for index, words in one.words.items():
        if index == _OUTSIDE or not columns[index].role.numeric:
            continue
        said = words[0].text.strip(".").lower() if len(words) > 1 and _LIMIT_WORD.match(words[0].text) else ""
        rest = words[1:] if said else words
        if _holds_value(rest):
            marks = tuple(mark for mark in one.line.marks if _beside(mark, rest))
            yield from (Cell(column=column, words=rest, marks=marks, said=said) for column in _speaks_of(one, index, rest, columns))


def _holds_value(words: Sequence[Word]) -> bool:
    """Whether a cell is a dash, or begins with a number."""
    text = " ".join(word.text for word in words)
    return is_placeholder(text) or any(not text[: number.start].strip("<≤>≥=(±+- \u2013\u2212") for number in numbers_in(without_marks(text))[:1])


def _speaks_of(one: Spread, index: int, words: Sequence[Word], columns: Sequence[Column]) -> Sequence[Column]:
    """The columns that a value speaks of: a lone one that stands between the columns of parts or channels speaks of each."""
    split = [at for at, column in enumerate(columns) if column.role.numeric and (column.cond.part or column.cond.ch)]
    if index not in split or sum(at in split and _holds_value(each) for at, each in one.words.items()) != 1:
        return (columns[index],)
    middle = (words[0].box[0] + words[-1].box[2]) / 2
    common = (columns[split[0]].middle + columns[split[-1]].middle) / 2
    return [columns[at] for at in split] if abs(middle - common) < abs(middle - columns[index].middle) else (columns[index],)


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
