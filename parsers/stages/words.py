"""Second stage: one page of a document becomes words, rules and pictures, each with its place."""

from parsers.glyphs.reader import reader_of
from parsers.types import Document, Page


def read_page(document: Document, number: int) -> Page:
    """Read one page in full.

    Args:
        document: An opened document.
        number: The page, counted from 1.

    Returns:
        The page's words, rules and pictures; a page of turned text is turned first, and says so.

    Raises:
        DamagedError: The page's content cannot be read.
        TooLargeError: The page draws more objects than are read.
    """
    return reader_of(document.data).page(number)
