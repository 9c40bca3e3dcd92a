"""Which parameter a name, a letter symbol and a unit spell together."""

import re
from collections.abc import Iterator, Sequence

from parsers.grammar.spelling import squeezed_name, squeezed_symbol, without_conditions
from parsers.grammar.unit import unit_named
from parsers.grid import Entry
from parsers.parameter import Card
from parsers.parameters import CARDS

_SUM = r"\([^)]*\+[^)]*\)"
"""A sum in brackets says what is added up, not what the row is: ``Total Gate Charge (Gate to Source + Gate to Drain)``."""

_LETTERS = {
    "V": ("V",), "I": ("A",), "P": ("W", "W/degC"), "T": ("degC", "s"), "R": ("ohm", "K/W"), "E": ("J", "mJ"), "Q": ("nC",), "C": ("pF",),
}  # fmt: skip
"""The letters with which symbols of each kind of quantity begin, by units in which it is given; common practice, no source."""
_BRACKETED = re.compile(r"\(([^()]*)\)\s*$")
"""A unit in brackets at the end of a symbol is no part of it."""

KINDS = re.compile(r"peak|pulsed?", re.IGNORECASE)


def match(label: str, symbol: str, entry: Entry) -> tuple[Card, bool, str] | None:
    """The one card that words and symbol allow, whether both agree, and how it was found."""
    name = squeezed_name(f"{re.sub(_SUM, ' ', label)} {' '.join(KINDS.findall(entry.condition.own))}")
    signs = set(_symbols(label, symbol))
    whole = f"{name} {' '.join(KINDS.findall(entry.label.block))}".lower()
    words = [card for card in CARDS if _says(card.words, name) and not _says(card.never, whole) and fits_unit(card, entry)]
    marks = [card for card in CARDS if any(re.fullmatch(pattern, sign) for pattern in card.symbols for sign in signs)]
    marks = [card for card in marks if not _says(card.never, whole) and fits_unit(card, entry)]
    both = [card for card in words if card in marks]
    if len(both) == 1:
        return both[0], True, "words and symbol agree"
    if [card.key for card in words] == ["vds_max"] and [card.key for card in marks] == ["vbr_dss"]:
        return marks[0], True, "by its symbol, which says more than its words"
    if len(words) == 1 and not both:
        return words[0], not marks and not _is_of_another_kind(symbol, words[0]), "by its words"
    if len(marks) == 1 and not words:
        return marks[0], True, "by its symbol"
    return None


def _is_of_another_kind(symbol: str, card: Card) -> bool:
    """Whether a printed symbol begins with the letter of another kind of quantity: ``Eoss`` beside words that speak of a capacitance."""
    letter = squeezed_symbol(without_conditions(symbol))[:1]
    return letter in _LETTERS and not set(_LETTERS[letter]) & set(card.units)


def _symbols(label: str, symbol: str) -> Iterator[str]:
    """Letter symbols: the symbol column, whole and in its parts, and the first words of the label."""
    if symbol:
        yield squeezed_symbol(symbol)
        yield squeezed_symbol(without_conditions(symbol))
        yield squeezed_symbol(re.split(r"[@=]", symbol)[0])
        yield squeezed_symbol(_BRACKETED.sub(lambda found: " " if unit_named(found.group(1)) else found.group(), symbol))
        return
    first = re.split(r"[@=,;]", without_conditions(label))[0].split()
    yield from (squeezed_symbol("".join(first[:count])) for count in (1, 2, 3) if len(first) >= count)


def _says(patterns: Sequence[str], name: str) -> bool:
    return any(re.search(pattern, name) for pattern in patterns)


def fits_unit(card: Card, entry: Entry) -> bool:
    """Whether the entry's unit, where it has a known one, is one of the card's."""
    units = set(units_beside(entry))
    return not units or any(unit in card.units for unit in units)


def units_beside(entry: Entry) -> Iterator[str]:
    """Every unit that stands beside an entry: on its line, in its paragraph, in its drawn cell."""
    for text in (entry.unit.own, entry.unit.block, entry.unit.cell if entry.unit.peers <= 6 else ""):
        for token in (*text.split(), text.replace(" ", "")):
            unit = unit_named(token)
            if unit is not None:
                yield unit


def is_silent(entry: Entry) -> bool:
    """Whether an entry names nothing: no words but conditions, and no symbol."""
    label = squeezed_name(without_conditions(entry.label.own or entry.label.block))
    return len(label) <= 3 and len(squeezed_symbol(without_conditions(entry.symbol.own))) < 2
