"""Holds what was read against what was printed."""

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import Any

from parsers.grammar.unit import SCALE
from service.facts.reading import Reading
from strange.item import Fact

NUMBERS = ("vgs", "id", "is_", "vds", "tc", "ta", "tsp", "tj")
WORDS = ("ch", "part", "limited_by")
HOT = ("rds_on", "vsd", "vgs_th", "vbr_dss")
PLACED = ("id_cont", "pd")
TIMED = ("id_cont", "pd", "rth_ja", "rth_jl")


def counted(facts: Sequence[Fact], readings: Iterable[Reading]) -> tuple[dict[str, Counter[str]], list[Reading], list[Fact]]:
    """Facts and readings held against each other.

    Args:
        facts: What the sheet prints.
        readings: What was read.

    Returns:
        Counts by parameter, the accepted readings that are wrong, the facts that were not found.
    """
    readings, wrong, missed = list(readings), [], []
    out: dict[str, Counter[str]] = {}
    for fact in facts:
        if fact.cond.get("where") != "headline":
            hits = [reading for reading in readings if fits(reading, fact)]
            out.setdefault(fact.key, Counter()).update(labels=1, found=bool(hits), accepted=any(hit.status == "accepted" for hit in hits))
            missed += [] if hits else [fact]
    for reading in readings:
        if not any(fits(reading, fact) for fact in facts) and not (reading.key == "id_aval" and not any(fact.key == "id_aval" for fact in facts)):
            accepted = reading.status == "accepted"
            out.setdefault(reading.key, Counter())["wrong" if accepted else "noise"] += 1
            wrong += [reading] if accepted else []
    return out, wrong, missed


def fits(reading: Reading, fact: Fact) -> bool:
    """Whether a reading says what a sheet prints, with every condition without which the value misleads."""
    headline = fact.cond.get("where") == "headline"
    if (reading.key, reading.page) != (fact.key, fact.page) or (reading.limit != fact.limit and not headline) or not same_value(reading, fact):
        return False
    said = {name: getattr(reading.cond, name) for name in (*NUMBERS, *WORDS, "t")}
    meant = {{"is": "is_"}.get(name, name): value for name, value in fact.cond.items()}
    return not any(differ(name, said[name], meant.get(name)) for name in said) and (headline or not misleads(fact.key, said, meant))


def same_value(reading: Reading, fact: Fact) -> bool:
    """Whether two values are the same to half a percent, signs aside where the rating is of both."""
    given, wanted = reading.value * SCALE[reading.unit], fact.value * SCALE[fact.unit]
    if reading.cond.sign or fact.cond.get("sign"):
        given, wanted = abs(given), abs(wanted)
    return abs(given - wanted) <= 0.005 * abs(wanted)


def differ(name: str, one: Any, other: Any) -> bool:
    """Whether two conditions that are both said contradict each other."""
    if one is None or other is None:
        return False
    if name in NUMBERS:
        return abs(abs(one) - abs(other)) > 0.02 * max(abs(one), abs(other))
    return str(one).lower() != str(other).lower()


def misleads(key: str, said: dict[str, Any], meant: dict[str, Any]) -> bool:
    """Whether a reading lacks a condition without which its value misleads."""
    needed = ["ch", "part", *(["vgs"] if key == "rds_on" else []), *(["tc", "ta", "tsp", "limited_by"] if key in PLACED else [])]
    if any(meant.get(name) is not None and said[name] is None for name in needed):
        return True
    if key in TIMED and meant.get("t") not in (None, "steady") and said["t"] is None:
        return True
    return key in HOT and meant.get("tj") not in (None, 25) and all(said[name] is None for name in ("tj", "tc", "ta"))
