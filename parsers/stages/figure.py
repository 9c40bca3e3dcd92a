"""The figure in one cell: its number, its limit, its unit, and the words that hold it."""

import re
from dataclasses import replace

from parsers.grammar.number import Number, numbers_in, without_marks
from parsers.grammar.unit import unit_named
from parsers.grid import Cell, Entry, Role
from parsers.parameter import Card
from parsers.types import Word
from service.facts.reading import Limit

_LIMIT = {Role.MIN: Limit.MIN, Role.TYP: Limit.TYP, Role.MAX: Limit.MAX}
_MEASURED = frozenset({"rds_on", "qg", "ciss", "coss", "crss", "vsd", "vgs_th"})
"""Characteristics, of which a lone value may be the typical one as well as the largest; a rating is a largest one."""
NEIGHBOUR = "of the neighbouring row"
GUESSED = "of which one glyph is unreadable"
_MOST_VOLTS = 20.0
"""No switch is tested with a larger drop than this over it when on. [V]"""


def limit_of(entry: Entry, cell: Cell, card: Card) -> Limit:
    """The limit by the column, else by the word before the number or at the end of the row's name, else by what the parameter is."""
    limit = _LIMIT.get(cell.column.role) or _said(entry, cell) or card.single
    return card.renames.get(limit, limit)


def _said(entry: Entry, cell: Cell) -> Limit | None:
    """The limit that a word before the number, or at the end of the row's name, says."""
    said = cell.said or f"{entry.label.own} {entry.condition.own}".strip()
    found = re.search(r"\b(min|typ|max)\.?\s*$", said, re.IGNORECASE)
    return Limit(found.group(1).lower()) if found else None


def limit_is_said(entry: Entry, cell: Cell, card: Card) -> bool:
    """Whether anything says which end a figure is: its column, a word before it or after its name, or its being a rating."""
    return not (cell.column.role is Role.VALUE and card.key in _MEASURED) or bool(_said(entry, cell))


def numbers_of(cell: Cell, card: Card) -> tuple[Number, ...]:
    """The cell's one number; the upper end of a range of temperatures; both ends of a gate rating."""
    if cell.text.count(")") > cell.text.count("("):
        return ()  # why: a mark of a footnote that began on the line above
    numbers = numbers_in(without_marks(cell.text))
    if card.key == "tj_max" and len(numbers) in {1, 2}:
        last = numbers[-1]
        return (replace(last, value=abs(last.value), printed=last.printed.lstrip("-~+\u2013\u2212 ")),)
    if card.key == "vgs_max" and len(numbers) == 2 and numbers[0].value * numbers[1].value < 0:
        return numbers
    if len(numbers) == 1 or (len(numbers) > 1 and "(" in cell.text[numbers[0].end : numbers[1].start]):
        return numbers[:1]
    return ()


def unit_of(cell: Cell, entry: Entry, card: Card, amperes: float | None) -> tuple[str | None, str]:
    """The first unit that the parameter may carry: in the cell, on the line, in the paragraph, in the drawn cell."""
    after = without_marks(cell.text)
    own = {unit for token in re.findall(r"[A-Za-zµμΩ°℃/]+", after) if (unit := unit_named(token))}
    if own and not own & set(card.units):
        return None, ""
    for text, place in (
        (after, "in the value's cell"),
        (entry.unit.own, "on the row's line"),
        (entry.unit.block, "in the row's paragraph"),
        (entry.unit.cell if entry.unit.peers <= 6 else "", "in the drawn cell"),
        (entry.unit.near, NEIGHBOUR),
        (" ".join(re.findall(r"\(([^)]*)\)", f"{cell.column.text} {entry.label.own} {entry.symbol.own}")), "in brackets"),
    ):
        tokens = (*re.findall(r"[^\s\d.,±+\-()]+(?:/[^\s]+)?", text), text.replace(" ", ""))
        units = [unit for token in tokens if (unit := unit_named(token))]
        fitting = [unit for unit in units if unit in card.units]
        if fitting and len(set(fitting)) == 1:
            return fitting[0], place
    return _guessed(entry, card, amperes)


def _guessed(entry: Entry, card: Card, amperes: float | None) -> tuple[str | None, str]:
    """An on-resistance whose unit is unreadable is in ohms where it drops few volts at its test current, else in milliohms."""
    said = without_marks(f"{entry.unit.own or entry.unit.block or entry.unit.cell}").strip()
    if card.key == "tj_max" and not any(letter.isascii() and letter.isalnum() for letter in said):
        return "degC", GUESSED
    if card.key != "rds_on" or len(said) > 1 or entry.table.region.carried:
        return None, ""
    values = [abs(number.value) for cell in entry.cells for number in numbers_in(without_marks(cell.text))]
    if not amperes or not values:
        return None, ""
    return ("ohm" if said != "m" and max(values) * abs(amperes) < _MOST_VOLTS else "mohm"), GUESSED


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
    text = re.sub(r"\s+", " ", " ".join([*parts, *values, entry.unit.own or entry.unit.block])).strip()
    return re.sub(r"(?<=\d)\s?([.,])\s(?=\d)", r"\1", text)[-400:] or cell.text


def mixed_units_near(entry: Entry) -> bool:
    """Whether the nearest units above and below an entry differ."""
    return len({unit for token in entry.unit.near.split() if (unit := unit_named(token))}) > 1
