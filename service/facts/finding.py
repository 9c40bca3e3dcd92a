"""What the engine says: one finding a check and bank, and the report that holds them all."""

from dataclasses import dataclass, field
from enum import StrEnum

from service.facts.board import Board
from service.facts.sourced import Sourced


class Outcome(StrEnum):
    """The only four words for what was computed."""

    HOLDS = "holds"
    HOLDS_IF = "holds if"
    FAILS = "fails"
    NOT_DETERMINED = "not determined"


class Relation(StrEnum):
    """How a quantity must stand to its threshold."""

    AT_MOST = "<="
    AT_LEAST = ">="
    IS = "is"


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A named quantity with its value and unit."""

    quantity: str
    value: float
    unit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Margin:
    """Limit over demand at both ends; 1 is exactly enough."""

    worst: float
    favourable: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Condition:
    """What decides a *holds if*: a number or a yes/no fact that a person can check.

    Attributes:
        quantity: Name of the open quantity: junction_to_air, board_heat_capacity, recloses_on_current ...
        relation: How it must stand to the value.
        value: The threshold, rounded to the safe side; True or False for a yes/no fact.
        unit: Unit of the threshold, empty for a yes/no fact.
        text: One sentence.
        how: How a person would pin the quantity down, as an instruction.
        effort: How hard that is; less is easier.
    """

    quantity: str
    relation: Relation
    value: float | bool
    unit: str
    text: str
    how: str = ""
    effort: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Input:
    """A fact that a finding used."""

    name: str
    sourced: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumption:
    """A default that a finding used, its band, and how far it may move before the outcome flips.

    Attributes:
        name: Name of the quantity.
        used: Value in the worst corner.
        low: Lower end of its band.
        high: Upper end of its band.
        unit: Its unit.
        flips_at: The value at which the outcome changes; None where it never does.
        basis: What the default rests on.
    """

    name: str
    used: float
    low: float
    high: float
    unit: str
    flips_at: float | None = None
    basis: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class BothEnds:
    """A figure in the favourable and in the worst corner."""

    favourable: float | None
    worst: float | None
    unit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """The answer to one check's question about one bank.

    Attributes:
        check: Name of the check.
        bank: discharge, charge or both.
        outcome: None for a finding without a limit (conduction loss).
        scenario: Whether it is a what-if (short circuit, body diode) that never names the limiting check.
        demand: What is asked, in the worst corner.
        limit: What is allowed, in the worst corner.
        margin: Limit over demand at both ends; for a thermal check the largest current over the claimed one.
        condition: What decides a *holds if*: the one easiest to check or measure.
        conditions: Further thresholds.
        missing: Data that would decide a *not determined*.
        formula: The working in one line.
        inputs: Facts used.
        assumptions: Defaults used.
        values: Figures of both ends by name.
        text: One sentence for a person.
    """

    check: str
    bank: str
    outcome: Outcome | None
    text: str
    scenario: bool = False
    demand: Figure | None = None
    limit: Figure | None = None
    margin: Margin | None = None
    condition: Condition | None = None
    conditions: tuple[Condition, ...] = ()
    missing: tuple[str, ...] = ()
    formula: str = ""
    inputs: tuple[Input, ...] = ()
    assumptions: tuple[Assumption, ...] = ()
    values: dict[str, BothEnds] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Inverse:
    """A largest or least value that still holds, in the worst corner.

    Attributes:
        value: The answer; None where none can be given.
        unit: Its unit.
        check: The check that limits it.
        by_rule_set: The answer under each rule set.
    """

    value: float | None
    unit: str
    check: str | None
    by_rule_set: dict[str, float | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Provisional:
    """Whether a result still waits for a person, and for which readings."""

    value: bool
    look_at: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """Something open that is worth measuring or looking up.

    Attributes:
        quantity: Name of the open quantity.
        low: Lower end of what is thought possible now.
        high: Upper end.
        unit: Its unit.
        decides: How much of the missing margin of some check it could bring, 1 where it alone decides.
        how: What to do, as an instruction.
    """

    quantity: str
    low: float
    high: float
    unit: str
    decides: float
    how: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """All findings of one board under one rule set, and what to measure next, the most telling first."""

    engine_version: str
    rule_set: str
    board: Board
    findings: tuple[Finding, ...]
    limiting: str | None
    provisional: Provisional
    inverse: dict[str, Inverse]
    cautions: tuple[str, ...]
    measure_next: tuple[Measure, ...] = ()
