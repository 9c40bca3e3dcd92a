"""What the stages hand to each other: one frozen type a stage.

All boxes are x0, top, x1, bottom in points from the top left of the page as shown (CropBox and /Rotate applied).
"""

from dataclasses import dataclass
from enum import StrEnum

from service.facts.reading import Box


@dataclass(frozen=True, slots=True, kw_only=True)
class Glyph:
    """One character on a page.

    Attributes:
        text: What it extracts as, after repair.
        box: Its place.
        font: Name of its font.
        size: Size of its font as shown. [pt]
        upright: Whether it stands upright on the page as shown.
        repaired: Whether the text was repaired (a Symbol font, a decimal glyph name).
        doubt: Signs of doubt that touch this very glyph: pale, hidden (stands for a picture), cut (partly clipped), covered (by a picture),
            overlapped, crossed, annotated, symbol_font (the second reader does not confirm the repair), unmapped, sign_apart (the sign before
            it stands far off), uneven_gap (another number stands oddly near).
    """

    text: str
    box: Box
    font: str
    size: float
    upright: bool = True
    repaired: bool = False
    doubt: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """Glyphs that stand together.

    Attributes:
        text: Their text; footnote marks of a smaller size are words of their own.
        box: Their hull.
        glyphs: The glyphs, left to right.
        second: What the second reader sees in the same box; None where it was not asked.
    """

    text: str
    box: Box
    glyphs: tuple[Glyph, ...]
    second: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A drawn line, or the edge of a drawn box: horizontal when top equals bottom, vertical when x0 equals x1."""

    x0: float
    top: float
    x1: float
    bottom: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """One page as shown; a page of turned text is turned first, and all places are those on the turned page.

    Attributes:
        number: Counted from 1.
        width: [pt]
        height: [pt]
        words: In reading order.
        rules: Drawn lines.
        pictures: Boxes of bitmaps.
        turned: Degrees by which the page was turned clockwise before it was read: 0, 90, 180 or 270.
        hidden: How many characters its text holds that no viewer shows, such as leftovers under a white box; they are in no word.
    """

    number: int
    width: float
    height: float
    words: tuple[Word, ...]
    rules: tuple[Rule, ...]
    pictures: tuple[Box, ...] = ()
    turned: int = 0
    hidden: int = 0

    def as_shown(self, box: Box) -> Box:
        """Where a place on this page lies on the page as a viewer shows it.

        Args:
            box: A place on this page.

        Returns:
            The same one unless the page was turned.
        """
        x0, top, x1, bottom = box
        match self.turned:
            case 90:
                return top, self.width - x1, bottom, self.width - x0
            case 180:
                return self.width - x1, self.height - bottom, self.width - x0, self.height - top
            case 270:
                return self.height - bottom, x0, self.height - top, x1
        return box


class TextLayer(StrEnum):
    """How much of the document's text can be trusted to be text."""

    GOOD = "good"
    GARBLED = "garbled"
    NONE = "none"


@dataclass(frozen=True, slots=True, kw_only=True)
class Document:
    """An opened document: triage of all pages by the fast reader, before the slow reader opens the chosen ones.

    Attributes:
        data: The file's bytes.
        sha256: Identity of the file.
        pages: How many pages it has.
        page_text: Plain text of every page, by the fast reader.
        chosen: Pages worth reading in full, counted from 1.
        text_layer: What the text layer is worth.
    """

    data: bytes
    sha256: str
    pages: int
    page_text: tuple[str, ...]
    chosen: tuple[int, ...]
    text_layer: TextLayer
