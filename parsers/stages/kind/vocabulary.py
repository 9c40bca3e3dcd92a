"""How the words of one kind of document are written down."""

import re
from dataclasses import dataclass

TITLE = 350  # characters: a maker's line, a title, a part number


@dataclass(frozen=True, slots=True, kw_only=True)
class Vocabulary:
    """Words that speak for one kind of document.

    Attributes:
        kind: The kind, from the closed list of the sheet schema.
        title: Patterns that name it in the first words; one of them counts six times.
        opening: Patterns that speak for it where the document begins; each counts three times.
        body: Patterns that speak for it anywhere; each counts once.
    """

    kind: str
    title: tuple[str, ...] = ()
    opening: tuple[str, ...]
    body: tuple[str, ...] = ()

    def score(self, opening: str, body: str) -> int:
        """Weigh how much of it a document uses; the texts are plain."""
        return 6 * self.is_title_of(opening) + 3 * sum(_hits(self.opening, opening)) + sum(_hits(self.body, body))

    def is_title_of(self, opening: str) -> bool:
        """Whether a document names itself so in its first words."""
        return any(_hits(self.title, opening[:TITLE]))


def _hits(patterns: tuple[str, ...], text: str) -> list[bool]:
    return [bool(re.search(one, text)) for one in patterns]
