"""The stages in order: bytes in, a sheet out; any stage can be looked at alone."""

from collections.abc import Iterator, Sequence

from parsers.grammar.unit import unit_named
from parsers.grid import Candidate, Entry, Line, Region, Table
from parsers.stages.choose import chosen
from parsers.stages.crosscheck import crosschecked
from parsers.stages.footnotes import notes_on
from parsers.stages.label import named
from parsers.stages.lines import lines_in
from parsers.stages.normalise import candidates_in
from parsers.stages.open_document import open_document
from parsers.stages.picture_text import read_picture_pages
from parsers.stages.regions import regions_in
from parsers.stages.rows import entries_in
from parsers.stages.statements import statements_on
from parsers.stages.tables import table_of
from parsers.stages.words import read_page
from parsers.types import Document, Page, TextLayer
from parsers.version import READER_VERSION
from service.facts.reading import Reading, Sheet

_MOST = 0.6
"""Share of the rows of a headless table that must show a unit. [1]"""


def read_datasheet(data: bytes, name: str, stop_after: str | None = None) -> Sheet:
    """Read every parameter that a datasheet states, each with its place.

    Args:
        data: The file's bytes.
        name: Base name of the file; it is repeated in the sheet and never read for meaning.
        stop_after: Name of the last stage to run: ``open`` or ``read``; all when None.

    Returns:
        The sheet.

    Raises:
        DatasheetError: The document cannot be read; the kind says why.
    """
    document = open_document(data)
    pages = [] if stop_after == "open" else list(_pages(document))
    return Sheet(
        reader_version=READER_VERSION,
        file=name,
        sha256=document.sha256,
        pages=document.pages,
        text_layer=str(document.text_layer),
        readings=readings_in(pages, document.sha256),
    )


def _pages(document: Document) -> Iterator[Page]:
    """The pages that are read in full: by their text, or by looking at them where they have none."""
    if document.text_layer is TextLayer.NONE:
        yield from read_picture_pages(document)
    else:
        yield from (read_page(document, number) for number in document.chosen)


def readings_in(pages: Sequence[Page], sha256: str) -> tuple[Reading, ...]:
    """The readings of pages whose words are known."""
    lines = {page.number: lines_in(page) for page in pages}
    notes = [note for page in pages for note in notes_on(page.number, lines[page.number])]
    tables = list(tables_in(pages, lines))
    printed = [candidate for table in tables for candidate in candidates_in(named(trusted(entries_in(table))), notes)]
    tabled = {(one.page, one.key) for one in printed}
    said = [
        one for page in sorted({page for page, _ in tabled}) for one in statements_on(page, lines[page]) if any(one.key == key for _, key in tabled)
    ]
    return chosen(crosschecked([*printed, *said]), sha256)


def _belongs(one: Candidate, tabled: set[tuple[int, str]]) -> bool:
    """Whether a sentence speaks of what the tables state; a junction limit only beside tables, for graphs repeat it."""
    return any(one.key == key and (one.key != "tj_max" or page == one.page) for page, key in tabled) or (one.key == "tj_max" and any(page == one.page for page, _ in tabled))


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
        before = last if last is not None and last.page.number == page.number - 1 and not last.carried else None
        for region in regions_in(page, lines[page.number], before):
            last = region
            table = table_of(region)
            if table is not None:
                yield table
