"""A quantity as text or as a table ``{value = "47 K/W", known = "measured", by = ..., on = ..., with = ...}``, and back."""

import datetime as dt
from dataclasses import replace
from decimal import Decimal

from service.facts.sourced import Attestation, Known, Sourced
from service.formats import dimensions as d
from service.formats.dimensions import Dimension
from service.formats.errors import Problem, UnitError
from service.formats.quantity import Amount, read_amount
from service.formats.table import Table

DETAILS = ("value", "known", "by", "on", "with", "basis")
DEGREE_C = "\N{DEGREE SIGN}C"
# Why these: written with a prefix the number is one that a person would write.
PREFERRED = {"degC": (DEGREE_C, 0), "ohm": ("mohm", 3), "H": ("uH", 6), "F": ("pF", 12), "C": ("nC", 9), "J": ("mJ", 3)}


def read_sourced(written: object, key: str, *, dimension: Dimension, zero: bool = False) -> Sourced:
    """Read a quantity with how it is known.

    Args:
        written: Text, or a table with `DETAILS`.
        key: Where it stands.
        dimension: What it has to measure.
        zero: Whether nought makes sense.

    Returns:
        The quantity in its house unit; typed unless something else is said.

    Raises:
        UnitError: Anything wrong with it; the first problem of its table.
    """
    if not isinstance(written, dict):
        return _sourced(_plausible(read_amount(written, key, dimension=dimension), dimension, key=key, written=written, zero=zero), dimension)
    problems: list[Problem] = []
    table = Table(written, at="", problems=problems)
    known = Known(table.choice("known", tuple(Known), default=Known.TYPED))
    attested = Attestation(by=table.text("by"), on=_day(table), instrument=table.text("with"))
    basis = table.text("basis") or ""
    value = table.raw("value")
    table.finish()
    if problems:
        raise UnitError(key=key, value=written, why=f"{problems[0].key}: {problems[0].why}", allowed=problems[0].allowed)
    amount = _plausible(read_amount(value, key, dimension=dimension), dimension, key=key, written=value, zero=zero)
    return replace(_sourced(amount, dimension), known=known, attested=attested if attested != Attestation() else None, name=basis)


def _plausible(amount: Amount, dimension: Dimension, *, key: str, written: object, zero: bool) -> Amount:
    """Refuse what no board can have; below nought only temperatures make sense."""
    if dimension is d.TEMPERATURE:
        if not -100 <= amount.low <= amount.high <= 500:
            raise UnitError(key=key, value=written, why="no temperature of a board", allowed="-100 degC to 500 degC")
    elif amount.low < 0 or (amount.low == 0 and not zero):
        least = "at least" if zero else "above"
        raise UnitError(key=key, value=written, why="too small", allowed=f"a {dimension.name} {least} 0 {dimension.house}")
    return amount


def _sourced(amount: Amount, dimension: Dimension) -> Sourced:
    """A fact that was typed: one number, or a band with its centre."""
    band = amount.low != amount.high
    return Sourced(
        value=amount.centre,
        unit=dimension.house,
        low=amount.low if band else None,
        high=amount.high if band else None,
        known=Known.TYPED,
    )


def sourced_text(fact: Sourced) -> str:
    """Write a quantity's number and unit so that reading it gives the same number again."""
    if not fact.is_band:
        return quantity_text(fact.value, fact.unit)
    return f"{quantity_text(fact.least, fact.unit)} to {quantity_text(fact.most, fact.unit)}"


def sourced_json(fact: Sourced, *, text: str | None = None) -> object:
    """Write a quantity: text where it was simply typed, otherwise a table that says how it is known."""
    attested = fact.attested or Attestation()
    details = {"by": attested.by, "on": attested.on, "with": attested.instrument, "basis": fact.name or None}
    said = {name: detail for name, detail in details.items() if detail is not None}
    written = text or sourced_text(fact)
    return written if fact.known is Known.TYPED and not said else {"value": written, "known": fact.known.value, **said}


def quantity_text(value: float, unit: str) -> str:
    """Write one number with its unit: ``3.2 mohm``."""
    shown, places = PREFERRED.get(unit, (unit, 0))
    if unit == "s" and 0 < value < 1:
        shown, places = ("ms", 3) if value >= 1e-3 else ("us", 6)
    number = Decimal(repr(value)).scaleb(places)
    return f"{plain(number)} {shown}"


def plain(number: Decimal) -> str:
    """Write a number without exponent and without trailing noughts."""
    text = format(number, "f")
    return text.rstrip("0").rstrip(".") if "." in text else text


def _day(table: Table) -> str | None:
    """A date as TOML or JSON writes it."""
    value = table.raw("on")
    if isinstance(value, dt.date) and not isinstance(value, dt.datetime):
        return value.isoformat()
    try:
        return None if value is None else dt.date.fromisoformat(str(value)).isoformat()
    except ValueError:
        table.note("on", value, why="not a date", allowed="a date like 2026-11-02")
        return None
