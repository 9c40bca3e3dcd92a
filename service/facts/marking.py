"""What a marking read off a board may stand for."""

from dataclasses import dataclass

from service.facts.part import PartName


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """A known name that may be what was seen.

    Attributes:
        name: The name and, in it, the part.
        cost: How much has to be explained away: 0 for the very same characters.
        reason: Why it may be meant, in words.
    """

    name: PartName
    cost: float
    reason: str
