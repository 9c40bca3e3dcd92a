"""Ninth stage: candidates become readings: evidence weighed, doubles dropped, status said in words."""

import hashlib
import re
from collections.abc import Iterable

from parsers.grammar.number import numbers_in, without_marks
from parsers.grid import Candidate, rounded
from service.facts.reading import Reading, Status

_NEEDED = ("second_reader", "row", "column", "unit", "condition")
_MISSING = {
    "second_reader": "the second reader does not see the same characters",
    "row": "it is not certain which row it belongs to",
    "column": "it is not certain which column it belongs to",
    "unit": "its unit is not certain",
    "condition": "a condition that it needs was not read",
}


def chosen(candidates: Iterable[Candidate], sha256: str) -> tuple[Reading, ...]:
    """Weigh the evidence of each candidate.

    Args:
        candidates: All candidates of a document.
        sha256: Identity of the file.

    Returns:
        Readings in the order of the pages; of candidates with the same characters in the same place the better one.
    """
    kept: dict[tuple[object, ...], Candidate] = {}
    for one in candidates:
        place = (one.key, one.limit, one.page, one.value, one.cond.part, one.cond.ch, round(one.box[0]), round(one.box[1]))
        if place not in kept or len(one.evidence) > len(kept[place].evidence):
            kept[place] = one
    return tuple(_reading(one, sha256) for one in kept.values())


def _reading(one: Candidate, sha256: str) -> Reading:
    evidence = one.evidence | ({"second_reader"} if _seen_twice(one) else set())
    missing = [code for code in _NEEDED if code not in evidence]
    name = f"{sha256}:{one.key}:{one.limit}:{one.page}:{one.box[0]:.0f},{one.box[1]:.0f}:{one.printed}:{one.cond.part or ''}{one.cond.ch or ''}"
    return Reading(
        id=hashlib.sha256(name.encode()).hexdigest()[:16],
        key=one.key,
        limit=one.limit,
        value=one.value,
        unit=one.unit,
        printed=one.printed,
        si=one.si,
        cond=one.cond,
        status=Status.REVIEW if missing else Status.ACCEPTED,
        evidence=tuple(code for code in (*_NEEDED, *sorted(evidence - set(_NEEDED))) if code in evidence),
        why=_why(missing, one),
        flags=(*one.flags, *(("repaired_glyphs",) if any(glyph.repaired for word in one.words for glyph in word.glyphs) else ())),
        page=one.page,
        bbox=rounded(one.box),
        row_bbox=rounded(one.row_box),
        quote=one.quote,
        trace=one.trace,
    )


def _why(missing: list[str], one: Candidate) -> str:
    if not missing:
        return "Both readers see the same characters, and row, column, unit and conditions are each certain."
    return "; ".join([*(_MISSING[code] for code in missing), *one.lacks]).capitalize() + "."


def _seen_twice(one: Candidate) -> bool:
    """Whether the second reader sees the same number in the words' boxes, and no glyph is in doubt."""
    if any(glyph.doubt for word in one.words for glyph in word.glyphs):
        return False
    first, second = "".join(word.text for word in one.words), "".join(word.second or "" for word in one.words)
    return bool(second) and _digits(first) == _digits(second)


def _digits(text: str) -> list[str]:
    return [re.sub(r"\s", "", number.printed) for number in numbers_in(without_marks(re.sub(r"[\u2212\u2013\u2014]", "-", text)))]
