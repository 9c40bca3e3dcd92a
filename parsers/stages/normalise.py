"""Eighth stage: the characters of a named entry become a number, a unit and conditions."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from parsers.grammar.number import Number, is_placeholder, numbers_in, without_marks
from parsers.grammar.unit import SCALE, unit_named
from parsers.grid import Candidate, Cell, Entry, Named, Role, hull
from parsers.parameter import Card
from parsers.parameters import BY_KEY
from parsers.stages.footnotes import Note, notes_for
from parsers.stages.said import Said, said_of
from parsers.types import Word
from service.facts.reading import Conditions, Limit

_LIMIT = {Role.MIN: Limit.MIN, Role.TYP: Limit.TYP, Role.MAX: Limit.MAX}


def candidates_in(rows: Sequence[Named], notes: Sequence[Note]) -> Iterator[Candidate]:
    """The values of the named entries of one table.

    Args:
        rows: Named entries, from the top.
        notes: Footnotes of the document.

    Yields:
        One candidate for each value whose unit and size the parameter allows.
    """
    above: tuple[Named, Conditions] | None = None
    for one in rows:
        card = BY_KEY[one.key]
        said = said_of(one.entry, card, notes_for(one.entry, notes))
        if above is not None and above[0].key == one.key:
            said = said.completed(above[1], card)
        above = (one, said.cond)
        for cell in one.entry.cells:
            yield from _candidate(one, card, cell, said)


def _candidate(one: Named, card: Card, cell: Cell, said: Said) -> Iterator[Candidate]:
    """The value of one cell, where there is one."""
    limit = card.renames.get(_LIMIT.get(cell.column.role, card.single), _LIMIT.get(cell.column.role, card.single))
    number = None if limit not in card.limits or is_placeholder(cell.text) else number_of(cell, card)
    unit, place = unit_of(cell, one.entry, card) if number else (None, "")
    if number is None or unit is None or not card.low <= abs(number.value) * SCALE[unit] <= card.high:
        return
    words = words_of(cell, number)
    cond = said.with_column(cell.column.cond, number.sign)
    lacks = (*said.lacks(card), *(() if one.sure else ("words and symbol of the row name different parameters",)))
    yield Candidate(
        key=card.key,
        limit=limit,
        value=number.value,
        unit=unit,
        printed=number.printed,
        si=number.value * SCALE[unit],
        cond=cond,
        page=one.entry.table.region.page.number,
        box=hull([word.box for word in words]),
        row_box=one.entry.box,
        quote=quote_of(one.entry, cell),
        words=words,
        trace=(f"layout: {one.entry.table.layout}", one.why, f"unit {place}", *said.trace),
        evidence=frozenset({"unit", "column"} | ({"row"} if one.sure else set()) | (set() if said.lacks(card) else {"condition"})),
        lacks=lacks,
    )


def number_of(cell: Cell, card: Card) -> Number | None:
    """The cell's one number; the upper end of a range of temperatures."""
    numbers = numbers_in(without_marks(cell.text))
    if not numbers:
        return None
    if card.key == "tj_max":
        last = numbers[-1] if len(numbers) <= 2 else None
        return replace(last, value=abs(last.value), printed=last.printed.lstrip("-~+\u2013\u2212 ")) if last else None
    return numbers[0] if len(numbers) == 1 or "(" in cell.text[numbers[0].end : numbers[1].start] else None


def unit_of(cell: Cell, entry: Entry, card: Card) -> tuple[str | None, str]:
    """The first unit that the parameter may carry: in the cell, on the line, in the paragraph, in the drawn cell."""
    after = without_marks(cell.text)
    for text, place in (
        (after, "in the value's cell"),
        (entry.unit.own, "on the row's line"),
        (entry.unit.block, "in the row's paragraph"),
        (entry.unit.cell, "in the drawn cell"),
        (" ".join(re.findall(r"\(([^)]*)\)", f"{cell.column.text} {entry.label.own} {entry.symbol.own}")), "in brackets"),
    ):
        units = [unit for token in re.findall(r"[^\s\d.,±+\-()]+(?:/[^\s]+)?", text) if (unit := unit_named(token))]
        fitting = [unit for unit in units if unit in card.units]
        if fitting and len(set(fitting)) == 1:
            return fitting[0], place
    return None, ""


def words_of(cell: Cell, number: Number) -> tuple[Word, ...]:
    """The words that hold a number's characters."""
    at, out = 0, []
    for word in cell.words:
        if at < number.end and at + len(word.text) > number.start and any(letter.isdigit() for letter in word.text):
            out.append(word)
        at += len(word.text) + 1
    return tuple(out) or cell.words


def quote_of(entry: Entry, cell: Cell) -> str:
    """The row's words, the number's characters among them."""
    parts = [entry.symbol.block or entry.symbol.own, entry.label.block or entry.label.own, entry.condition.own or entry.condition.block]
    values = [each.text for each in entry.cells]
    return re.sub(r"\s+", " ", " ".join([*parts, *values, entry.unit.own or entry.unit.block])).strip()[:400] or cell.text
