"""Second stage for a page that is a picture: words, rules and pictures by looking at it twice, at two scales."""

from collections.abc import Iterator

from parsers.glyphs.doubts import doubted
from parsers.glyphs.reader import doubts_of_picture
from parsers.ocr.agreement import side_by_side
from parsers.ocr.effort import FIRST_PX, MOST_PAGES, SECOND_PX
from parsers.ocr.levels import levelled
from parsers.ocr.seen import Seen, look
from parsers.ocr.words import words_of
from parsers.stages.open_document import opened
from parsers.stages.page_choice import chosen_pages
from parsers.types import Document, Page, Word

_FIRST_PAGE = "A first page is always chosen."


def read_picture_pages(document: Document) -> Iterator[Page]:
    """Read the pages of a document that has no text layer, up to where its tables end: graphs would take as long and give nothing.

    Args:
        document: An opened document.

    Yields:
        Pages from the first on; the last one is the first without a table after one with a table.

    Raises:
        NoTextError: This process has no reader for pictures; says how to get one.
    """
    found = False
    for number in range(1, min(document.pages, MOST_PAGES) + 1):
        page = read_picture_page(document, number)
        yield page
        table = _holds_a_table(page)
        if found and not table:
            return
        found = found or table


def read_picture_page(document: Document, number: int) -> Page:
    """Read a page that has no text layer.

    Args:
        document: An opened document.
        number: The page, counted from 1.

    Returns:
        The page's words with what a second look at another scale sees in their places, and its drawn lines.

    Raises:
        NoTextError: This process has no reader for pictures; says how to get one.
    """
    reader = look()
    with opened(document.data) as pdf:
        page = pdf[number - 1]
        try:
            width, height = page.get_size()
            first, second = (reader(page, pixels) for pixels in (FIRST_PX, SECOND_PX))
        finally:
            page.close()
    seen = Page(
        number=number,
        width=width,
        height=height,
        words=tuple(_in_reading_order(side_by_side(_words(first), _words(second)))),
        rules=first.rules,
    )
    return doubted(seen, sorted(doubts_of_picture(document.data, number)))


def _holds_a_table(page: Page) -> bool:
    """Whether a page would be chosen for its tables, were its text a text layer."""
    text = " ".join(word.text for word in page.words)
    return 2 in chosen_pages((_FIRST_PAGE, text))


def _words(seen: Seen) -> list[Word]:
    return [word for strip in levelled(seen.strips) for word in words_of(strip)]


def _in_reading_order(words: list[Word]) -> list[Word]:
    """By line, then from left to right."""
    lines: list[list[Word]] = []
    for word in sorted(words, key=lambda word: word.box[1] + word.box[3]):
        if lines and _same_line(lines[-1][0], word):
            lines[-1].append(word)
        else:
            lines.append([word])
    return [word for line in lines for word in sorted(line, key=lambda word: word.box[0])]


def _same_line(one: Word, other: Word) -> bool:
    middle = (one.box[1] + one.box[3]) / 2
    return other.box[1] + 0.25 * (other.box[3] - other.box[1]) < middle < other.box[3]
