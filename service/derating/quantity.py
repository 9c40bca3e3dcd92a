"""A quantity that a judgement rests on, with its favourable, nominal and worst value, and how a person would pin it down."""

from collections.abc import Mapping
from dataclasses import dataclass

from service.facts.sourced import Known, Sourced

# What a calculation starts from: a plain number (or an array, one entry a board) for each quantity, by key.
Point = Mapping[str, float]

DEFAULTS = frozenset({Known.ASSUMED, Known.CLASS_DEFAULT})


@dataclass(frozen=True, slots=True, kw_only=True)
class Wording:
    """How a quantity is spoken of and pinned down.

    Attributes:
        phrase: A clause with {value} in it that says the safe side: "each switch sheds heat at {value} or better".
        how: How to measure or check it, as an instruction.
        effort: How hard that is; of several thresholds the one with the least effort is named.
        lowest: Least value that is physically thinkable; thresholds are sought from here.
        highest: Largest such value.
    """

    phrase: str
    how: str
    effort: int
    lowest: float
    highest: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity:
    """One number of a judgement at its three ends.

    Attributes:
        key: Its name within a point; begins with ``discharge_`` or ``charge_`` where the banks' parts differ.
        name: Its public name: junction_to_air, on_resistance, gate_voltage ...
        unit: Its house unit.
        favourable: The end that helps the board.
        nominal: Typical value or centre of the band; for figures and plots.
        worst: The end that hurts the board.
        sourced: The fact or the default behind it.
        wording: How it is spoken of; None for what is never a condition.
        follows: Key of the quantity that it goes with: the on-resistance goes with the gate voltage.
    """

    key: str
    name: str
    unit: str
    favourable: float
    nominal: float
    worst: float
    sourced: Sourced
    wording: Wording | None = None
    follows: str | None = None

    @property
    def is_open(self) -> bool:
        """Whether its two ends differ, so that an outcome may depend on it."""
        return self.favourable != self.worst

    @property
    def is_default(self) -> bool:
        """Whether nobody stated it: a default of its class, or an assumption."""
        return self.sourced.known in DEFAULTS
