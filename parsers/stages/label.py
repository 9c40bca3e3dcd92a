"""Seventh stage: which parameter an entry states, by its name, its symbol and its unit together."""

import re
from collections.abc import Iterator, Sequence

from parsers.grammar.spelling import squeezed_name, squeezed_symbol, without_conditions
from parsers.grammar.unit import unit_named
from parsers.grid import Entry, Named
from parsers.parameter import Card
from parsers.parameters import BY_KEY, CARDS

_MODIFIER = re.compile(r"\b(continuous|pulsed?|dc|derat\w*.*)\b", re.IGNORECASE)
_CONTINUES = re.compile(r"^\W*(?:continuous|pulsed?|dc|derat|single|repetitive|t\s?[aclj]\b)", re.IGNORECASE)


def named(entries: Sequence[Entry]) -> tuple[Named, ...]:
    """Name each entry.

    Args:
        entries: Entries of one table, from the top.

    Returns:
        Those whose parameter is known; an entry that says nothing takes the name of the one above, or of the one below, where the unit fits.
    """
    found: list[Named | None] = []
    for entry in entries:
        found.append(_spelled(entry) or _continued(entry, found))
    for at in range(len(found) - 2, -1, -1):
        below = found[at + 1]
        if found[at] is None and below is not None and _silent(entries[at]) and _tied(entries[at], below.entry) and _fits(BY_KEY[below.key], entries[at]):
            found[at] = Named(entry=entries[at], key=below.key, sure=True, why="the name stands in the same cell, one line down")
    return tuple(one for one in found if one is not None)


def _spelled(entry: Entry) -> Named | None:
    """By the entry's own words: its line, its paragraph, its cell, in this order."""
    cells = (entry.label.cell, entry.symbol.cell) if max(entry.label.peers, entry.symbol.peers) <= 12 else ("", "")
    for label, symbol, where in (
        (entry.label.own, entry.symbol.own or entry.symbol.block, "on its own line"),
        (entry.label.block, entry.symbol.block or entry.symbol.own, "in its paragraph"),
        (*cells, "in its drawn cell"),
    ):
        hit = match(label, symbol, entry)
        if hit:
            return Named(entry=entry, key=hit[0].key, sure=hit[1], why=f"named {where}: {hit[2]}")
    return None


def match(label: str, symbol: str, entry: Entry) -> tuple[Card, bool, str] | None:
    """The one card that words and symbol allow, whether both agree, and how it was found."""
    name = squeezed_name(label)
    signs = set(_symbols(label, symbol))
    words = [card for card in CARDS if _says(card.words, name) and not _says(card.never, name) and _fits(card, entry)]
    marks = [card for card in CARDS if any(re.fullmatch(pattern, sign) for pattern in card.symbols for sign in signs)]
    marks = [card for card in marks if not _says(card.never, name) and _fits(card, entry)]
    both = [card for card in words if card in marks]
    if len(both) == 1:
        return both[0], True, "words and symbol agree"
    if len(words) == 1 and not both:
        return words[0], not marks, "by its words"
    if len(marks) == 1 and not words:
        return marks[0], True, "by its symbol"
    return None


def _symbols(label: str, symbol: str) -> Iterator[str]:
    """Letter symbols: the symbol column, whole and in its parts, and the first words of the label."""
    if symbol:
        yield squeezed_symbol(symbol)
        yield squeezed_symbol(without_conditions(symbol))
        yield squeezed_symbol(re.split(r"[@=]", symbol)[0])
        return
    first = re.split(r"[@=,;]", without_conditions(label))[0].split()
    yield from (squeezed_symbol("".join(first[:count])) for count in (1, 2, 3) if len(first) >= count)


def _says(patterns: Sequence[str], name: str) -> bool:
    return any(re.search(pattern, name) for pattern in patterns)


def _fits(card: Card, entry: Entry) -> bool:
    """Whether the entry's unit, where it has a known one, is one of the card's."""
    units = [unit for text in (entry.unit.own, entry.unit.block, entry.unit.cell) for token in text.split() if (unit := unit_named(token))]
    return not units or any(unit in card.units for unit in units)


def _silent(entry: Entry) -> bool:
    """Whether an entry's own line names nothing."""
    return len(squeezed_name(without_conditions(f"{entry.label.own} {entry.symbol.own}"))) <= 3


def _tied(one: Entry, other: Entry) -> bool:
    """Whether two neighbours share a drawn cell or a paragraph."""
    return any(
        (mine.cell and mine.cell == yours.cell) or (mine.block and mine.block == yours.block)
        for mine, yours in ((one.label, other.label), (one.symbol, other.symbol))
    )


def _continued(entry: Entry, before: Sequence[Named | None]) -> Named | None:
    """By the entry above: ``– Pulsed`` below ``Drain Current – Continuous``, or silence below a name."""
    above = next((one for one in reversed(before) if one is not None), None)
    if above is None or not before or before[-1] is None:
        return None
    if _CONTINUES.match(entry.label.own) and not _silent(entry):
        head = _MODIFIER.sub("", above.entry.label.block or above.entry.label.own)
        hit = match(f"{head} {entry.label.own}", "", entry)
        if hit:
            return Named(entry=entry, key=hit[0].key, sure=True, why="continues the name above")
    if _silent(entry) and _fits(BY_KEY[above.key], entry):
        return Named(entry=entry, key=above.key, sure=True, why="says nothing of its own below a name")
    return None
