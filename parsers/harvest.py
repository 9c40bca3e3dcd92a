"""Everything that the pages of one sheet state: from words to readings, and the rows that nobody took a decision about."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parsers.grammar.spelling import squeezed_name
from parsers.grammar.unit import unit_named
from parsers.grid import Candidate, Entry, Line, Region, Table, rounded
from parsers.left_out import left_on_purpose
from parsers.stages.channels import told_apart_by_table
from parsers.stages.choose import chosen
from parsers.stages.crosscheck import crosschecked
from parsers.stages.footnotes import notes_on
from parsers.stages.headline import promises_on
from parsers.stages.headline_columns import promises_below
from parsers.stages.label import named
from parsers.stages.lines import lines_in
from parsers.stages.normalise import candidates_in
from parsers.stages.packages import with_parts
from parsers.stages.promised import with_promises
from parsers.stages.regions import regions_in
from parsers.stages.rows import entries_in
from parsers.stages.statements import statements_on
from parsers.stages.tables import table_of
from parsers.types import Page
from service.facts.reading import Reading, Unaccounted

_MOST = 0.6
"""Share of the rows of a headless table that must show a unit. [1]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Harvest:
    """What the pages of a sheet gave.

    Attributes:
        readings: Every value.
        unaccounted: Rows of its tables that are neither read nor left on purpose.
    """

    readings: tuple[Reading, ...]
    unaccounted: tuple[Unaccounted, ...]


def harvest(pages: Sequence[Page], sha256: str, polarity: str | None = None) -> Harvest:
    """Read the pages of a sheet.

    Args:
        pages: Pages whose words are known.
        sha256: Identity of the file.
        polarity: Which switches it is about, where that is known.

    Returns:
        Its readings, and the rows of its tables that remain.
    """
    lines = {page.number: lines_in(page) for page in pages}
    notes = [note for page in pages for note in notes_on(page.number, lines[page.number])]
    printed: list[Candidate] = []
    remaining: list[Unaccounted] = []
    for entries in told_apart_by_table([trusted(entries_in(table)) for table in tables_in(pages, lines)]):
        rows = named(entries)
        found = list(candidates_in(rows, notes))
        printed += found
        remaining += unaccounted_in(entries, {one.entry.y for one in rows} if found else set())
    said = [one for page in pages for one in statements_on(page.number, lines[page.number]) if _belongs(one, printed)]
    known = with_promises(crosschecked([*printed, *said], polarity), _promises(pages, lines, printed))
    return Harvest(readings=chosen(known, sha256), unaccounted=tuple(remaining) if printed else ())


def _promises(pages: Sequence[Page], lines: dict[int, tuple[Line, ...]], printed: Sequence[Candidate]) -> tuple[Candidate, ...]:
    """What the first page that was read promises above its first table."""
    if not pages:
        return ()
    front = pages[0].number
    top = min((one.row_box[1] for one in printed if one.page == front), default=pages[0].height)
    above = [line for line in lines[front] if line.y < top]
    return (*promises_on(front, above), *promises_below(front, above))


def unaccounted_in(entries: Sequence[Entry], read: set[float]) -> Iterator[Unaccounted]:
    """Rows with values that no parameter claims and that are not left on purpose.

    Args:
        entries: Entries of one table.
        read: Heights of those that a parameter claims.

    Yields:
        The others, down to the last row that is known; none where nothing of the table was read, for it is then no table of ratings.
    """
    known = [entry.y for entry in entries if entry.y in read or left_on_purpose(_name(entry))]
    for entry in entries if read else ():
        figures = any(letter.isdigit() for cell in entry.cells for letter in cell.text)
        if figures and entry.y not in known and entry.y < max(known):
            yield Unaccounted(
                page=entry.table.region.page.number,
                bbox=rounded(entry.box),
                quote=" ".join([entry.symbol.own, entry.label.own, entry.condition.own, *(cell.text for cell in entry.cells), entry.unit.own])[:400],
            )


def _name(entry: Entry) -> str:
    return squeezed_name(f"{entry.symbol.own} {entry.label.own or entry.label.block}")


def trusted(entries: tuple[Entry, ...]) -> tuple[Entry, ...]:
    """Entries of a table; of one without a heading of its own only where most of them show a unit in the unit's column."""
    if not entries or not entries[0].table.region.carried:
        return entries
    shown = sum(any(unit_named(token) for token in f"{entry.unit.own} {entry.unit.block}".split()) for entry in entries)
    return entries if shown >= _MOST * len(entries) else ()


def tables_in(pages: Sequence[Page], lines: dict[int, tuple[Line, ...]]) -> Iterator[Table]:
    """The tables whose layout is known; a heading carries over to rows at the top of the next page."""
    last: Region | None = None
    for page in pages:
        before = last if last is not None and last.page.number == page.number - 1 else None
        for region in regions_in(page, lines[page.number], before):
            last = region
            table = table_of(region)
            if table is not None:
                yield with_parts(table, lines[page.number], (line for each in lines.values() for line in each))


def _belongs(one: Candidate, printed: Sequence[Candidate]) -> bool:
    """Whether a sentence speaks of what the tables state; a junction limit only on a page with a table, for graphs repeat it."""
    if one.key == "tj_max":
        return any(other.page == one.page for other in printed)
    return any(other.key == one.key or (one.key.startswith("rth") and other.page == one.page) for other in printed)
