"""What a row, its caption and its footnotes say of the conditions of its values."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields, replace

from parsers.grammar.avalanche import avalanche_test_in, tells_of_test
from parsers.grammar.condition import bare_temperature, conditions_in, conditions_of, counts_of
from parsers.grid import Entry
from parsers.parameter import Card
from parsers.stages.footnotes import Note, conditions_of_notes, limited_by
from service.facts.identities import ROOM_C
from service.facts.reading import Conditions

_SPOTS = ("tc", "ta", "tsp")
_NOTED = frozenset({"id_cont", "pd", "rth_ja", "rth_jl"})
"""Footnotes may say of these for how long they hold, or who limits them."""
_LIMITER = re.compile(r"package|silicon|\b(?:die|chip)\b|bond[- ]?wire|封装", re.IGNORECASE)
_PEERS = 6
"""No more entries than this share the conditions of one drawn cell. [1]"""
_SHORT = 60
"""A footnote that says for what a value holds is no longer than this. [1]"""
_NAMES = tuple(field.name for field in fields(Conditions))
_PRINTED = {
    "vgs": r"V\s?\(?GS\)?\s*[=@]\s*[-\u2212\u2013+±\d]",
    "tj": r"T\s?[Jj]\s*[=@]",
    "tc": r"T\s?\(?(?:[Cc]|case|mb)\)?\s*[=@]",
    "ta": r"T\s?\(?(?:[Aa]|amb)\)?\s*[=@]",
}
_WITHOUT_VALUE = re.compile(
    r"(?:^|;)\s*[°º℃]|\bt\s?p?\s*[≤<]\s*(?:[,;]|$)|\b(?:V\s?GS|V\s?DS|I\s?SD?)\s*=?\s*(?:V\b(?!\s?[DG]S)|A\b)|\b(?:V\s?GS|I\s?D)\s*=\s*(?:[,;]|$)"
)
_DEGREES = re.compile(r"\d{2,3}\s*(?:°|˚|º|℃|\(cid:\d+\)|o)?\s*C\b|\bT\s?[AaCc]\s*=|\d{2,3}\s*[°˚º℃]")
_KINDS = re.compile(r"transient|dynamic|static|peak|pulsed|recommended|operational", re.IGNORECASE)

_BARELY_ON = frozenset({"vbr_dss", "vgs_th"})
"""What is measured while next to nothing flows."""
_MUCH_A = 1.0
"""No sheet measures them at as much as this; common practice, no source. [A]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """Conditions of a row and how they were found.

    Attributes:
        cond: All that is kept with the parameter.
        own: The row's own words.
        trace: How they were found, in words.
        degrees: Whether the row, its caption or another row of its table prints a temperature.
        borrowed: Whether they stand beside another row of the same parameter.
        open: Whether a footnote that the number refers to was not found.
    """

    cond: Conditions
    own: str
    trace: tuple[str, ...]
    degrees: bool = False
    borrowed: bool = False
    open: bool = False

    def completed(self, above: Conditions, card: Card) -> "Said":
        """A row that adds only a temperature to the row above holds for the rest of that row's conditions."""
        names = [name for name in card.needs if name == "vgs"]
        if not names or any(getattr(self.cond, name) is not None for name in names):
            return self
        taken = {name: getattr(above, name) for name in ("vgs", "id") if name in card.keeps and getattr(self.cond, name) is None}
        return replace(self, cond=replace(self.cond, **taken), trace=(*self.trace, "conditions: the rest of them as in the row above"))

    def beside(self, above: Conditions) -> "Said":
        """A row whose neighbour of the same parameter has a temperature has one too, whether or not it was found."""
        return replace(self, degrees=self.degrees or any(getattr(above, spot) is not None for spot in _SPOTS))

    def of(self, division: Conditions) -> "Said":
        """The same for one part or one channel."""
        return replace(self, cond=replace(self.cond, part=division.part, ch=division.ch))

    def with_column(self, column: Conditions, sign: str | None) -> Conditions:
        """The conditions with what the column's heading and the number's sign say."""
        named = {name: value for name in _NAMES if (value := getattr(column, name)) is not None}
        return replace(self.cond, **named, sign=sign)

    def _is_hot(self) -> bool:
        """Whether the row prints a temperature other than room's that no name tells what it is of."""
        bare = bare_temperature(self.own)
        return bare is not None and bare != ROOM_C and all(getattr(self.cond, name) is None for name in ("tj", *_SPOTS))

    def lacks(self, card: Card) -> tuple[str, ...]:
        """What the row prints and nobody understood, or what it must have and lacks, in words."""
        return tuple(self._lacks(card))

    def _lacks(self, card: Card) -> Iterator[str]:
        for name, pattern in _PRINTED.items():
            if name in card.keeps and getattr(self.cond, name) is None and re.search(pattern, self.own):
                yield f"a condition on {name} is printed and was not understood"
        if "tj" in card.keeps and "tc" not in card.needs and self._is_hot():
            yield "a temperature is printed and was not understood"
        yield from (f"two values of {name} are printed" for name in _said_twice(self.own, card))
        if _WITHOUT_VALUE.search(self.own):
            yield "a condition is printed whose value cannot be read"
        if card.key == "id_cont" and self.cond.limited_by is None and _LIMITER.search(self.own):
            yield "who limits the current is printed and was not understood"
        if card.key in _BARELY_ON and abs(self.cond.id or 0.0) >= _MUCH_A:
            yield "its drain current is far above the small one at which it is measured, as if its unit had been lost"
        if self.open and card.key in _NOTED and self.cond.limited_by is None:
            yield "a footnote that its number refers to was not found"
        if self.borrowed:
            yield "its conditions stand beside another row of the same parameter"
        if card.needs and not any(getattr(self.cond, name) is not None for name in card.needs) and (card.needs == ("vgs",) or self.degrees):
            yield f"none of {', '.join(card.needs)} stands beside it"


def said_of(entry: Entry, card: Card, notes: Sequence[Note], *, alone: bool = True) -> Said:
    """Conditions of an entry.

    Args:
        entry: The entry.
        card: The parameter that it states: it says which conditions are kept.
        notes: Footnotes that the entry refers to.
        alone: Whether no neighbour states the same parameter: rows of one parameter differ in what stands beside each of them.

    Returns:
        The row's own words first, then those of its paragraph where they are unanimous, then caption and footnotes.
    """
    own = f"{entry.label.own} ; {entry.symbol.own} ; {entry.condition.own} ; {entry.condition.stray}"
    shared = _of_cell(entry, card, alone=alone)
    around = _around(entry, shared)
    first, second, counts = conditions_in(own), conditions_in(around), counts_of(around)
    found: dict[str, float | str | None] = {
        name: mine if (mine := getattr(first, name)) is not None else (getattr(second, name) if counts.get(name, 0) == 1 else None) for name in _NAMES
    }
    trace = ["conditions: from the row"]
    if "tc" in card.needs and not any(found[spot] is not None for spot in _SPOTS):
        noted = _by_notes(notes)
        found |= noted or _by_caption(entry, own)
        trace.append("conditions: temperature from a footnote" if noted else "conditions: temperature from the caption")
    kept = {name: value for name, value in found.items() if value is not None and name in card.keeps}
    if card.key == "vgs_th" and re.search(r"pulse|after", f"{own} {around}"):
        kept.pop("vgs", None)  # why: a pulse that is over before the threshold is measured is no condition of it
    if card.key == "qg":
        kept |= _swing(f"{entry.symbol.own} ; {entry.label.own}")
    if card.key in _NOTED:
        kept |= _noted(f"{entry.label.block or entry.label.own} {entry.symbol.block} {entry.condition.own}", notes, card)
    if card.key == "eas":
        kept |= _tested(f"{own} ; {around}", notes)
    if card.key == "vgs_max" and (kind := _KINDS.search(f"{own} {entry.label.block}")):
        kept["note"] = kind.group().lower()
    return Said(
        cond=conditions_of(kept),
        own=own,
        trace=tuple(trace),
        degrees=bool(_DEGREES.search(f"{own} {around} {entry.caption}")) or ("tc" in card.needs and _names_a_spot(entry)),
        borrowed=not alone and not entry.condition.centred and bool(shared),
    )


def _said_twice(own: str, card: Card) -> list[str]:
    """Conditions without which a value misleads and of which a row prints two values."""
    counts = counts_of(own)
    return [name for name in dict.fromkeys((*card.needs, "tj")) if name in card.keeps and counts.get(name, 0) > 1]


def _names_a_spot(entry: Entry) -> bool:
    """Whether any row of the table says for which temperature of case or air it holds."""
    return any(getattr(conditions_in(line.text), spot) is not None for line in entry.table.region.lines for spot in _SPOTS)


def _around(entry: Entry, shared: str) -> str:
    """Words that the entry shares with others: of its paragraph, and of a drawn cell of conditions that stands on no entry's line."""
    return f"{entry.label.shared} ; {entry.symbol.shared} ; {entry.condition.shared or shared}"


def _of_cell(entry: Entry, card: Card, *, alone: bool) -> str:
    """What a drawn cell says to an entry without words of its own; to a rating that needs a condition only where it stands in the middle of few."""
    text = entry.condition
    apart = text.peers > _PEERS or (alone and not text.centred)
    return "" if text.own or text.shared or (card.needs and apart) else text.cell


def _by_notes(notes: Sequence[Note]) -> dict[str, float | str | None]:
    """The temperature that a short footnote of the row names: ``Tc = 25 °C``."""
    for note in notes:
        if len(note.text) < _SHORT:
            said = conditions_in(note.text)
            spot = next((name for name in _SPOTS if getattr(said, name) is not None), None)
            if spot:
                return {spot: getattr(said, spot)}
    return {}


def _by_caption(entry: Entry, own: str) -> dict[str, float | str | None]:
    """The caption's temperature under its own name; a bare temperature of the row takes the caption's name."""
    caption = conditions_in(entry.caption)
    name = next((spot for spot in _SPOTS if getattr(caption, spot) is not None), None)
    return {} if name is None else {name: bare_temperature(own) or getattr(caption, name)}


def _swing(text: str) -> dict[str, float]:
    """A gate voltage that stands in the symbol or the name of a charge: ``Qg(4.5 V)``, ``Gate Charge at 10 V``."""
    found = re.search(
        r"(?:Q\s?g\s*(?:\(?tot(?:al)?\)?)?\s*\(\s*|charge at\s*)(?P<volts>-?\d+(?:\.\d+)?)\s*V?\b",
        re.sub(r"(?<=\d)\s+(?=[\d.])", "", text),
        re.IGNORECASE,
    )
    return {"vgs": int(float(found["volts"]) * 1000) / 1000} if found else {}


def _tested(own: str, notes: Sequence[Note]) -> dict[str, float | str]:
    """How an avalanche energy was tested: what the row says, then what its footnotes add."""
    tests = [avalanche_test_in(text) for text in (own, *(note.text for note in notes if tells_of_test(note.text)))]
    first = {name: next((value for test in tests if (value := getattr(test, name)) is not None), None) for name in ("id", "vds", "tj", "note")}
    return {name: value for name, value in first.items() if value is not None}


def _noted(own: str, notes: Sequence[Note], card: Card) -> dict[str, str]:
    """Who limits a current, and for how long a value holds, from the row's name or its footnotes."""
    noted = conditions_of_notes(notes)
    limited = limited_by(own) or noted.limited_by
    out = {"limited_by": limited} if limited and card.key in {"id_cont", "pd"} else {}
    lasting = conditions_in(own).t or noted.t
    return out | ({"t": lasting} if lasting else {})
