"""What a layout family is."""

from collections.abc import Callable
from dataclasses import dataclass

from parsers.grid import NOTHING_SAID, Head
from service.facts.reading import Conditions


@dataclass(frozen=True, slots=True, kw_only=True)
class Meaning:
    """What one heading says of the values below it.

    Attributes:
        head: The heading.
        cond: What it says of every value below it.
    """

    head: Head
    cond: Conditions = NOTHING_SAID


@dataclass(frozen=True, slots=True, kw_only=True)
class Family:
    """A layout family.

    Attributes:
        name: In words, as shown with a reading.
        sentence: How it looks, in a sentence for people.
        read: From headings to their meaning; None where the family does not know the heading.
    """

    name: str
    sentence: str
    read: Callable[[tuple[Head, ...]], tuple[Meaning, ...] | None]
