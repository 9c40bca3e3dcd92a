"""Add entries to readings, and mark what used them out of date in the same transaction."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from service.facts.kept_reading import KeptReading, Standing
from service.facts.reading import Conditions, Reading
from service.facts.result import InputKind
from service.usecases.out_of_date import mark_users
from service.usecases.ports import Shelf

TOLD_APART_BY_WORDS = ("note", "where")


def append_readings(shelf: Shelf, entries: Iterable[KeptReading]) -> None:
    """Add entries, each the next of its reading.

    Args:
        shelf: The transaction.
        entries: What to add.

    Raises:
        MovedOnError: Somebody else added an entry meanwhile.
    """
    for entry in entries:
        shelf.readings.append(entry)
        if entry.version == 1:
            continue
        before = {earlier.version: earlier for earlier in shelf.readings.history(entry.id)}
        mark_users(
            shelf,
            kind=InputKind.READING,
            input_id=entry.id,
            version=entry.version,
            reason=lambda version, before=before, entry=entry: moved(before, version, entry),  # type: ignore[misc]
            change=entry.change,
        )


def moved(history: Mapping[int, KeptReading], version: int, now: KeptReading) -> str | None:
    """Say why a result that used a version of a reading is out of date; None where what it used still stands."""
    used = history[version]
    name = f"{now.reading.key} {now.reading.limit} on page {now.as_read.page}"
    if not now.usable:
        waits = "was rejected" if now.standing is Standing.REJECTED else "waits for review again"
        return f"{name} {waits}: {now.change.why}"
    if not same_figure(used.reading, now.reading):
        return f"{name} was {figure_in_words(used.reading)}, now it is {figure_in_words(now.reading)}: {now.change.why}"
    return None


def same_figure(one: Reading, other: Reading) -> bool:
    """Whether two readings say the same: the number, which end it is, and what it holds for; not how a reader worded its remarks."""
    return (one.limit, _decided_by(one.cond)) == (other.limit, _decided_by(other.cond)) and _near(one.si, other.si)


def figure_in_words(reading: Reading) -> str:
    """A number as printed, with its unit and the end that it is."""
    return f"{reading.printed} {reading.unit} ({reading.limit})"


def _decided_by(cond: Conditions) -> Conditions:
    """Conditions without remarks."""
    return replace(cond, **dict.fromkeys(TOLD_APART_BY_WORDS))


def _near(one: float, other: float) -> bool:
    """Whether two numbers are the same print: 2.4 times a thousandth differs from 0.0024 in the sixteenth digit."""
    return abs(one - other) <= 1e-9 * max(abs(one), abs(other))
