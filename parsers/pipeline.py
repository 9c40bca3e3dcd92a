"""The stages in order: bytes in, a sheet out; any stage can be looked at alone."""

import re
from collections.abc import Iterator

from parsers.harvest import harvest
from parsers.stages.identity import identify
from parsers.stages.kind import kind_of, kind_of_text
from parsers.stages.open_document import open_document
from parsers.stages.own_marks import FLAGS, marked, marks_of
from parsers.stages.picture_text import read_picture_pages
from parsers.stages.statements import states_something
from parsers.stages.words import read_page
from parsers.types import Document, Page, TextLayer
from parsers.version import READER_VERSION
from service.facts.reading import Sheet


def read_datasheet(data: bytes, name: str, stop_after: str | None = None) -> Sheet:
    """Read every parameter that a datasheet states, each with its place.

    Args:
        data: The file's bytes.
        name: Base name of the file; it is repeated in the sheet and never read for meaning.
        stop_after: ``open`` to stop before pages are read, ``identity`` to stop before values are; all stages when None.

    Returns:
        The sheet.

    Raises:
        DatasheetError: The document cannot be read, or is no MOSFET datasheet; the kind says why.
    """
    document = open_document(data)
    kind_of(document)
    pages = [] if stop_after == "open" else list(pages_in(document))
    if document.text_layer is TextLayer.NONE:
        kind_of_text([" ".join(word.text for word in page.words) for page in pages])
    who = identify(document, pages)
    found = harvest([] if stop_after == "identity" else pages, document.sha256, who.polarity)
    marks = marks_of(document.page_text)
    readings = marked(found.readings, marks)
    return Sheet(
        reader_version=READER_VERSION,
        file=name,
        sha256=document.sha256,
        part=who.part,
        also=who.also,
        manufacturer=who.manufacturer,
        polarity=who.polarity,
        package=who.package,
        revision=who.revision,
        pages=document.pages,
        text_layer=str(document.text_layer),
        readings=readings,
        unaccounted=found.unaccounted,
        flags=tuple(sorted({flag for reading in readings for flag in reading.flags} | (marks & FLAGS))),
    )


def pages_in(document: Document) -> Iterator[Page]:
    """The pages that are read in full: by their text, or by looking at them where they have none."""
    if document.text_layer is TextLayer.NONE:
        yield from read_picture_pages(document)
    else:
        yield from (read_page(document, number) for number in numbers_of(document))


def numbers_of(document: Document) -> tuple[int, ...]:
    """The chosen pages, and those whose plain text states a package limit."""
    stating = (number for number, text in enumerate(document.page_text, start=1) if states_something(re.sub(r"\s+", " ", text)))
    return tuple(sorted({*document.chosen, *stating}))
