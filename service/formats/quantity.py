"""The grammar of a quantity: sign, digits, fraction, unit. ``80 A``, ``3.2 mohm``, ``40 K/W to 60 K/W``, ``160 A for 10 s``.

Digits are the ten of ASCII, and as many as anybody can mean: what cannot be written cannot overflow.
"""

import re
import unicodedata
from dataclasses import dataclass
from decimal import Decimal
from typing import NoReturn

from service.formats.dimensions import Dimension
from service.formats.errors import UnitError
from service.units import factor

LONGEST_TEXT = 80
_NUMBER = re.compile(r"([+\-\u2212]?)([0-9]{1,15}(?:\.[0-9]{0,15})?|\.[0-9]{1,15})(?![0-9.,])\s*(.*)", re.DOTALL)
_TO = re.compile(r"\s+to\s+")
_FOR = re.compile(r"\s+for\s+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """A number or a band, in the house unit of its dimension."""

    low: float
    high: float

    @property
    def centre(self) -> float:
        """The number, or the middle of the band."""
        return self.low if self.low == self.high else float((Decimal(repr(self.low)) + Decimal(repr(self.high))) / 2)


def split_quantity(text: str) -> tuple[Decimal, str] | None:
    """Split a text into its number and the rest, which is the unit as written; None where it does not begin with a plain number."""
    found = _NUMBER.fullmatch(text.strip())
    if found is None:
        return None
    sign, digits, unit = found.groups()
    return Decimal(("-" if sign in ("-", "\u2212") else "") + digits), unicodedata.normalize("NFKC", unit).strip()


def read_number(text: object, key: str = "", *, dimension: Dimension) -> float:
    """Read one number with its unit.

    Args:
        text: What was written.
        key: Where it stands, for the error.
        dimension: What it has to measure.

    Returns:
        The value in the house unit of the dimension.

    Raises:
        UnitError: No text, no plain number, no unit, or a unit of something else; names what is allowed.
    """
    if not isinstance(text, str):
        _refuse(text, dimension, key, f"a {dimension.name} is text with its unit, as in {dimension.example!r}")
    parts = split_quantity(text) if len(text) <= LONGEST_TEXT else None
    if parts is None:
        _refuse(text[:LONGEST_TEXT], dimension, key, _why_no_number(text))
    number, unit = parts
    if not unit:
        _refuse(text, dimension, key, f"a bare number; write its unit, as in {dimension.example!r}")
    if unit not in dimension.spellings:
        _refuse(text, dimension, key, f"{unit!r} is no unit of {dimension.name}")
    if dimension.house == "degC":
        return float(number)
    return float(number * factor(dimension.spellings[unit], to=_house(dimension)))


def read_amount(text: object, key: str = "", *, dimension: Dimension) -> Amount:
    """Read a number or a band ``40 K/W to 60 K/W``.

    Args:
        text: What was written.
        key: Where it stands, for the error.
        dimension: What it has to measure.

    Returns:
        Both ends in the house unit; equal where there is no band.

    Raises:
        UnitError: As `read_number`, or the band runs downwards.
    """
    ends = _TO.split(text) if isinstance(text, str) else [text]
    if len(ends) > 2:
        _refuse(text, dimension, key, "a band has two ends")
    low, high = (read_number(end, key, dimension=dimension) for end in (ends[0], ends[-1]))
    if low > high:
        _refuse(text, dimension, key, "the band runs from high to low")
    return Amount(low=low, high=high)


def split_duration(text: object) -> tuple[object, str | None]:
    """Split ``160 A for 10 s`` into what is carried and for how long; no duration where none is written."""
    parts = _FOR.split(text) if isinstance(text, str) else []
    return (parts[0], parts[1]) if len(parts) == 2 else (text, None)


def _house(dimension: Dimension) -> str:
    """Our own name of the house unit."""
    return dimension.spellings[dimension.house]


def _why_no_number(text: str) -> str:
    """Say what keeps a text from being a plain number, most telling reason first."""
    if len(text) > LONGEST_TEXT:
        return f"longer than {LONGEST_TEXT} characters"
    if re.match(r"\s*[+-]?[0-9]+,[0-9]", text):
        return "a comma in the number; write a decimal point and no thousands mark"
    return "does not begin with a plain number (digits 0 to 9 with a decimal point)"


def _refuse(text: object, dimension: Dimension, key: str, why: str) -> NoReturn:
    """Refuse with everything that the reader needs to mend it."""
    raise UnitError(key=key, value=text, why=why, allowed=f"{dimension.name} in {dimension.allowed}")
