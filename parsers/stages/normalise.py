"""Eighth stage: the characters of a named entry become a number, a unit and conditions."""

import re
from collections.abc import Iterator
from dataclasses import fields, replace

from parsers.grammar.condition import bare_temperature, conditions_in, counts_of
from parsers.grammar.number import Number, is_placeholder, numbers_in, without_marks
from parsers.grammar.unit import SCALE, unit_named
from parsers.grid import Candidate, Cell, Entry, Named, Role, hull
from parsers.parameter import Card
from parsers.parameters import BY_KEY
from parsers.types import Word
from service.facts.reading import Box, Conditions, Limit

_LIMIT = {Role.MIN: Limit.MIN, Role.TYP: Limit.TYP, Role.MAX: Limit.MAX}
_SPOTS = ("tc", "ta", "tsp")


def candidates_of(one: Named) -> Iterator[Candidate]:
    """The values of a named entry.

    Args:
        one: An entry and what it states.

    Yields:
        One candidate for each value whose unit and size the parameter allows.
    """
    card = BY_KEY[one.key]
    cond, seen, lacks = conditions_of(one.entry, card)
    for cell in one.entry.cells:
        limit = _LIMIT.get(cell.column.role, card.single)
        if limit not in card.limits or is_placeholder(cell.text):
            continue
        number = _number(cell, card)
        unit, place = _unit(cell, one.entry, card) if number else (None, "")
        if number is None or unit is None or not card.low <= abs(number.value) * SCALE[unit] <= card.high:
            continue
        words = words_of(cell, number)
        evidence = {"unit", "column"} | ({"row"} if one.sure else set()) | ({"condition"} if not lacks else set())
        yield Candidate(
            key=card.key,
            limit=limit,
            value=number.value,
            unit=unit,
            printed=number.printed,
            si=number.value * SCALE[unit],
            cond=_merged(cond, cell.column.cond, number),
            page=one.entry.table.region.page.number,
            box=hull([word.box for word in words]),
            row_box=one.entry.box,
            quote=quote_of(one.entry, cell),
            words=words,
            trace=(f"layout: {one.entry.table.layout}", one.why, f"unit {place}", *seen),
            evidence=frozenset(evidence),
            lacks=(*lacks, *(() if one.sure else ("words and symbol of the row name different parameters",))),
        )


def conditions_of(entry: Entry, card: Card) -> tuple[Conditions, tuple[str, ...], tuple[str, ...]]:
    """Conditions of an entry, how they were found, and what is printed but was not understood."""
    own = f"{entry.label.own} ; {entry.symbol.own} ; {entry.condition.own}"
    around = f"{entry.label.shared} ; {entry.symbol.shared} ; {entry.condition.shared or (entry.condition.cell if not entry.condition.own else '')} ; {entry.label.block}"
    first, second, counts = conditions_in(own), conditions_in(around), counts_of(around)
    found = {
        field.name: mine if (mine := getattr(first, field.name)) is not None else (getattr(second, field.name) if counts.get(field.name, 0) == 1 else None)
        for field in fields(Conditions)
    }
    trace = ["conditions from the row"]
    if card.needs and "tc" in card.needs and not any(found[spot] is not None for spot in _SPOTS):
        found |= _by_caption(entry, own)
        trace.append("temperature from the caption")
    lacks = tuple(_unread(own, found, card))
    kept = {name: value for name, value in found.items() if value is not None and name in card.keeps}
    return Conditions(**kept), tuple(trace), lacks


def _by_caption(entry: Entry, own: str) -> dict[str, float]:
    """The caption's temperature under its own name; a bare temperature of the row takes the caption's name."""
    caption = conditions_in(entry.caption)
    name = next((spot for spot in _SPOTS if getattr(caption, spot) is not None), None)
    if name is None:
        return {}
    return {name: bare_temperature(own) or getattr(caption, name)}


def _unread(own: str, found: dict[str, float | str | None], card: Card) -> Iterator[str]:
    """What the row prints and nobody understood, or what it must have and lacks."""
    printed = {
        "vgs": r"V\s?\(?GS\)?\s*[=@]\s*[-\u2212\u2013+±\d]",
        "tj": r"T\s?[Jj]\s*[=@]",
        "tc": r"T\s?\(?(?:[Cc]|case|mb)\)?\s*[=@]",
        "ta": r"T\s?\(?(?:[Aa]|amb)\)?\s*[=@]",
    }
    for name, pattern in printed.items():
        if name in card.keeps and found.get(name) is None and re.search(pattern, own):
            yield f"a condition on {name} is printed and was not understood"
    if card.needs and not any(found.get(name) is not None for name in card.needs):
        yield f"none of {', '.join(card.needs)} stands beside it"


def _merged(cond: Conditions, column: Conditions, number: Number) -> Conditions:
    named = {field.name: value for field in fields(Conditions) if (value := getattr(column, field.name)) is not None}
    return replace(cond, **named, sign=number.sign)


def _number(cell: Cell, card: Card) -> Number | None:
    """The cell's one number; the upper end of a range of temperatures."""
    numbers = numbers_in(without_marks(cell.text))
    if not numbers:
        return None
    if card.key == "tj_max":
        last = numbers[-1] if len(numbers) <= 2 else None
        return replace(last, value=abs(last.value), printed=last.printed.lstrip("-~+\u2013\u2212 ")) if last else None
    return numbers[0] if len(numbers) == 1 or "(" in cell.text[numbers[0].end : numbers[1].start] else None


def _unit(cell: Cell, entry: Entry, card: Card) -> tuple[str | None, str]:
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


def box_of(words: tuple[Word, ...]) -> Box:
    """Hull of words."""
    return hull([word.box for word in words])
