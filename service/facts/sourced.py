"""A value with its unit, how it is known, and where it stands."""

from dataclasses import dataclass
from enum import StrEnum

from service.facts.source import Source


class Known(StrEnum):
    """How a fact is known: a kind of evidence, not an outcome."""

    PRINTED = "printed"
    TYPED = "typed"
    COUNTED = "counted"
    MEASURED = "measured"
    CLAIMED = "claimed"
    CLASS_DEFAULT = "class_default"
    ASSUMED = "assumed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Attestation:
    """Who says so, when, and with what instrument.

    Attributes:
        by: The person.
        on: ISO 8601 date.
        instrument: What it was measured with.
    """

    by: str | None = None
    on: str | None = None
    instrument: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Sourced:
    """A number that never travels without its unit and its place.

    Attributes:
        value: The number in the unit; the centre where a band is given.
        unit: House unit in ASCII: V A W ohm degC K K/W J J/K s H m mm2 1.
        known: How it is known.
        low: Lower end of the band, where the value is not a single number.
        high: Upper end of the band.
        source: The place on a page, for a printed value.
        attested: Who measured or typed it, for a measured or typed value.
        name: What a class default or an assumption rests on, in words.
    """

    value: float
    unit: str
    known: Known
    low: float | None = None
    high: float | None = None
    source: Source | None = None
    attested: Attestation | None = None
    name: str = ""

    @property
    def least(self) -> float:
        """The lower end: the band's, or the value itself."""
        return self.value if self.low is None else self.low

    @property
    def most(self) -> float:
        """The upper end: the band's, or the value itself."""
        return self.value if self.high is None else self.high

    @property
    def is_band(self) -> bool:
        """Whether the value is known only between two ends."""
        return self.least != self.most
