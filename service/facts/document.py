"""A file that was taken in: its identity, and how far its reading has come."""

from dataclasses import dataclass
from enum import StrEnum

from service.facts.change import Change


class DocumentState(StrEnum):
    """How far the reading of a kept file has come."""

    WAITING = "waiting"
    READ = "read"
    REFUSED = "refused"


@dataclass(frozen=True, slots=True, kw_only=True)
class Document:
    """A kept file.

    Attributes:
        sha256: Its identity, 64 hexadecimal digits.
        name: The name under which it first came.
        size: [byte]
        taken_in: Who brought it, when and why.
        state: waiting until a reading of it is kept (also after a reading that was cut off).
        reader_version: The reader that last read it; None while it waits.
    """

    sha256: str
    name: str
    size: int
    taken_in: Change
    state: DocumentState = DocumentState.WAITING
    reader_version: str | None = None
