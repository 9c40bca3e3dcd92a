"""What the first pages say, word by word, with how large and how high each word stands."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from parsers.errors import DatasheetError
from parsers.stages.words import read_page
from parsers.types import Document, Page, Word

_COVER = re.compile(r"is now part of|dear customer", re.IGNORECASE)
_READ = 3  # pages, a cover letter left out


@dataclass(frozen=True, slots=True, kw_only=True)
class Saying:
    """A line of a page.

    Attributes:
        text: Its words with single spaces.
        words: Its words.
        size: Size of its largest letters over that of the page's ordinary ones; 1 where sizes are unknown.
        top: Where it stands, 0 at the top of the page and 1 at its foot.
        page: Counted from 1.
    """

    text: str
    words: tuple[str, ...]
    size: float
    top: float
    page: int


def own_pages(document: Document) -> list[int]:
    """The numbers of the pages that are the sheet's own: all but a cover letter."""
    return [number for number, text in enumerate(document.page_text, start=1) if not _COVER.search(text[:1200])]


def with_front(document: Document, pages: Sequence[Page]) -> list[Page]:
    """The pages that were read, and the front page where it holds text and is not among them."""
    front = next(iter(own_pages(document)), None)
    if front is None or front in {page.number for page in pages} or not document.page_text[front - 1].strip():
        return list(pages)
    try:
        return [read_page(document, front), *pages]
    except DatasheetError:
        return list(pages)


def sayings_of(document: Document, pages: Sequence[Page]) -> list[Saying]:
    """The lines of the first pages: from the words of those that were read in full, else from their plain text."""
    read = {page.number: page for page in pages}
    return [
        line
        for number in own_pages(document)[:_READ]
        for line in (_placed(read[number]) if number in read else _plain(document.page_text[number - 1], number))
    ]


def _plain(text: str, number: int) -> list[Saying]:
    lines = [line.split() for line in text.splitlines() if line.strip()]
    return [
        Saying(text=" ".join(words), words=tuple(words), size=1.0, top=n / len(lines), page=number)
        for n, words in enumerate(lines)
    ]  # fmt: skip


def _placed(page: Page) -> list[Saying]:
    upright = [word for word in page.words if word.glyphs and word.glyphs[0].upright]
    ordinary = median([word.glyphs[0].size for word in upright] or [1.0]) or 1.0
    return [_line(words, page, ordinary) for words in _rows(upright)]


def _line(words: list[Word], page: Page, ordinary: float) -> Saying:
    told = tuple(part for word in words for part in re.sub(r"[\x00-\x1f]", " ", word.text).split())
    return Saying(
        text=" ".join(told),
        words=told,
        size=max(word.glyphs[0].size for word in words) / ordinary,
        top=min(word.box[1] for word in words) / page.height,
        page=page.number,
    )


def _rows(words: list[Word]) -> list[list[Word]]:
    """Words that stand beside each other in letters of one size."""
    rows: list[list[Word]] = []
    for word in words:
        last = rows[-1][-1] if rows else None
        if last and abs(last.box[3] - word.box[3]) < 0.4 * word.glyphs[0].size and 0 <= word.box[0] - last.box[2] < 3 * word.glyphs[0].size:
            rows[-1].append(word)
        else:
            rows.append([word])
    return rows
