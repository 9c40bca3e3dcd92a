"""What a page's table is made of, between words and readings: lines, columns, entries, candidates."""

from dataclasses import dataclass, field
from enum import StrEnum

from parsers.types import Page, Rule, Word
from service.facts.reading import Box, Conditions, Limit

NOTHING_SAID = Conditions()
"""No conditions at all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """Words on one baseline, left to right.

    Attributes:
        words: Words of the line's own size.
        marks: Small raised words: footnote marks.
        y: Middle of the line. [pt]
        size: Size of its type. [pt]
    """

    words: tuple[Word, ...]
    marks: tuple[Word, ...] = ()
    y: float
    size: float

    @property
    def text(self) -> str:
        """The words with single spaces between."""
        return " ".join(word.text for word in self.words)


class Role(StrEnum):
    """What a column says."""

    LABEL = "label"
    SYMBOL = "symbol"
    CONDITION = "condition"
    UNIT = "unit"
    MIN = "min"
    TYP = "typ"
    MAX = "max"
    VALUE = "value"
    OTHER = "other"

    @property
    def numeric(self) -> bool:
        """Whether values stand in the column."""
        return self in {Role.MIN, Role.TYP, Role.MAX, Role.VALUE}


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """One heading word or phrase.

    Attributes:
        role: What its column says.
        box: Its place.
        text: As printed.
    """

    role: Role
    box: Box
    text: str

    @property
    def middle(self) -> float:
        """Horizontal middle [pt]."""
        return (self.box[0] + self.box[2]) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column of a table.

    Attributes:
        role: What it says.
        x0: Left edge. [pt]
        x1: Right edge. [pt]
        text: Its heading.
        cond: What the heading says of every value below it: a part, a channel, a duration.
        ruled: Whether drawn lines bound it on both sides.
        top: Where it begins, when it is a strip of a wider column. [pt]
        bottom: Where it ends, likewise. [pt]
        middle: Middle of its heading. [pt]
    """

    role: Role
    x0: float
    x1: float
    text: str = ""
    cond: Conditions = NOTHING_SAID
    ruled: bool = False
    top: float = -1e9
    bottom: float = 1e9
    middle: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Region:
    """A heading with the lines below it.

    Attributes:
        page: Where it stands.
        heads: Its heading, left to right.
        top: Upper edge of the heading. [pt]
        heading_bottom: Lower edge of the heading. [pt]
        caption: The text above the heading, up to the text of the paragraph before.
        lines: The lines below, down to the next heading, the notes or the end.
        notes: Footnotes that belong to it, by mark.
        carried: Whether the heading stands on an earlier page or table.
    """

    page: Page
    heads: tuple[Head, ...]
    top: float
    heading_bottom: float
    caption: str
    lines: tuple[Line, ...]
    notes: dict[str, str] = field(default_factory=dict)
    carried: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A region whose columns are known.

    Attributes:
        region: Where it came from.
        layout: Name of the layout family that named the columns.
        columns: Left to right.
        rules: Horizontal rules inside it.
    """

    region: Region
    layout: str
    columns: tuple[Column, ...]
    rules: tuple[Rule, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """The words of one value in its column.

    Attributes:
        column: Where it stands.
        words: Its words.
        marks: Footnote marks beside it.
        said: min, typ or max where the word stands before the number.
        crowded: Whether another value stands in the same column of the line.
    """

    column: Column
    words: tuple[Word, ...]
    marks: tuple[Word, ...] = ()
    said: str = ""
    crowded: bool = False

    @property
    def text(self) -> str:
        """The words with single spaces between."""
        return " ".join(word.text for word in self.words)

    @property
    def box(self) -> Box:
        """Hull of the words."""
        return hull([word.box for word in self.words])


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """What one column says about one entry.

    Attributes:
        own: Text on the entry's own line.
        block: All text of the paragraph that the entry's line belongs to, or that stands centred on a group of entries.
        cell: All text between the drawn lines above and below the entry; empty where none are drawn.
        shared: Text of the paragraph or cell that stands on no other entry's line.
        stray: Words of the entry's line that stand in a column of values and are no value.
        near: The nearest paragraph of the cell where none speaks of the entry.
        centred: Whether the words between the drawn lines stand in the middle of the entries there.
        peers: How many entries stand between those drawn lines.
        marks: Footnote marks beside the text.
    """

    own: str = ""
    block: str = ""
    cell: str = ""
    shared: str = ""
    near: str = ""
    centred: bool = True
    stray: str = ""
    peers: int = 0
    marks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One line of values with what the other columns say about it.

    Attributes:
        table: Where it stands.
        y: Middle of the line. [pt]
        cells: Its values.
        label: Parameter name.
        symbol: Letter symbol.
        condition: Test conditions.
        unit: Unit.
        caption: Caption that rules it: of its section, else of the table.
        box: Hull of the row, labels included.
        channel: Channel that the caption of its table, or of its section, names.
    """

    table: Table
    y: float
    cells: tuple[Cell, ...]
    label: Text
    symbol: Text
    condition: Text
    unit: Text
    caption: str
    box: Box
    channel: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """An entry whose parameter is known.

    Attributes:
        entry: The entry.
        key: What it is.
        sure: Whether words and symbol say the same, or one speaks and the other is silent.
        why: How the name was found, in words.
        head: What of the name goes on below: ``Drain Current`` of ``Drain Current – Continuous``.
    """

    entry: Entry
    key: str
    sure: bool
    why: str
    head: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """A value with its unit and conditions, before evidence is weighed.

    Attributes:
        key: What it is.
        limit: min, typ or max.
        value: The printed number with its sign.
        unit: In ASCII.
        printed: The number's characters.
        si: In base units.
        cond: Conditions.
        page: Counted from 1.
        box: The number.
        row_box: The row.
        quote: The row's words.
        words: The number's words.
        trace: What each stage decided, in words, in order.
        evidence: Evidence of place found so far.
        lacks: What speaks against it, in words.
        flags: Oddities of the sheet that touch it.
        remarks: What a person should know of it whatever its status, in words.
    """

    key: str
    limit: Limit
    value: float
    unit: str
    printed: str
    si: float
    cond: Conditions
    page: int
    box: Box
    row_box: Box
    quote: str
    words: tuple[Word, ...]
    trace: tuple[str, ...] = ()
    evidence: frozenset[str] = frozenset()
    lacks: tuple[str, ...] = ()
    flags: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()


def hull(boxes: list[Box]) -> Box:
    """The smallest box around boxes.

    Args:
        boxes: At least one box.

    Returns:
        Their hull.
    """
    return min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes)


def rounded(box: Box) -> Box:
    """A box to a hundredth of a point: no reader sees finer, and the same file gives the same bytes.

    Args:
        box: Any box.

    Returns:
        The box, rounded.
    """
    return round(box[0], 2), round(box[1], 2), round(box[2], 2), round(box[3], 2)
