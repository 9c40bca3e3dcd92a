"""What the numbers of one sheet say about one of them: support, a flag, a doubt."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from parsers.grid import Candidate
from service.facts import identities
from service.facts.reading import Limit

_LEAST_DROP_V, _MOST_DROP_V = 2e-3, 25.0
"""Between these lies what any switch drops at its test current. [V]"""
_ALONE = frozenset({"vds_max", "id_cont", "rds_on", "rth_jc"})
"""Parameters that have one value for one set of conditions; a power may be given for several boards."""


_SIGNLESS = frozenset({"vds_max", "vbr_dss", "vgs_th", "id_cont", "id_pulse", "id_aval", "is_cont", "qg"})
"""What is printed with a minus on sheets of P-channel parts alone; the diode's voltage is counted from drain to source on some sheets."""
_NO_RATING = "more than the largest value: no rating, but what its parts endured"


def packaged(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """A continuous current above the package limit that the sheet states can only be the silicon's."""
    if one.key != "id_cont" or one.cond.limited_by or one.cond.where or one.cond.ta is not None:
        return one
    limits = [other.si for other in known if other.key == "id_cont" and other.cond.where == "footnote" and other.cond.limited_by == "package"]
    if not limits or abs(one.si) <= max(limits):
        return one
    return replace(
        one,
        cond=replace(one.cond, limited_by="silicon"),
        trace=(*one.trace, "relations: above the package limit that a footnote states: the silicon's"),
    )


def power(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """Power, thermal resistance and junction limit of one sheet agree, or are flagged, or are a factor apart and go to a person."""
    if one.key not in {"pd", "rth_jc"} or one.limit is not Limit.MAX or (one.key == "pd" and one.cond.tc != identities.ROOM_C):
        return one
    best = min((verdict for verdict in _verdicts(one, known)), key=lambda verdict: verdict.off, default=None)
    if best is None:
        return one
    if best.off <= identities.POWER_SUPPORTS:
        return replace(one, evidence=one.evidence | {f"identity:{best.name}"})
    flagged = replace(one, flags=(*one.flags, f"contradicts:{best.name}"), trace=(*one.trace, f"relations: {best.words}"))
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


def ordered(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """The least is no more than the typical, and that no more than the most, in one row."""
    row = {
        other.limit: abs(other.si)
        for other in known
        if other.key == one.key and other.page == one.page and other.row_box == one.row_box and other.cond == one.cond
    }
    if one.key == "vgs_max" or identities.in_order(least=row.get(Limit.MIN), typical=row.get(Limit.TYP), most=row.get(Limit.MAX)):
        return one
    if one.key == "eas":  # why: a sheet may print beside the rating at which energy its parts were destroyed
        return replace(one, remarks=(*one.remarks, _NO_RATING)) if one.limit is Limit.TYP else one
    return replace(one, evidence=one.evidence - {"column"}, lacks=(*one.lacks, "least, typical and largest value of its row are not in order"))


def possible(one: Candidate, known: Sequence[Candidate]) -> Candidate:  # noqa: ARG001  every relation is asked alike
    """A switch is not on without a gate voltage; a threshold and a breakdown are not measured with one."""
    gate = abs(one.cond.vgs) if one.cond.vgs is not None else None
    if (one.key == "rds_on" and gate == 0) or (one.key in {"vgs_th", "vbr_dss"} and gate):
        return _without_row(one, f"{one.key} is not measured at a gate voltage of {one.cond.vgs:g} V")
    return one


def dropping(one: Candidate, known: Sequence[Candidate]) -> Candidate:  # noqa: ARG001  every relation is asked alike
    """A switch that is on drops neither a millivolt nor tens of volts at the current at which it is tested: else milliohms were taken for ohms."""
    if one.key != "rds_on" or not one.cond.id or _LEAST_DROP_V < abs(one.si * one.cond.id) < _MOST_DROP_V:
        return one
    drop = abs(one.si * one.cond.id)
    return replace(one, evidence=one.evidence - {"unit"}, lacks=(*one.lacks, f"at its test current it would drop {drop:.2g} V"))


def pulsed(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """A pulsed rating below a continuous one is another row's."""
    if one.key != "id_pulse":
        return one
    continuous = [abs(other.si) for other in known if other.key == "id_cont" and other.cond.limited_by != "silicon" and _same(one, other)]
    if all(identities.pulse_covers(continuous_a=ampere, pulsed_a=abs(one.si)) for ampere in continuous):
        return one
    return _without_row(one, "it is below the continuous current")


def positive(one: Candidate) -> Candidate:
    """A rating or a threshold of an N-channel part has no minus sign; one that has took a neighbour's dash for it, or is another part's."""
    if one.si >= 0 or one.key not in _SIGNLESS:
        return one
    return replace(one, evidence=one.evidence - {"column"}, lacks=(*one.lacks, "it has a minus sign, on the sheet of an N-channel part"))


def insulated(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """The way to the air is longer than the way to the case."""
    if one.key != "rth_ja":
        return one
    cases = [other.si for other in known if other.key == "rth_jc" and other.limit is one.limit and _same(one, other)]
    return one if all(one.si > case for case in cases) else _without_row(one, "it is no more than the resistance to the case")


def falling(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """On-resistance falls as the gate voltage rises; where it does not, two rows were taken for each other."""
    if one.key != "rds_on" or one.cond.vgs is None:
        return one
    alike = [other for other in known if other.key == "rds_on" and other.cond.vgs is not None and _comparable(one, other)]
    pairs = [sorted((one, other), key=lambda each: abs(each.cond.vgs or 0.0)) for other in alike if abs(other.cond.vgs or 0.0) != abs(one.cond.vgs)]
    if all(identities.resistance_falls(lower_gate_ohm=lower.si, higher_gate_ohm=higher.si) for lower, higher in pairs):
        return one
    return _without_row(one, "on-resistance does not fall as the gate voltage rises")


def _comparable(one: Candidate, other: Candidate) -> bool:
    """Whether two on-resistances differ in the gate voltage alone, as far as they say."""
    names = ("tj", "tc", "ta", "part", "ch", "where")
    return one.limit is other.limit and all(getattr(one.cond, name) == getattr(other.cond, name) for name in names)


def _without_row(one: Candidate, why: str) -> Candidate:
    return replace(one, evidence=one.evidence - {"row"}, lacks=(*one.lacks, why))


def lasting(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """Where a rating in free air is given for some seconds, what names no time beside the same temperature may hold for those seconds alone."""
    if one.key not in {"id_cont", "pd"} or one.cond.t or one.cond.where or one.cond.ta is None:
        return one
    timed = [other for other in known if (other.key, other.page) == (one.key, one.page) and other.cond.t and other.cond.ta is not None]
    return _without_row(one, "other rows of its kind name a time, and it names none") if timed else one


def whose(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """Where a sheet gives a parameter for one channel, what names no channel may be the other's or both's."""
    if one.cond.ch or one.cond.where or not any(other.cond.ch for other in known if (other.key, other.limit) == (one.key, one.limit)):
        return one
    return _without_row(one, "it names no channel, and another value of its kind does")


def told_apart(one: Candidate, known: Sequence[Candidate]) -> Candidate:
    """Two different values of one parameter for the very same conditions on one page: what tells them apart was not read."""
    if one.key not in _ALONE:
        return one
    twins = (other for other in known if other is not one and (other.key, other.limit, other.page) == (one.key, one.limit, one.page))
    if any("row" in other.evidence and other.cond == one.cond and other.si != one.si and _notes(other) == _notes(one) for other in twins):
        return replace(one, evidence=one.evidence - {"condition"}, lacks=(*one.lacks, "another value stands on the page for the same conditions"))
    return one


def _notes(one: Candidate) -> list[str]:
    """The footnotes that the row's words refer to: another board may tell two rows apart."""
    return re.findall(r"notes?\s*\w+", one.quote.lower())
