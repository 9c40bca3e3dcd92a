"""A frozen report: never different, only out of date."""

from dataclasses import dataclass
from enum import StrEnum

from service.facts.change import Change


class InputKind(StrEnum):
    """What a result was computed from."""

    READING = "reading"
    TYPED_PART = "typed part"
    BOARD = "board"


@dataclass(frozen=True, slots=True, kw_only=True)
class UsedInput:
    """One input of a result, by identity and version.

    Attributes:
        kind: What it is.
        id: Identity of the reading, key of the typed part, slug of the board.
        version: The version that was used.
        name: What the result used it for: ``rds_on max``.
    """

    kind: InputKind
    id: str
    version: int
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OutOfDate:
    """Why a result no longer speaks of what is known today.

    Attributes:
        result: Identity of the result.
        kind: Which kind of input moved on.
        id: Which input.
        version: The version of it that the result lacks.
        reason: One sentence: what changed, from what to what.
        change: Who changed the input, when and why.
    """

    result: str
    kind: InputKind
    id: str
    version: int
    reason: str
    change: Change


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """A frozen report with what it was made from.

    Attributes:
        id: Identity: made from the report and its inputs, so that the same judgement is one result.
        title: What people call it.
        report: The report as JSON text, byte for byte as judged (schema switchbank.report/1).
        inputs: Everything that it used, by identity and version.
        parts: Keys of the parts that it speaks of.
        board: Slug of the saved board that it judges, where there is one.
        rule_set: maker, trade-80 or eee-inst-002.
        engine_version: Version of the engine.
        typed: Whether a part without a sheet keeps it provisional for good.
        look_at: Readings that no person had settled when it was frozen, by id.
        change: Who asked for it, when and why.
        out_of_date: Why it is out of date, oldest reason first; empty while it is not.
    """

    id: str
    title: str
    report: str
    inputs: tuple[UsedInput, ...]
    parts: tuple[str, ...]
    board: str | None
    rule_set: str
    engine_version: str
    typed: bool
    look_at: tuple[str, ...]
    change: Change
    out_of_date: tuple[OutOfDate, ...] = ()
