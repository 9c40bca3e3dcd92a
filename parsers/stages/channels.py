"""Which channel a whole table speaks of, where a sheet gives each channel a table, or a section of one, of its own."""

from collections.abc import Sequence
from dataclasses import replace

from parsers.grid import Entry


def told_apart_by_table(tables: Sequence[tuple[Entry, ...]]) -> list[tuple[Entry, ...]]:
    """Keep the channels that captions name where the captions of a sheet name both; elsewhere a caption only repeats the title.

    Args:
        tables: Entries of each table, with the channel that the caption above them names.

    Returns:
        The same entries, with the channel of their table or with none.
    """
    named = {entry.channel for entries in tables for entry in entries if entry.channel}
    return [tuple(replace(entry, channel=entry.channel if len(named) > 1 else None) for entry in entries) for entries in tables]
