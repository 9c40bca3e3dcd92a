"""The family in which each part of the sheet has a column of values of its own."""

from parsers.family import Family, Meaning
from parsers.grid import Head, Role
from service.facts.reading import Conditions


def _read(heads: tuple[Head, ...]) -> tuple[Meaning, ...] | None:
    parts = [head for head in heads if head.role is Role.VALUE and any(letter.isdigit() for letter in head.text)]
    if len(parts) < 2:
        return None
    return tuple(Meaning(head=head, cond=Conditions(part=head.text) if head in parts else Conditions()) for head in heads)


FAMILY = Family(name="part columns", sentence="One column of values for each part that the sheet covers.", read=_read)
