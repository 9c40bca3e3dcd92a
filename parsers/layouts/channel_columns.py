"""The family in which each channel of a dual part has a column of values of its own."""

from parsers.family import Family, Meaning
from parsers.grammar.channel import channel_named
from parsers.grid import Head, Role
from service.facts.reading import Conditions


def _read(heads: tuple[Head, ...]) -> tuple[Meaning, ...] | None:
    channels = [head for head in heads if head.role is Role.VALUE and channel_named(head.text)]
    if len(channels) < 2:
        return None
    return tuple(Meaning(head=head, cond=Conditions(ch=channel_named(head.text)) if head in channels else Conditions()) for head in heads)


FAMILY = Family(name="channel columns", sentence="One column of values for each channel of a part with two switches.", read=_read)
