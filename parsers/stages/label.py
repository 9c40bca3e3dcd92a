"""Seventh stage: which parameter an entry states, by its name, its symbol and its unit together."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from parsers.grammar.condition import conditions_in
from parsers.grammar.spelling import squeezed_name, squeezed_symbol, without_conditions
from parsers.grammar.unit import unit_named
from parsers.grid import Entry, Named, Role
from parsers.left_out import left_on_purpose
from parsers.parameters import BY_KEY
from parsers.stages.spelled import fits_unit, is_silent, match, units_beside

_MODIFIER = re.compile(r"\b(continuous|pulsed?|dc|derat\w*.*)\b", re.IGNORECASE)
_MODIFIERS = re.compile(r"continuous|pulsed?|\bdc\b|derat\w*|above|single|repetitive|package|silicon|limited|notes?|at\b", re.IGNORECASE)
_ASIDE = re.compile(r"\([^)]*\)|(?:\.\s?){3,}.*$|\bT\s?[ACJ]\s*=\s*\d+\s*[o°˚º]?\s?C")
"""Remarks in brackets, temperatures, and leader dots with the symbol that they lead to."""
_LETTERS = 3
"""A text with more letters than this names something. [1]"""
_NAME = 7
"""A name that two entries share has more letters than this. [1]"""
_PEERS = 4
"""More entries than this in one drawn cell are a table without lines. [1]"""
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
        one = _spelled(entry) or _continued(entry, found) or _celled(entry)
        above = found[-1] if found else None
        one = _as_rating(one) if one else None
        found.append(replace(one, head=above.head) if one and above and one.key == above.key and not squeezed_name(one.head) else one)
    for at in range(len(found) - 2, -1, -1):
        below = found[at + 1]
        if (
            found[at] is None
            and below is not None
            and is_silent(entries[at])
            and _tied(entries[at], below.entry)
            and fits_unit(BY_KEY[below.key], entries[at])
        ):
            found[at] = Named(entry=entries[at], key=below.key, sure=True, why="the name stands in the same cell, one line down")
    _shared_names(entries, found)
    _centred_names(entries, found)
    return tuple(each for one in found if one is not None for each in _both_energies(one))


def _both_energies(one: Named) -> Iterator[Named]:
    """One row may rate single and repeated pulses alike: ``EAS, EAR``."""
    yield one
    symbols = squeezed_symbol(one.entry.symbol.own or one.entry.symbol.block)
    if one.key in {"eas", "ear"} and symbols in {"EASEAR", "EAREAS"}:
        yield replace(one, key="ear" if one.key == "eas" else "eas", sure=True, why="its symbols name both energies")


def _centred_names(entries: Sequence[Entry], found: list[Named | None]) -> None:
    """Two more ways in which a row goes with a name beside it: a silent on-resistance above its name, a range beside two temperatures."""
    for at, entry in enumerate(entries):
        below = found[at + 1] if at + 1 < len(entries) else None
        if (
            found[at] is None
            and below is not None
            and below.key == "rds_on"
            and is_silent(entry)
            and _unit_near(entry, below)
            and conditions_in(entry.condition.own).vgs is not None
        ):
            found[at] = Named(entry=entry, key="rds_on", sure=True, why="stands above the name with a gate voltage of its own", head=below.head)
        elif found[at] is None and any(re.match(r"^[-\u2212\u2013]\s?\d{2}\s*(?:to|~|…)", cell.text, re.IGNORECASE) for cell in entry.cells):
            hit = match(entry.label.near, "", entry)
            if hit and hit[0].key == "tj_max":
                found[at] = Named(entry=entry, key="tj_max", sure=True, why="a range beside the names of two temperatures")


def _unit_near(entry: Entry, below: Named) -> bool:
    """Whether the nearest units are those of the row below."""
    if entry.symbol.block or entry.label.block:
        return False
    units = {unit for text in (entry.unit.own or entry.unit.near,) for token in text.split() if (unit := unit_named(token))}
    return bool(units & set(units_beside(below.entry)))


def _shared_names(entries: Sequence[Entry], found: list[Named | None]) -> None:
    """An entry whose paragraph also names another entry by its symbol states the same parameter."""
    for at, entry in enumerate(entries):
        twin = next(
            (one for one in found if one and len(squeezed_name(entry.label.block)) > _NAME and one.entry.label.block == entry.label.block), None
        )
        if found[at] is None and twin is not None and not entry.label.own and fits_unit(BY_KEY[twin.key], entry):
            found[at] = Named(entry=entry, key=twin.key, sure=twin.sure, why="shares its name with a row that is known", head=twin.head)


def _spelled(entry: Entry) -> Named | None:
    """By the entry's own words: its line, then its paragraph."""
    for label, symbol, where in (
        (entry.label.own, entry.symbol.own or entry.symbol.block, "on its own line"),
        (entry.label.block, entry.symbol.block or entry.symbol.own, "in its paragraph"),
    ):
        hit = match(label, symbol, entry)
        if hit:
            head = _MODIFIER.sub("", re.split(r"[(@=]|\bT\s?[ACJ]\b", label)[0])
            return Named(entry=entry, key=hit[0].key, sure=hit[1], why=f"named {where}: {hit[2]}", head=head)
    return None


def _as_rating(one: Named) -> Named:
    """A breakdown voltage among the maximum ratings, in a column of ratings, is the voltage rating."""
    table = one.entry.table
    rated = re.search(r"absolute|maximum rating|limiting|极限", table.region.caption, re.IGNORECASE)
    if one.key == "vbr_dss" and rated and not any(column.role in {Role.MIN, Role.TYP} for column in table.columns):
        return replace(one, key="vds_max", why=f"{one.why}; among the ratings it is the rating")
    return one


def _is_modifier(text: str) -> bool:
    """Whether a text only says more of the name above: ``– Pulsed``, ``Single pulse (Note 1)``."""
    rest = squeezed_name(_MODIFIERS.sub(" ", without_conditions(_ASIDE.sub(" ", text))))
    return bool(_CONTINUES.match(text)) and len(rest) <= _LETTERS


def _celled(entry: Entry) -> Named | None:
    """By all the words between the drawn lines above and below the entry, where few entries share them."""
    if max(entry.label.peers, entry.symbol.peers) > _PEERS or left_on_purpose(squeezed_name(entry.label.own)):
        return None
    hit = match(entry.label.cell, entry.symbol.cell, entry)
    return Named(entry=entry, key=hit[0].key, sure=hit[1], why=f"named in its drawn cell: {hit[2]}") if hit else None


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
    if not entry.symbol.own and not is_silent(entry) and not left_on_purpose(squeezed_name(entry.label.own)):
        for start, why in ((above.head, "continues the name above"), (above.entry.label.own, "ends the name above")):
            hit = match(f"{start} {entry.label.own}", "", entry)
            if hit and (_is_modifier(entry.label.own) or (hit[0].key == above.key and entry.label.own[:1].islower())):
                return Named(entry=entry, key=hit[0].key, sure=True, why=why, head=above.head)
    if is_silent(entry) and fits_unit(BY_KEY[above.key], entry):
        return Named(entry=entry, key=above.key, sure=True, why="says nothing of its own below a name", head=above.head)
    return None
