"""A part number: the names it goes by, its datasheets, and what a person typed where there is no sheet."""

from dataclasses import dataclass
from enum import StrEnum

from service.facts.change import Change
from service.facts.switch import Switch

LONGEST_MARKING = 60
"""Characters of a marking or a name at most; no package has room for more, and no order list for a longer code."""


def part_key(marking: str) -> str:
    """Reduce a marking to the form in which two spellings of one part are equal.

    Args:
        marking: As printed or typed: ``ab-75 n40``.

    Returns:
        Its letters and digits in capitals: ``AB75N40``.
    """
    return "".join(letter for letter in marking.upper() if letter.isalnum())


def wanted_key(marking: str) -> str:
    """Reduce a marking with characters in doubt to the form in which two spellings are equal.

    Args:
        marking: As read off a board: ``ab-75 n?0``.

    Returns:
        Its letters, digits and question marks in capitals: ``AB75N?0``.
    """
    return "".join(letter for letter in marking.upper() if letter.isalnum() or letter == "?")


class NameKind(StrEnum):
    """What a name of a part is."""

    PART_NUMBER = "part number"
    TOP_MARKING = "top marking"
    ORDERING_CODE = "ordering code"


@dataclass(frozen=True, slots=True, kw_only=True)
class PartName:
    """One name of a part.

    Attributes:
        part: Key of the part.
        text: As printed.
        kind: What the name is.
        fold: The text with characters that eye and OCR confuse made equal.
        change: Who gave the name, when and why.
    """

    part: str
    text: str
    kind: NameKind
    fold: str
    change: Change


@dataclass(frozen=True, slots=True, kw_only=True)
class TypedPart:
    """What a person typed of a part without a sheet; each typing supersedes the one before.

    Attributes:
        part: Key of the part.
        version: 1 for the first typing.
        switch: The figures; its ``typed`` is true, so that a result of it stays provisional.
        change: Who typed it, when and why.
    """

    part: str
    version: int
    switch: Switch
    change: Change


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A part with all that the store knows under its name.

    Attributes:
        key: Identity, see `part_key`.
        marking: As first printed or typed.
        names: Every name that it goes by.
        sheets: Its datasheets by SHA-256, the one to use first.
        typed: The latest typing, where there is one.
    """

    key: str
    marking: str
    names: tuple[PartName, ...] = ()
    sheets: tuple[str, ...] = ()
    typed: TypedPart | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """A part that waits for a datasheet.

    Attributes:
        marking: As read off the board, ``?`` for a character in doubt.
        package: As seen, empty where nobody said.
        pins: As counted.
        phrase: What to search for, to copy; nothing is sent.
        change: Who put it on the list, when and why.
    """

    marking: str
    package: str
    pins: int | None
    phrase: str
    change: Change
