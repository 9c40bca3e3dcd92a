"""Tenth stage: the numbers of one sheet are held against each other; what cannot be true together is put in doubt."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from parsers.grammar.number import plain_value
from parsers.grid import Candidate
from service.facts import identities
from service.facts.reading import Limit

_NO_SWITCH = "the sheet states neither an on-resistance nor the ratings of a switch"


def crosschecked(candidates: Iterable[Candidate]) -> tuple[Candidate, ...]:
    """Hold candidates against each other.

    Args:
        candidates: All candidates of a sheet.

    Returns:
        The same candidates in the same order, with what their relations add or take away.
    """
    known = _with_commas(list(candidates))
    if not _is_switch(known):
        return tuple(replace(one, evidence=one.evidence - {"row"}, lacks=(*one.lacks, _NO_SWITCH)) for one in known)
    return tuple(_ordered(_power(_packaged(one, known), known), known) for one in known)


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
        return replace(one, value=value, si=value * scale, trace=(*one.trace, "the sheet writes fractions with a comma"))
    return replace(one, evidence=one.evidence - {"unit"}, lacks=(*one.lacks, "its comma may part thousands or a fraction"))


def _is_switch(known: Sequence[Candidate]) -> bool:
    """Whether the sheet states what every switch's sheet states: an on-resistance, or a voltage and a gate rating and a current."""
    keys = {one.key for one in known}
    return "rds_on" in keys or ("vgs_max" in keys and bool(keys & {"vds_max", "vbr_dss"}) and bool(keys & {"id_cont", "vgs_th"}))


def _packaged(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """A continuous current above the package limit that the sheet states can only be the silicon's."""
    if one.key != "id_cont" or one.cond.limited_by or one.cond.where or one.cond.ta is not None:
        return one
    limits = [other.si for other in known if other.key == "id_cont" and other.cond.where == "footnote" and other.cond.limited_by == "package"]
    if not limits or abs(one.si) <= max(limits):
        return one
    return replace(
        one, cond=replace(one.cond, limited_by="silicon"), trace=(*one.trace, "above the package limit that a footnote states: the silicon's")
    )


def _power(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """Power, thermal resistance and junction limit of one sheet agree, or are flagged, or are a factor apart and go to a person."""
    if one.key not in {"pd", "rth_jc"} or one.limit is not Limit.MAX or (one.key == "pd" and one.cond.tc != identities.ROOM_C):
        return one
    best = min((verdict for verdict in _verdicts(one, known)), key=lambda verdict: verdict.off, default=None)
    if best is None:
        return one
    if best.off <= identities.POWER_SUPPORTS:
        return replace(one, evidence=one.evidence | {f"identity:{best.name}"})
    flagged = replace(one, flags=(*one.flags, f"contradicts:{best.name}"), trace=(*one.trace, best.words))
    if best.factor < identities.POWER_FACTOR:
        return flagged
    return replace(flagged, evidence=one.evidence - {"unit"}, lacks=(*one.lacks, best.words))


def _verdicts(one: Candidate, known: Sequence[Candidate]) -> Iterable[identities.Verdict]:
    powers = [other for other in known if other.key == "pd" and other.limit is Limit.MAX and other.cond.tc == identities.ROOM_C and _same(one, other)]
    resistances = [other for other in known if other.key == "rth_jc" and other.limit is Limit.MAX and _same(one, other)]
    junctions = {other.si for other in known if other.key == "tj_max"}
    for power in [one] if one.key == "pd" else powers:
        for resistance in [one] if one.key == "rth_jc" else resistances:
            for junction in junctions:
                yield identities.power(power_w=power.si, resistance_k_per_w=resistance.si, junction_c=junction)


def _same(one: Candidate, other: Candidate) -> bool:
    """Whether two candidates speak of the same part and channel, as far as they say."""
    return all(getattr(one.cond, name) in (None, getattr(other.cond, name)) or getattr(other.cond, name) is None for name in ("part", "ch"))


def _ordered(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """The least is no more than the typical, and that no more than the most, in one row."""
    row = {
        other.limit: abs(other.si)
        for other in known
        if other.key == one.key and other.page == one.page and other.row_box == one.row_box and other.cond == one.cond
    }
    if one.key == "vgs_max" or identities.in_order(least=row.get(Limit.MIN), typical=row.get(Limit.TYP), most=row.get(Limit.MAX)):
        return one
    return replace(one, evidence=one.evidence - {"column"}, lacks=(*one.lacks, "least, typical and largest value of its row are not in order"))
