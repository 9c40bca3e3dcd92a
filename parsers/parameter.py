"""What the reader has to know about one datasheet parameter."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from service.facts.reading import Limit


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """One parameter: how sheets spell it, in what it is given, what is plausible, and what stands beside it.

    Attributes:
        key: As in a reading.
        symbols: Patterns that a whole letter symbol fits, squeezed: capitals and digits only, ``RDS(on)`` as ``RDSON``.
        words: Patterns found in its name, squeezed: small letters only, ``Drain-Source Voltage`` as ``drainsourcevoltage``.
        never: Patterns that speak against it in the squeezed name.
        units: Units that it may carry.
        low: Least plausible magnitude. [base units]
        high: Largest plausible magnitude. [base units]
        single: What a lone Value, Rating or Limit column means.
        limits: Limits in which it is taken; a rating is a maximum only.
        renames: What a column means here when not what its heading says: both columns of a gate rating are ratings.
        keeps: Conditions that are kept with it where they stand beside it.
        needs: Of these at least one must stand beside it, or in the caption, for it to be trusted.
    """

    key: str
    symbols: tuple[str, ...]
    words: tuple[str, ...]
    never: tuple[str, ...] = ()
    units: tuple[str, ...]
    low: float
    high: float
    single: Limit = Limit.MAX
    limits: tuple[Limit, ...] = (Limit.MIN, Limit.TYP, Limit.MAX)
    renames: Mapping[Limit, Limit] = field(default_factory=dict)
    keeps: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
