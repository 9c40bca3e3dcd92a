"""The order in which a person meets printed values: by page, then down it, then across."""

from collections.abc import Iterable

from service.facts.kept_reading import KeptReading


def in_page_order(entries: Iterable[KeptReading]) -> tuple[KeptReading, ...]:
    """Order entries as their numbers stand in the document."""
    return tuple(sorted(entries, key=lambda e: (e.as_read.page, e.as_read.bbox[1], e.as_read.bbox[0], e.id)))
