"""A person looks at the crop beside a number: confirms it, corrects it, or rejects it."""

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

from service.facts.change import Change
from service.facts.keeping_error import MovedOnError
from service.facts.kept_reading import KeptReading, Standing
from service.facts.reading import Conditions, Limit, Reading
from service.formats.dimensions import Dimension
from service.formats.keys import DIMENSIONS
from service.formats.quantity import read_number, split_quantity
from service.usecases.append_readings import append_readings, figure_in_words
from service.usecases.ports import Store

UNITS = (
    "V",
    "mV",
    "A",
    "mA",
    "uA",
    "W",
    "mW",
    "W/degC",
    "mW/degC",
    "degC",
    "K/W",
    "ohm",
    "mohm",
    "mJ",
    "uJ",
    "nC",
    "pC",
    "nF",
    "pF",
    "s",
    "ms",
    "us",
)
"""Units that a reading may carry, in ASCII, as the sheet schema lists them."""


class UnknownReadingError(LookupError):
    """No reading goes by this identity."""


class NothingCorrectedError(ValueError):
    """A correction says what stands already."""


def confirm(reading_id: str, *, version: int, store: Store, change: Change) -> KeptReading:
    """Say that a printed value was read right.

    Args:
        reading_id: Any of its identities.
        version: The version that the person saw.
        store: Where it is kept.
        change: Who looked, when and why.

    Returns:
        The entry that stands now.

    Raises:
        UnknownReadingError: There is no such reading.
        MovedOnError: It changed after the person looked.
    """
    return _settle(reading_id, version, Standing.CONFIRMED, lambda reading: reading, store, change)


def reject(reading_id: str, *, version: int, store: Store, change: Change) -> KeptReading:
    """Say that a printed value is not what it was taken for; every result that used it is out of date.

    Args, result and errors as in `confirm`.
    """
    return _settle(reading_id, version, Standing.REJECTED, lambda reading: reading, store, change)


def correct(
    reading_id: str,
    *,
    written: str,
    version: int,
    store: Store,
    change: Change,
    limit: Limit | None = None,
    cond: Conditions | None = None,
) -> KeptReading:
    """Say what a printed value really is; every result that used the former one is out of date.

    Args:
        reading_id: Any of its identities.
        written: The value as a person writes it, with its unit and its printed sign: ``2.6 mohm``.
        version: The version that the person saw.
        store: Where it is kept.
        change: Who looked, when and why.
        limit: Which end of the figure it is, where that was wrong too.
        cond: What it holds for, where that was wrong too.

    Returns:
        The entry that stands now.

    Raises:
        UnknownReadingError: There is no such reading.
        MovedOnError: It changed after the person looked.
        UnitError: The value cannot be taken as written; names what is allowed.
        NothingCorrectedError: It says what stands already; confirm it instead.
    """

    def corrected(reading: Reading) -> Reading:
        new = replace(as_written(written, reading), limit=limit or reading.limit, cond=cond or reading.cond)
        if (new.si, new.limit, new.cond) == (reading.si, reading.limit, reading.cond):
            raise NothingCorrectedError(f"{reading.key} already says {figure_in_words(reading)}; confirm it instead")
        return new

    return _settle(reading_id, version, Standing.CORRECTED, corrected, store, change)


def as_written(written: str, reading: Reading) -> Reading:
    """A reading with the number that a person wrote.

    Args:
        written: ``2.6 mohm``.
        reading: The reading; its key says what the value has to measure.

    Raises:
        UnitError: No plain number with a unit of this kind; names what is allowed.
    """
    dimension = DIMENSIONS[reading.key]
    si = read_number(written, reading.key, dimension=dimension)
    number, unit = split_quantity(written) or (Decimal(0), "")
    return replace(reading, value=float(number), unit=_in_ascii(unit, dimension), printed=f"{number:f}", si=si)


def _in_ascii(unit: str, dimension: Dimension) -> str:
    """The sheet schema's spelling of a unit that a person wrote."""
    meant = dimension.spellings[unit]
    return next((spelling for spelling in UNITS if dimension.spellings.get(spelling) == meant), unit)


def _settle(reading_id: str, version: int, standing: Standing, figure: Callable[[Reading], Reading], store: Store, change: Change) -> KeptReading:
    """Add a person's word as the next entry."""
    with store.changing() as shelf:
        before = shelf.readings.find(reading_id)
        if before is None:
            raise UnknownReadingError(f"no printed value goes by {reading_id}; look at the part's page again")
        if before.version != version:
            raise MovedOnError(
                f"{before.reading.key} now says {figure_in_words(before.reading)} ({before.standing}): {before.change.why}; look again"
            )
        entry = replace(before, version=version + 1, reading=figure(before.reading), standing=standing, change=change, settled=change)
        append_readings(shelf, [entry])
    return entry
