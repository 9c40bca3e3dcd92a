"""Who a sheet is about: part number, siblings, maker, polarity, case and edition."""

from collections.abc import Sequence
from dataclasses import dataclass

from parsers.stages.identity.drawn_twice import is_drawn_twice
from parsers.stages.identity.main_part import ranked
from parsers.stages.identity.maker import maker_of
from parsers.stages.identity.package import package_of
from parsers.stages.identity.polarity import polarity_of
from parsers.stages.identity.revision import revision_of
from parsers.stages.identity.saying import sayings_of, with_front
from parsers.stages.identity.siblings import siblings_of
from parsers.types import Document, Page

PAGES = 24  # why: a sheet says who it is on each of its first pages, or never
LETTERS = 20_000  # of a page; more is no page that anybody drew
FEW_LETTERS = 60  # why: a page that is a picture may hold a line of text, such as its number


@dataclass(frozen=True, slots=True, kw_only=True)
class Identity:
    """What a sheet says of itself; None where it does not say.

    Attributes:
        part: Main part number.
        also: Ordering codes, and other parts that the sheet covers.
        manufacturer: As printed.
        polarity: N, P, N+N, P+P or N+P.
        package: As printed.
        revision: Revision, version or date, as printed.
    """

    part: str | None
    also: tuple[str, ...]
    manufacturer: str | None
    polarity: str | None
    package: str | None
    revision: str | None


def identify(document: Document, pages: Sequence[Page]) -> Identity:
    """Tell who a sheet is about.

    Args:
        document: With the plain text of every page.
        pages: Those that were read in full; the front page is read where it is not among them, others are taken from their plain text.

    Returns:
        What the sheet says of itself.
    """
    shown = with_front(document, pages)
    told, texts = sayings_of(document, shown), _texts(document, shown)
    likely = ranked(told, texts)
    return Identity(
        part=likely[0].text if likely else None,
        also=siblings_of(likely[0], likely[1:], told) if likely else (),
        manufacturer=maker_of(texts),
        polarity=_polarity(document, shown, polarity_of(told, texts)),
        package=package_of(texts),
        revision=revision_of(texts),
    )


def _polarity(document: Document, pages: Sequence[Page], told: str | None) -> str | None:
    """What the words say, doubled where only a picture shows that there are two."""
    first = next((page for page in pages if page.number == 1), None)
    return f"{told}+{told}" if told in {"N", "P"} and first and is_drawn_twice(document, first) else told


def _texts(document: Document, pages: Sequence[Page]) -> list[str]:
    """The text of the first pages; where the document has next to none, that of the words that were read off it."""
    read = {page.number: " ".join(word.text for word in page.words) for page in pages}
    told = enumerate((text[:LETTERS] for text in document.page_text[:PAGES]), start=1)
    return [text if len(text.strip()) > FEW_LETTERS else max(text, read.get(number, ""), key=len) for number, text in told]
