"""Which part or which channel a row speaks of, where the rows of one table speak of several."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from parsers.grammar.channel import channel_named, channels_in
from parsers.grid import Entry, Named
from service.facts.reading import Conditions

_PART = re.compile(r"(?<![\w/-])(?=[A-Z0-9/-]*\d)(?=[A-Z0-9/-]*[A-Z])[A-Z0-9]{2,}[A-Z0-9-]*\d{2,}[A-Z0-9-]*(?![\w/°])")
_UNITS = re.compile(r"^\d+(?:V|A|MA|MV|C|NS|MS|S|KHZ|MHZ|OHM)$")
_DISSIPATION = re.compile(r"\bP ?ch\b")


@dataclass(frozen=True, slots=True, kw_only=True)
class Division:
    """What a row speaks of.

    Attributes:
        conds: One for each part or channel; a row of an undivided table has one without either.
        sure: Whether the row, or the row above of the same parameter, says so.
    """

    conds: tuple[Conditions, ...] = (Conditions(),)
    sure: bool = True


def divisions_of(rows: Sequence[Named]) -> tuple[Division, ...]:
    """The part or channel of each row of a table.

    Args:
        rows: Named entries, from the top.

    Returns:
        One for each row, in the same order.
    """
    texts = [_text(one.entry) for one in rows]
    channels = [channel_named(text) for text in texts]
    parts = [parts_in(text) for text in texts]
    if len({channel for channel in channels if channel}) == 2:
        return _filled(rows, [(Conditions(ch=channel),) if channel else () for channel in channels], [channels_in(text) for text in texts])
    if len({part for named in parts for part in named}) >= 2:
        return _filled(
            rows, [tuple(Conditions(part=part) for part in named) or _all(text) for named, text in zip(parts, texts, strict=True)], [0] * len(rows)
        )
    # Why: where no other channel stands beside it, Pch is the symbol of the channel's dissipation.
    lone = [
        channel_named(_DISSIPATION.sub("", text)) if one.key == "pd" else channel for one, text, channel in zip(rows, texts, channels, strict=True)
    ]
    return tuple(Division(conds=(Conditions(ch=channel or one.entry.channel),)) for one, channel in zip(rows, lone, strict=True))


def _filled(rows: Sequence[Named], said: Sequence[tuple[Conditions, ...]], named: Sequence[int]) -> tuple[Division, ...]:
    """A row that names none goes with the row above of the same parameter; where that names none either, or it names two, nobody can tell."""
    out: list[Division] = []
    for at, (one, conds) in enumerate(zip(rows, said, strict=True)):
        if conds:
            out.append(Division(conds=conds))
        elif at and rows[at - 1].key == one.key and named[at] == 0:
            out.append(out[-1])
        else:
            out.append(Division(sure=False))
    return tuple(out)


def _text(entry: Entry) -> str:
    """The words of a row in which a part or a channel may be named: its own first, then those of its drawn cell."""
    own = f"{entry.condition.own} ; {entry.condition.stray} ; {entry.label.own} ; {entry.symbol.own}"
    if parts_in(own) or channel_named(own) or entry.condition.peers > 1:
        return own
    return f"{own} ; {entry.condition.cell}"


def parts_in(text: str) -> tuple[str, ...]:
    """Part numbers that a text names.

    Args:
        text: Words of a heading or a row.

    Returns:
        Each once, in the order of the text.
    """
    return tuple(dict.fromkeys(found for found in _PART.findall(text) if len(found) >= 5 and not _UNITS.match(found)))


def _all(text: str) -> tuple[Conditions, ...]:
    """A row for all parts says so."""
    return (Conditions(),) if re.search(r"\b[Aa]ll\b|\bALL\b", text) else ()
