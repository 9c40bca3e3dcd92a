"""Channels of a part with two switches: ``Q1``, ``Q2``, ``N-Ch``, ``P-Channel``."""

import re

_CHANNEL = re.compile(r"(?<![A-Za-z0-9-])(?:Q(?P<number>[12])(?![A-Za-z0-9])|(?P<polarity>[NP])[- ]?ch(?:annel)?(?![A-Za-z]))", re.IGNORECASE)


def channel_named(text: str) -> str | None:
    """The one channel that a text names.

    Args:
        text: Words of a heading or a row.

    Returns:
        ``Q1`` or ``Q2``; the N-channel switch of a mixed part is the first; None where no channel, or both, are named.
    """
    found = _channels(text)
    return found.pop() if len(found) == 1 else None


def channels_in(text: str) -> int:
    """How many different channels a text names."""
    return len(_channels(text))


def _channels(text: str) -> set[str]:
    """Channels by their numbers, else by their polarity: ``Q2 N-Channel`` is the second."""
    hits = list(_CHANNEL.finditer(text))
    return {f"Q{hit['number']}" for hit in hits if hit["number"]} or {{"n": "Q1", "p": "Q2"}[hit["polarity"].lower()] for hit in hits}
