"""What the front of a sheet says about the values in its tables: it bears them out, or it contradicts them."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from parsers.grid import Candidate
from parsers.stages.headline import BARE
from parsers.stages.seen_twice import doubts_of, same_figures
from service.facts.reading import Limit

CONTRADICTION = "contradicts:headline"
_COLD = 25.0
"""A headline speaks of room temperature. [degC]"""
_KEYS = {"vds_max": ("vds_max", "vbr_dss")}
_ALONE = "it stands on the front of the sheet alone, and no table bears it out"


def with_promises(tables: Sequence[Candidate], promises: Sequence[Candidate]) -> list[Candidate]:
    """Hold the values of the tables against the front of the sheet.

    Args:
        tables: Every value that tables and sentences give.
        promises: What the front of the sheet promises.

    Returns:
        The values in the same order, those that the front repeats with the evidence, those that it contradicts flagged; then the promises
        that contradict a table or have none, for a person: a promise that a table keeps is said once.
    """
    certain = [promise for promise in promises if same_figures(promise.words) and not doubts_of(promise.words, promise.unit)]
    told = [_told(one, tables, certain) for one in tables]
    return [*told, *(_alone(one, tables) for one in promises if _stays(one, tables))]


def _told(one: Candidate, tables: Sequence[Candidate], promises: Sequence[Candidate]) -> Candidate:
    if any(_bears_out(promise, one) for promise in promises):
        return replace(one, evidence=one.evidence | {"headline"}, trace=(*one.trace, "front: the front of the sheet says the same"))
    against = [promise for promise in promises if _contradicts(promise, tables) and one in _meant(promise, tables)]
    if not against:
        return one
    says = f"the front of the sheet says {_shown(against[0])}"
    return replace(one, flags=(*one.flags, CONTRADICTION), trace=(*one.trace, f"front: {says}"), remarks=(*one.remarks, says))


def _bears_out(promise: Candidate, one: Candidate) -> bool:
    """Whether a promise and a value of a table are the same, as far as both say for what they hold."""
    return (
        one.key in _KEYS.get(promise.key, (promise.key,))
        and abs(abs(promise.si) - abs(one.si)) <= 1e-9 * abs(one.si)
        and ("limit_unclear" in promise.flags or promise.limit is one.limit or promise.key != "rds_on")
        and _same_gate(promise, one)
        and one.cond.tj in {None, _COLD}
    )


def _same_gate(promise: Candidate, one: Candidate) -> bool:
    return promise.cond.vgs is None or one.cond.vgs is None or abs(promise.cond.vgs) == abs(one.cond.vgs)


def _contradicts(promise: Candidate, tables: Sequence[Candidate]) -> bool:
    """Whether a promise that names its quantity has values to be held against, all of one switch, and none of them is its own."""
    same = _of_quantity(promise, tables)
    if _is_bare(promise) or any(one.cond.part or one.cond.ch for one in same):
        return False
    return bool(_meant(promise, tables)) and not any(abs(abs(promise.si) - abs(one.si)) <= 1e-9 * abs(one.si) for one in same)


def _is_bare(promise: Candidate) -> bool:
    return any(line.endswith(BARE) for line in promise.trace)


def _meant(promise: Candidate, tables: Sequence[Candidate]) -> tuple[Candidate, ...]:
    """The values of tables that speak of what a promise speaks of: the largest or typical one at room temperature."""
    return tuple(one for one in _of_quantity(promise, tables) if _is_meant(promise, one))


def _is_meant(promise: Candidate, one: Candidate) -> bool:
    warm = any(getattr(one.cond, spot) not in {None, _COLD} for spot in ("tc", "ta", "tsp", "tj"))
    limit = one.limit is promise.limit or (one.key == "vbr_dss" and one.limit is Limit.MIN)
    return limit and not warm and one.cond.where is None and _same_gate(promise, one)


def _of_quantity(promise: Candidate, tables: Iterable[Candidate]) -> tuple[Candidate, ...]:
    keys = _KEYS.get(promise.key, (promise.key,))
    found = tuple(one for one in tables if one.key in keys)
    return tuple(one for one in found if one.key == promise.key) or found


def _stays(promise: Candidate, tables: Sequence[Candidate]) -> bool:
    """Whether a promise is a reading of its own: it contradicts the tables, or they say nothing of its quantity."""
    return not _is_bare(promise) and (_contradicts(promise, tables) or not _of_quantity(promise, tables))


def _alone(promise: Candidate, tables: Sequence[Candidate]) -> Candidate:
    against = _meant(promise, tables)
    if not against:
        return replace(promise, lacks=(*promise.lacks, _ALONE))
    says = f"the table says {_shown(against[0])}"
    return replace(promise, flags=(*promise.flags, CONTRADICTION), lacks=(*promise.lacks, says))


def _shown(one: Candidate) -> str:
    """A value as a sheet prints it."""
    return f"{one.printed} {one.unit.replace('ohm', 'Ω')}"
