"""The family with one column of values: Value, Rating or Limit."""

from parsers.family import Family, Meaning
from parsers.grid import Head


def _read(heads: tuple[Head, ...]) -> tuple[Meaning, ...] | None:
    if sum(head.role.numeric for head in heads) != 1:
        return None
    return tuple(Meaning(head=head) for head in heads)


FAMILY = Family(name="single value", sentence="One column of values, headed Value, Rating, Limit or the part number.", read=_read)
