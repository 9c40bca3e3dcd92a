"""How the words of a line are dealt out to the columns of its table."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parsers.grammar.number import is_placeholder, numbers_in, without_marks
from parsers.grid import Column, Line, Role
from parsers.types import Word

LIMIT_WORD = re.compile(r"^(?:min|typ|max)\.?$", re.IGNORECASE)

_RANGE = re.compile(r"^[-\u2212\u2013]\s?\d{2}\s*(?:°\s?C)?\s*(?:to|~|\.\.+|…)\s*\+?\s?\d{2,3}", re.IGNORECASE)

OUTSIDE = -1
"""Place of a word that stands beside the table."""

_TOUCHES = 0.08
"""Words with a smaller gap than this share of their size touch. [1]"""


@dataclass(frozen=True, slots=True)
class Spread:
    """One line with its words dealt out to the columns."""

    line: Line
    words: dict[int, tuple[Word, ...]]


def spread_over(line: Line, columns: Sequence[Column]) -> Spread:
    """Deal a line's words out to the columns: words that stand together go together unless all are values."""
    dealt: dict[int, list[Word]] = {}
    for run in _runs(line):
        places = _places(run, line, columns)
        if len(set(places)) > 1 and not _splits(run, places, columns):
            places = [places[0]] * len(run)
        if _RANGE.match(" ".join(word.text for word in run)):
            places = [_place((run[0].box[0] + run[-1].box[2]) / 2, line.y, columns)] * len(run)
        if len(run) == 1 and columns[places[0]].role is Role.VALUE and LIMIT_WORD.match(run[0].text):
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
    if OUTSIDE in places:
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
    return OUTSIDE


def holds_value(words: Sequence[Word]) -> bool:
    """Whether a cell is a dash, or begins with a number."""
    text = " ".join(word.text for word in words)
    return is_placeholder(text) or any(not text[: number.start].strip("<≤>≥=(±+- \u2013\u2212") for number in numbers_in(without_marks(text))[:1])
