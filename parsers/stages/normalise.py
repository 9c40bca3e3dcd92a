"""Eighth stage: the characters of named entries become numbers, units and conditions."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from parsers.grammar.avalanche import tells_of_test
from parsers.grammar.number import Number, as_fraction, is_placeholder
from parsers.grammar.unit import SCALE, unit_named
from parsers.grid import Candidate, Cell, Column, Entry, Named, hull
from parsers.parameter import Card
from parsers.parameters import BY_KEY
from parsers.stages.divisions import Division, divisions_of, parts_in
from parsers.stages.figure import GUESSED, NEIGHBOUR, limit_is_said, limit_of, mixed_units_near, numbers_of, quote_of, unit_of, words_of
from parsers.stages.footnotes import Note, is_left_open, notes_for
from parsers.stages.heading_words import PACKAGE
from parsers.stages.said import Said, said_of
from parsers.stages.spelled import is_silent
from service.facts.reading import Box, Conditions

_SIGNED = frozenset({"vds_max", "vgs_max", "id_cont", "id_pulse", "id_aval", "vbr_dss", "vgs_th", "vsd", "is_cont", "qg"})
"""Only these are printed with a minus, on the sheets of P-channel parts; a negative power is another row's temperature."""
_ROW_UNSURE = "the row's words and symbol name different parameters, or it differs in nothing from the row above"
_BETWEEN_UNITS = "it has no name and no unit of its own, and the rows above and below have different ones"
_UNIT_GUESSED = "the unit's glyph is unreadable"
_CROWDED = "another value stands beside it in the same column"
_TWO_PARTS = "its heading names two parts, which may have a column each"
_STRAYED = "a bare figure stands among the symbols or the conditions of its row"
_AT_THE_END = re.compile(r"^(?!.*(?:fig|note|图)).*?(?:^|(?<![=@<>≤≥:~/,;\-])\s)\d+(?:\.\d+)?$", re.IGNORECASE)
_BARE_FIGURE = re.compile(r"(?<![=@<>≤≥:~±+\-\u2212\d.,(])\s\d[\d.,]*\s*([A-Za-zµΩ°℃/]+)(?![\w)])")
_ASIDE = "it stands nearer to the heading of another column, and no drawn line parts the two"
_ASIDE_BY = 2.0
"""So much nearer another heading is in doubt. [pt]"""
_COLUMN_UNSURE = "its column is headed by a package; the part was matched to it by order alone"


def candidates_in(rows: Sequence[Named], notes: Sequence[Note]) -> Iterator[Candidate]:
    """The values of the named entries of one table.

    Args:
        rows: Named entries, from the top.
        notes: Footnotes of the document.

    Yields:
        One candidate for each value whose unit and size the parameter allows.
    """
    above: tuple[Named, Conditions] | None = None
    for at, (row, division) in enumerate(zip(rows, divisions_of(rows), strict=True)):
        card = BY_KEY[row.key]
        alone = all(other.key != row.key for other in (*rows[max(0, at - 1) : at], *rows[at + 1 : at + 2]))
        said = said_of(row.entry, card, (*notes_for(row.entry, notes), *_shared_notes(row, rows, notes), *_lone_test(row, rows, notes)), alone=alone)
        if is_left_open(row.entry, notes):
            said = replace(said, open=True)
        same = above is not None and above[0].key == row.key
        if above is not None and same:
            said = said.completed(above[1], card).beside(above[1])
        told = not same or above is None or said.cond != above[1] or division.conds != (Conditions(),) or _says_more(row, above[0])
        one = replace(row, sure=row.sure and division.sure and told)
        above = (row, said.cond)
        yield from _values(one, card, said, division)


def _says_more(row: Named, above: Named) -> bool:
    """Whether a row has words of its own that the row above of the same parameter has not: a board, a test, another symbol."""
    mine, theirs = (f"{one.entry.symbol.own} {one.entry.label.own} {one.entry.condition.own}".strip() for one in (row, above))
    return bool(mine) and mine != theirs


def _values(one: Named, card: Card, said: Said, division: Division) -> Iterator[Candidate]:
    for cell in one.entry.cells:
        if not is_placeholder(cell.text) and limit_of(one.entry, cell, card) in card.limits:
            for cond in division.conds:
                yield from _candidates(one, card, cell, said.of(cond))


def _shared_notes(one: Named, rows: Sequence[Named], notes: Sequence[Note]) -> Iterator[Note]:
    """Footnotes beside a symbol or a name that an entry shares with another of the same parameter."""
    for other in rows:
        if other is not one and other.key == one.key and _one_name(one, other):
            yield from notes_for(other.entry, notes, of_name=True)


def _lone_test(one: Named, rows: Sequence[Named], notes: Sequence[Note]) -> Iterator[Note]:
    """The one footnote of a sheet that tells how avalanche energy is tested speaks of its one energy, whatever became of the mark."""
    if one.key == "eas" and sum(other.key == "eas" for other in rows) == 1:
        tests = [note for note in notes if tells_of_test(note.text)]
        yield from tests if len({note.text for note in tests}) == 1 else ()


def _one_name(one: Named, other: Named) -> bool:
    pairs = ((one.entry.symbol, other.entry.symbol), (one.entry.label, other.entry.label))
    return any(mine.block and mine.block == yours.block for mine, yours in pairs)


def _candidates(one: Named, card: Card, cell: Cell, said: Said) -> Iterator[Candidate]:
    """The values of one cell: one, but for a gate rating, whose cell may hold both ends."""
    unit, place = unit_of(cell, one.entry, card, said.cond.id)
    for number in numbers_of(cell, card):
        if unit is None:
            return
        plausible = [each for each in (number, as_fraction(number)) if each and card.low <= abs(each.value) * SCALE[unit] <= card.high]
        if plausible and (plausible[0].value > 0 or card.key in _SIGNED):
            yield _candidate(one, card, cell, said, plausible[0], unit, place)


def _candidate(one: Named, card: Card, cell: Cell, said: Said, number: Number, unit: str, place: str) -> Candidate:
    words = words_of(cell, number)
    doubts = dict(_doubts(one, card, cell, said, place))
    return Candidate(
        key=card.key,
        limit=limit_of(one.entry, cell, card),
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
        trace=(f"layout: {one.entry.table.layout}", f"row: {one.why}", f"column: {_heading(cell)}", f"unit: {place}", *said.trace),
        evidence=frozenset({"row", "column", "unit", "condition"} - set(doubts)),
        lacks=tuple(doubts.values()),
        flags=() if limit_is_said(one.entry, cell, card) else ("limit_unclear",),
    )


def _heading(cell: Cell) -> str:
    """Under which heading a value stands."""
    said = f", {cell.said} before the figure" if cell.said else ""
    return f"under {cell.column.text}{said}" if cell.column.text else f"under no heading{said}"


def _has_strayed(entry: Entry, card: Card) -> bool:
    """Whether a figure stands bare among the symbols or the conditions: the columns were parted in the wrong place."""
    return bool(_AT_THE_END.search(entry.condition.own)) or any(
        unit_named(found.group(1)) in card.units for found in _BARE_FIGURE.finditer(entry.symbol.own)
    )


def _under_another(cell: Cell, columns: Sequence[Column]) -> bool:
    """Whether a value stands nearer to another column's heading than to its own column's, where no lines bound its column."""
    off = abs(_middle(cell.box) - cell.column.middle)
    others = (column for column in columns if column.role.numeric and column is not cell.column)
    return not cell.column.ruled and any(abs(_middle(cell.box) - other.middle) + _ASIDE_BY < off for other in others)


def _middle(box: Box) -> float:
    return (box[0] + box[2]) / 2


def _doubts(one: Named, card: Card, cell: Cell, said: Said, place: str) -> Iterator[tuple[str, str]]:
    """Each kind of evidence of place that is missing, and why, in words."""
    if not one.sure:
        yield "row", _ROW_UNSURE
    elif place == NEIGHBOUR and is_silent(one.entry) and mixed_units_near(one.entry):
        yield "row", _BETWEEN_UNITS
    if PACKAGE.match(cell.column.cond.part or "") or PACKAGE.match(cell.column.cond.note or ""):
        yield "column", _COLUMN_UNSURE
    elif cell.crowded:
        yield "column", _CROWDED
    elif len(parts_in(cell.column.text)) > 1:
        yield "column", _TWO_PARTS
    elif _has_strayed(one.entry, card):
        yield "column", _STRAYED
    elif _under_another(cell, one.entry.table.columns):
        yield "column", _ASIDE
    if place == GUESSED:
        yield "unit", _UNIT_GUESSED
    missing = said.lacks(card)
    if missing:
        yield "condition", "; ".join(missing)
