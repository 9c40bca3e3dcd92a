"""Eighth stage: the characters of a named entry become a number, a unit and conditions."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from parsers.grammar.number import Number, is_placeholder, numbers_in, without_marks
from parsers.grammar.unit import SCALE, unit_named
from parsers.grid import Candidate, Cell, Entry, Named, Role, hull
from parsers.parameter import Card
from parsers.parameters import BY_KEY
from parsers.stages.divisions import divisions_of
from parsers.stages.footnotes import Note, notes_for
from parsers.stages.said import Said, said_of
from parsers.types import Word
from service.facts.reading import Conditions, Limit

_PACKAGE = re.compile(r"^(?:TO|SOT|SOIC|SO|DPAK|D2PAK|IPAK|SC|DFN|SOP|TSSOP)-?\s?\d")
_GUESSED = "of which one glyph is unreadable"
_MOST_VOLTS = 20.0
"""No switch is tested with a larger drop than this over it when on. [V]"""
_NAMES_DIFFER = "words and symbol of the row name different parameters"
_UNIT_GUESSED = "the unit's glyph is unreadable"
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
    for one, division in zip(rows, divisions_of(rows), strict=True):
        card = BY_KEY[one.key]
        mine = notes_for(one.entry, notes) + tuple(note for other in rows if other.key == one.key and _one_name(one, other) for note in notes_for(other.entry, notes, of_name=True))
        said = said_of(one.entry, card, mine)
        if above is not None and above[0].key == one.key:
            said = said.completed(above[1], card)
            one = replace(one, sure=one.sure and (said.cond != above[1] or division.conds != (Conditions(),)))
        above = (one, said.cond)
        for cell in one.entry.cells:
            for cond in division.conds:
                yield from _candidate(one if division.sure else replace(one, sure=False), card, cell, said.of(cond))


def _one_name(one: Named, other: Named) -> bool:
    """Whether two entries share one symbol or one name, so that a mark beside it speaks of both."""
    return one is not other and any(
        mine.block and mine.block == yours.block for mine, yours in ((one.entry.symbol, other.entry.symbol), (one.entry.label, other.entry.label))
    )


def _candidate(one: Named, card: Card, cell: Cell, said: Said) -> Iterator[Candidate]:
    """The values of one cell: one, but for a gate rating, whose cell may hold both ends."""
    limit = _LIMIT.get(cell.column.role) or _limit_said(one.entry, cell) or card.single
    limit = card.renames.get(limit, limit)
    if limit not in card.limits or is_placeholder(cell.text):
        return
    unit, place = unit_of(cell, one.entry, card, said)
    for number in numbers_of(cell, card):
        if unit is None or not card.low <= abs(number.value) * SCALE[unit] <= card.high:
            continue
        words = words_of(cell, number)
        unsure = (*said.lacks(card), *(() if one.sure else (_NAMES_DIFFER,)), *((_UNIT_GUESSED,) if place == _GUESSED else ()))
        evidence = {*(() if _PACKAGE.match(cell.column.cond.part or "") else ("column",)), *({"row"} if one.sure else ()), *(() if place == _GUESSED else {"unit"}), *(() if said.lacks(card) else {"condition"})}
        yield Candidate(
            key=card.key,
            limit=limit,
            value=number.value,
            unit=unit,
            printed=number.printed,
            si=number.value * SCALE[unit],
            cond=said.with_column(cell.column.cond, number.sign),
            page=one.entry.table.region.page.number,
            box=hull([word.box for word in words]),
            row_box=one.entry.box,
            quote=quote_of(one.entry, cell),
            words=words,
            trace=(f"layout: {one.entry.table.layout}", one.why, f"unit {place}", *said.trace),
            evidence=frozenset(evidence),
            lacks=unsure,
        )


def _limit_said(entry: Entry, cell: Cell) -> Limit | None:
    """The limit that stands before a number, or in which its row's name ends, where the column says only Value."""
    found = re.search(r"\b(min|typ|max)\.?\s*$", cell.said or f"{entry.label.own} {entry.condition.own}".strip(), re.IGNORECASE)
    return Limit(found.group(1).lower()) if found else None


def numbers_of(cell: Cell, card: Card) -> tuple[Number, ...]:
    """The cell's one number; the upper end of a range of temperatures; both ends of a gate rating."""
    numbers = numbers_in(without_marks(cell.text))
    if card.key == "tj_max" and len(numbers) in {1, 2}:
        last = numbers[-1]
        return (replace(last, value=abs(last.value), printed=last.printed.lstrip("-~+\u2013\u2212 ")),)
    if card.key == "vgs_max" and len(numbers) == 2 and numbers[0].value * numbers[1].value < 0:
        return numbers
    if len(numbers) == 1 or (len(numbers) > 1 and "(" in cell.text[numbers[0].end : numbers[1].start]):
        return numbers[:1]
    return ()


def unit_of(cell: Cell, entry: Entry, card: Card, said: Said) -> tuple[str | None, str]:
    """The first unit that the parameter may carry: in the cell, on the line, in the paragraph, in the drawn cell."""
    after = without_marks(cell.text)
    for text, place in (
        (after, "in the value's cell"),
        (entry.unit.own, "on the row's line"),
        (entry.unit.block, "in the row's paragraph"),
        (entry.unit.cell if entry.unit.peers <= 6 else "", "in the drawn cell"),
        (entry.unit.near, "of the neighbouring row"),
        (" ".join(re.findall(r"\(([^)]*)\)", f"{cell.column.text} {entry.label.own} {entry.symbol.own}")), "in brackets"),
    ):
        tokens = (*re.findall(r"[^\s\d.,±+\-()]+(?:/[^\s]+)?", text), text.replace(" ", ""))
        units = [unit for token in tokens if (unit := unit_named(token))]
        fitting = [unit for unit in units if unit in card.units]
        if fitting and len(set(fitting)) == 1:
            return fitting[0], place
    return _guessed(entry, card, said.cond.id)


def _guessed(entry: Entry, card: Card, amperes: float | None) -> tuple[str | None, str]:
    """An on-resistance whose unit is unreadable is in ohms where it drops few volts at its test current, else in milliohms."""
    said = without_marks(f"{entry.unit.own or entry.unit.block or entry.unit.cell}").strip()
    if card.key == "tj_max" and not any(letter.isascii() and letter.isalnum() for letter in said):
        return "degC", _GUESSED
    if card.key != "rds_on" or len(said) > 1 or entry.table.region.carried:
        return None, ""
    values = [abs(number.value) for cell in entry.cells for number in numbers_in(without_marks(cell.text))]
    if not amperes or not values:
        return None, ""
    return ("ohm" if said != "m" and max(values) * abs(amperes) < _MOST_VOLTS else "mohm"), _GUESSED


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
