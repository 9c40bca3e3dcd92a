"""A reading with its history: a stable identity, a version, and how far it may be trusted."""

from dataclasses import dataclass
from enum import StrEnum

from service.facts.change import Change
from service.facts.reading import Reading


class Standing(StrEnum):
    """The one rule for trust: evidence accepts or asks for review; a person confirms, corrects or rejects."""

    ACCEPTED = "accepted"
    REVIEW = "review"
    CONFIRMED = "confirmed"
    CORRECTED = "corrected"
    REJECTED = "rejected"


USABLE = frozenset({Standing.ACCEPTED, Standing.CONFIRMED, Standing.CORRECTED})
BY_A_PERSON = frozenset({Standing.CONFIRMED, Standing.CORRECTED, Standing.REJECTED})


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptReading:
    """One entry of a reading's history; the one with the largest version stands.

    Attributes:
        id: Stable identity: the id that the first reader gave, whatever later readers call the same place.
        version: 1 for the first entry; each later entry supersedes the one before.
        sha256: The file that it was read from.
        reading: What stands as of this entry: a person's correction, else what the reader saw.
        as_read: What the reader last saw at the place, whatever a person made of it.
        standing: How far it may be trusted.
        reader_version: The reader that last looked at the place.
        change: Who made this entry, when and why.
        settled: The person's act that the standing rests on; it follows through later readings of the same place.
    """

    id: str
    version: int
    sha256: str
    reading: Reading
    as_read: Reading
    standing: Standing
    reader_version: str
    change: Change
    settled: Change | None = None

    @property
    def usable(self) -> bool:
        """Whether a result may use it."""
        return self.standing in USABLE

    @property
    def seen_by_a_person(self) -> bool:
        """Whether a person has settled it; a result stays provisional until all that it uses are."""
        return self.standing in BY_A_PERSON
