"""What a datasheet prints, as data: a reading with its conditions, its place and the evidence for it; a sheet with all of them."""

from dataclasses import dataclass, field
from enum import StrEnum

Box = tuple[float, float, float, float]


class Limit(StrEnum):
    """Which end of a printed figure: least, typical or most."""

    MIN = "min"
    TYP = "typ"
    MAX = "max"


@dataclass(frozen=True, slots=True, kw_only=True)
class Conditions:
    """What a printed figure holds for; plain numbers in V, A and degrees Celsius, text where the sheet uses words.

    Attributes:
        vgs: Gate-source voltage. [V]
        id: Drain current. [A]
        is_: Diode current; ``is`` in JSON. [A]
        vds: Drain-source voltage. [V]
        tc: Case or mounting-base temperature. [degC]
        ta: Ambient temperature. [degC]
        tsp: Solder-point or lead temperature. [degC]
        tj: Junction temperature. [degC]
        t: Duration: "10 s", "steady".
        ch: Channel of a part with several switches: "Q1".
        part: The part, where a sheet covers several.
        limited_by: "package" or "silicon".
        where: "headline" or "footnote", when not in a table.
        sign: "+-" for a rating of both signs.
        note: Anything else that the row says.
    """

    vgs: float | None = None
    id: float | None = None
    is_: float | None = None
    vds: float | None = None
    tc: float | None = None
    ta: float | None = None
    tsp: float | None = None
    tj: float | None = None
    t: str | None = None
    ch: str | None = None
    part: str | None = None
    limited_by: str | None = None
    where: str | None = None
    sign: str | None = None
    note: str | None = None


class Status(StrEnum):
    """Whether independent evidence agrees (accepted) or a person has to look first (review)."""

    ACCEPTED = "accepted"
    REVIEW = "review"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One printed value.

    Attributes:
        id: A name made from file, key, limit, page and place.
        key: What it is: vds_max, rds_on ...
        limit: min, typ or max.
        value: The printed number with its printed sign.
        unit: Its printed unit in ASCII: V mV A mA uA W mW W/degC mW/degC degC K/W ohm mohm mJ uJ nC pC pF nF s ms us.
        printed: The very characters of the number.
        si: The signed number in base units.
        cond: What it holds for.
        status: accepted or review.
        evidence: Codes of the closed list: second_reader, row, column, unit, condition, headline, identity:NAME.
        why: The status in words.
        flags: Oddities of the sheet that touch this value.
        page: Counted from 1.
        bbox: The number, in points from the top left of the page as shown.
        row_bbox: What a person is shown.
        quote: The words of the row.
        trace: How it was read, stage by stage, in words: what ``read --explain`` shows.
    """

    id: str
    key: str
    limit: Limit
    value: float
    unit: str
    printed: str
    si: float
    cond: Conditions
    status: Status
    evidence: tuple[str, ...]
    why: str
    flags: tuple[str, ...] = ()
    page: int
    bbox: Box
    row_bbox: Box
    quote: str
    trace: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Unaccounted:
    """A table row that is neither read nor left on purpose."""

    page: int
    bbox: Box
    quote: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """Why a document yields no readings.

    Attributes:
        kind: not_a_pdf, damaged, encrypted, too_large, too_slow, no_text, not_a_datasheet or other_component.
        seems_to_be: What the document seems to be (closed list of the sheet schema), None where nobody can tell.
        detail: What, where, how much and what to do, in words.
    """

    kind: str
    seems_to_be: str | None
    detail: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """Everything read from one file.

    Attributes:
        reader_version: Version of the reader.
        file: Base name of the file.
        sha256: Identity of the file.
        part: Main part number.
        also: Further part numbers that the sheet covers.
        manufacturer: Maker as printed.
        polarity: N, P, N+N, P+P or N+P.
        package: As printed.
        revision: Revision or date as printed.
        pages: Number of pages.
        text_layer: good, garbled or none.
        readings: Every value read.
        unaccounted: Rows that nobody has taken a decision about.
        flags: Oddities of the sheet.
        refused: Why nothing could be read, or None.
        isolation: What the reading child's jail achieved, step by step.
    """

    reader_version: str
    file: str
    sha256: str
    part: str | None = None
    also: tuple[str, ...] = ()
    manufacturer: str | None = None
    polarity: str | None = None
    package: str | None = None
    revision: str | None = None
    pages: int = 0
    text_layer: str | None = None
    readings: tuple[Reading, ...] = ()
    unaccounted: tuple[Unaccounted, ...] = ()
    flags: tuple[str, ...] = ()
    refused: Refused | None = None
    isolation: dict[str, str] = field(default_factory=dict)
