"""The family with columns for least, typical and most, in whatever order."""

from parsers.family import Family, Meaning
from parsers.grid import Head, Role


def _read(heads: tuple[Head, ...]) -> tuple[Meaning, ...] | None:
    limits = [head.role for head in heads if head.role in {Role.MIN, Role.TYP, Role.MAX}]
    if not limits or len(set(limits)) != len(limits):
        return None
    return tuple(Meaning(head=head) for head in heads)


FAMILY = Family(name="min, typ, max", sentence="One column each for the least, the typical and the largest value.", read=_read)
