"""Who changed something, when and why; nothing in the store changes without one."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One person's act.

    Attributes:
        by: The person, or the program that acted for them.
        at: When, ISO 8601 in UTC to the second; for people to read, never to order by.
        why: The reason in words.
    """

    by: str
    at: str
    why: str
