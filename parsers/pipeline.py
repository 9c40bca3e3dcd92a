"""The stages in order: bytes in, a sheet out; any stage can be looked at alone."""

from collections.abc import Iterator

from parsers.grid import Candidate, Entry, Named, Region, Table
from parsers.stages.choose import chosen
from parsers.stages.label import named
from parsers.stages.lines import lines_in
from parsers.stages.normalise import candidates_of
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


def readings_in(pages: list[Page], sha256: str) -> tuple[Reading, ...]:
    """The readings of pages whose words are known."""
    return chosen((candidate for page in pages for candidate in candidates_on(page)), sha256)


def candidates_on(page: Page) -> Iterator[Candidate]:
    """Every candidate of a page, table by table."""
    for table in tables_on(page):
        for one in named(entries_in(table)):
            yield from candidates_of(one)


def tables_on(page: Page) -> Iterator[Table]:
    """The tables of a page whose layout is known."""
    for region in regions_in(page, lines_in(page)):
        table = table_of(region)
        if table is not None:
            yield table


__all__ = ["Entry", "Named", "Region", "read_datasheet", "readings_in"]
