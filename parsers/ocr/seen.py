"""What a picture reader sees, and which reader this process has."""

from collections.abc import Callable
from dataclasses import dataclass

import pypdfium2 as pdfium

from parsers.errors import NoTextError
from parsers.types import Rule
from service.facts.reading import Box


@dataclass(frozen=True, slots=True, kw_only=True)
class Character:
    """One character of a picture.

    Attributes:
        text: What it was taken for.
        box: Its place on the page as shown. [pt]
        certainty: How sure the reader is, 0 to 1.
    """

    text: str
    box: Box
    certainty: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A piece of a line of text.

    Attributes:
        characters: Left to right; a space has no place of its own and is left out.
        spaces: Before which of the characters a space was seen.
        box: Its place on the page as shown. [pt]
    """

    characters: tuple[Character, ...]
    spaces: frozenset[int]
    box: Box


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What was seen at one scale.

    Attributes:
        strips: Pieces of text.
        rules: Drawn lines.
    """

    strips: tuple[Strip, ...]
    rules: tuple[Rule, ...]


Look = Callable[[pdfium.PdfPage, int], Seen]
"""Draws a page with so many pixels along its longer side, and reads it."""

_HOW = (
    "The pages are pictures, and no reader for pictures is installed; install it with pip install 'switchbank[ocr]' and read the file again, "
    "or type the values by hand."
)
_looks: list[Look] = []


def use(look: Look) -> None:
    """Let this process read pictures from here on.

    Args:
        look: The reader.
    """
    _looks[:] = [look]


def look() -> Look:
    """The reader of this process.

    Raises:
        NoTextError: It has none; says how to get one.
    """
    if not _looks:
        raise NoTextError(_HOW)
    return _looks[0]
