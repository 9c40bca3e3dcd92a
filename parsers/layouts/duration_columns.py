"""The family with one column for a short time and one for steady state."""

import re

from parsers.family import Family, Meaning
from parsers.grammar.condition import conditions_in
from parsers.grid import Head, Role
from service.facts.reading import Conditions

_DURATION = re.compile(r"^(?:\d+\s?(?:s|sec|secs|seconds)|steady[ -]state)$", re.IGNORECASE)


def _read(heads: tuple[Head, ...]) -> tuple[Meaning, ...] | None:
    durations = [head for head in heads if head.role is Role.VALUE and _DURATION.match(head.text)]
    if len(durations) < 2:
        return None
    return tuple(Meaning(head=head, cond=Conditions(t=conditions_in(head.text).t) if head in durations else Conditions()) for head in heads)


FAMILY = Family(name="duration columns", sentence="One column of values for a short time, one for steady state.", read=_read)
