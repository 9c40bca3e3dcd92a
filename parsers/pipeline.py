"""The stages in order: bytes in, a sheet out; any stage can be looked at alone."""

from collections.abc import Iterator, Sequence

from parsers.grid import Line, Table
from parsers.stages.choose import chosen
from parsers.stages.footnotes import notes_on
from parsers.stages.label import named
from parsers.stages.lines import lines_in
from parsers.stages.normalise import candidates_in
from parsers.stages.open_document import open_document
from parsers.stages.regions import regions_in
from parsers.stages.rows import entries_in
from parsers.stages.tables import table_of
from parsers.stages.words import read_page
from parsers.types import Page
from service.facts.reading import Reading, Sheet

READER_VERSION = "0.1.0"


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
    pages = [] if stop_after == "open" else [read_page(document, number) for number in document.chosen]
    return Sheet(
        reader_version=READER_VERSION,
        file=name,
        sha256=document.sha256,
        pages=document.pages,
        text_layer=str(document.text_layer),
        readings=readings_in(pages, document.sha256),
    )


def readings_in(pages: Sequence[Page], sha256: str) -> tuple[Reading, ...]:
    """The readings of pages whose words are known."""
    lines = {page.number: lines_in(page) for page in pages}
    notes = [note for page in pages for note in notes_on(page.number, lines[page.number])]
    tables = [table for page in pages for table in tables_on(page, lines[page.number])]
    return chosen((candidate for table in tables for candidate in candidates_in(named(entries_in(table)), notes)), sha256)


def tables_on(page: Page, lines: tuple[Line, ...]) -> Iterator[Table]:
    """The tables of a page whose layout is known."""
    for region in regions_in(page, lines):
        table = table_of(region)
        if table is not None:
            yield table
