"""What differs between two datasheets of a part: revisions of one maker, or two makers."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from service.facts.kept_reading import KeptReading, Standing
from service.facts.reading import Conditions, Limit
from service.usecases.ports import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """A printed value on which two sheets do not agree.

    Attributes:
        key: What it is.
        limit: Which end.
        cond: What it holds for; of both the same.
        before: The entries of the earlier sheet, several where it prints several figures; empty where it prints none.
        now: The same of the later sheet.
    """

    key: str
    limit: Limit
    cond: Conditions
    before: tuple[KeptReading, ...]
    now: tuple[KeptReading, ...]


def compare_revisions(before: str, now: str, *, store: Store) -> tuple[Difference, ...]:
    """Lay two sheets side by side.

    Args:
        before: SHA-256 of the earlier one.
        now: SHA-256 of the later one.
        store: Where they are kept.

    Returns:
        What differs, in the order of the later sheet; what only the earlier one prints comes last.
    """
    with store.looking() as shelf:
        return differences(shelf.readings.of_sheet(before), shelf.readings.of_sheet(now))


Place = tuple[str, Limit, Conditions]


def differences(before: Iterable[KeptReading], now: Iterable[KeptReading]) -> tuple[Difference, ...]:
    """Compare the figures of two sheets: same key, same end, same conditions; rejected readings count for nothing.

    Args:
        before: Entries that stand, of the earlier sheet.
        now: The same of the later one.
    """
    earlier, later = _by_place(before), _by_place(now)
    places = dict.fromkeys((*later, *earlier))
    return tuple(
        Difference(key=place[0], limit=place[1], cond=place[2], before=earlier.get(place, ()), now=later.get(place, ()))
        for place in places
        if _figures(earlier.get(place, ())) != _figures(later.get(place, ()))
    )


def _by_place(entries: Iterable[KeptReading]) -> dict[Place, tuple[KeptReading, ...]]:
    """Entries by what they say something about; a headline and its table row speak of the same."""
    found: dict[Place, tuple[KeptReading, ...]] = {}
    for entry in entries:
        if entry.standing is not Standing.REJECTED:
            place = (entry.reading.key, entry.reading.limit, replace(entry.reading.cond, where=None, note=None))
            found[place] = (*found.get(place, ()), entry)
    return found


def _figures(entries: Iterable[KeptReading]) -> frozenset[float]:
    """The numbers, to the digits that print can tell apart."""
    return frozenset(float(f"{entry.reading.si:.9g}") for entry in entries)
