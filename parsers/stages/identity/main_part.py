"""Chooses the main part number: large, high on the first page, and again on every page."""

import re
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from parsers.stages.identity.part_number import candidates_in, plain_number
from parsers.stages.identity.saying import Saying


@dataclass(slots=True, kw_only=True)
class Candidate:
    """A word that may be the part number.

    Attributes:
        text: As first printed.
        size: Largest relative size at which it stands.
        top: Highest place on a page, 0 to 1.
        order: Where it was met first.
        times: How often it stands on the first pages.
        pages: On how many pages of the document it stands.
    """

    text: str
    order: int
    size: float = 0.0
    top: float = 1.0
    times: int = 0
    pages: int = 0

    def weight(self, all_pages: int) -> float:
        """How much speaks for it."""
        return 4 * min(self.size, 3.5) + 3 * (self.top < 0.25) + 6 * self.pages / max(all_pages, 1) + min(self.times, 6) - 0.01 * self.order

    def shares_title_with(self, other: "Candidate") -> bool:
        """Whether the other stands as large, not lower, and on as many pages or nearly so."""
        return other.size >= 0.97 * self.size and other.size > 1 and other.top <= self.top + 0.03 and other.pages >= 0.5 * self.pages


def ranked(sayings: Sequence[Saying], page_text: Sequence[str]) -> list[Candidate]:
    """All candidates, the likeliest first."""
    found: dict[str, Candidate] = {}
    for saying in sayings:
        for word in saying.words:
            for text in candidates_in(word):
                one = found.setdefault(plain_number(text), Candidate(text=text, order=len(found)))
                one.size, one.top, one.times = max(one.size, saying.size), min(one.top, saying.top), one.times + 1
    _count_pages(found, page_text)
    likely = sorted(found.values(), key=lambda one: -one.weight(len(page_text)))
    return _first_of_title(likely)


def _first_of_title(likely: list[Candidate]) -> list[Candidate]:
    """Where a title names several parts in letters of one size, the first is the main one."""
    equals = [one for one in likely if likely[0].shares_title_with(one)]
    first = min(equals, key=lambda one: one.order, default=None)
    return likely if first is None else [first, *(one for one in likely if one is not first)]


def _count_pages(found: dict[str, Candidate], page_text: Sequence[str]) -> None:
    on_pages: dict[str, int] = defaultdict(int)
    for text in page_text:
        for number in {plain_number(part) for word in re.split(r"\s+", text) for part in candidates_in(word)}:
            on_pages[number] += 1
    for number, one in found.items():
        one.pages = on_pages[number]
