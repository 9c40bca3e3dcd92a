"""Tenth stage: the numbers of one sheet are held against each other; what cannot be true together is put in doubt."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from parsers.grammar.number import plain_value
from parsers.grid import Candidate
from parsers.stages.relations import (
    dropping,
    falling,
    insulated,
    lasting,
    ordered,
    packaged,
    positive,
    possible,
    power,
    pulsed,
    told_apart,
    whose,
)

_NO_SWITCH = "the sheet states neither an on-resistance nor the ratings of a switch"


def crosschecked(candidates: Iterable[Candidate], polarity: str | None = None) -> tuple[Candidate, ...]:
    """Hold candidates against each other.

    Args:
        candidates: All candidates of a sheet.
        polarity: N, P, N+N, P+P or N+P, where the sheet says so.

    Returns:
        The same candidates in the same order, with what their relations add or take away.
    """
    known = _with_commas(list(candidates))
    if not _is_switch(known):
        return tuple(replace(one, evidence=one.evidence - {"row"}, lacks=(*one.lacks, _NO_SWITCH)) for one in known)
    for relation in (packaged, power, ordered, possible, pulsed, insulated, falling, dropping, lasting, whose, told_apart):
        known = [relation(one, known) for one in known]
    return tuple(known if polarity not in {"N", "N+N"} else map(positive, known))


def _with_commas(known: list[Candidate]) -> list[Candidate]:
    """A comma before three digits parts thousands or a fraction: the sheet's other numbers say which, else a person."""
    fractions = any(re.fullmatch(r"\D?\s?\d+,\d{1,2}|\D?\s?0,\d+", one.printed) for one in known)
    points = any("." in one.printed for one in known)
    return [_comma(one, fractions=fractions, points=points) if re.search(r"[1-9]\d{0,2},\d{3}(?!\d)", one.printed) else one for one in known]


def _comma(one: Candidate, *, fractions: bool, points: bool) -> Candidate:
    taken = abs(one.value) != plain_value(re.sub(r"[^0-9.,]", "", one.printed))
    if (points and not fractions and not taken) or (fractions and not points and taken):
        return one
    if fractions and not points:
        scale = one.si / one.value
        value = one.value / 1000
        return replace(one, value=value, si=value * scale, trace=(*one.trace, "figure: the sheet writes fractions with a comma"))
    return replace(one, evidence=one.evidence - {"unit"}, lacks=(*one.lacks, "its comma may part thousands or a fraction"))


def _is_switch(known: Sequence[Candidate]) -> bool:
    """Whether the sheet states what every switch's sheet states: an on-resistance, or a voltage and a gate rating and a current."""
    keys = {one.key for one in known}
    return "rds_on" in keys or ("vgs_max" in keys and bool(keys & {"vds_max", "vbr_dss"}) and bool(keys & {"id_cont", "vgs_th"}))
