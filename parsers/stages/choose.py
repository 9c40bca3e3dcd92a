"""Ninth stage: candidates become readings: evidence weighed, doubles dropped, status said in words."""

import hashlib
from collections.abc import Iterable, Iterator, Mapping

from parsers.glyphs.doubts import in_words
from parsers.grid import Candidate, rounded
from parsers.stages.seen_twice import UNSURE, doubts_of, same_figures
from service.facts.reading import Reading, Status

_NEEDED = ("second_reader", "row", "column", "unit", "condition")
_MISSING = {
    "second_reader": "the second reader does not see the same characters",
    "row": "it is not certain which row it belongs to",
    "column": "it is not certain which column it belongs to",
    "unit": "its unit is not certain",
    "condition": "a condition that it needs was not read",
}
_SURE = "Both readers see the same characters, and row, column, unit and conditions are each certain."
_OUTWEIGHED = {
    "second_reader": "One reader alone is sure of the characters, and {by}; row, column, unit and conditions are each certain.",
    "unit": "Its unit cannot be made out beside it, and {by}; all else is certain.",
}
_SAY = {
    "headline": "the front of the sheet prints the same value",
    "identity:power": "it fits power, thermal resistance and junction limit of the sheet",
}
"""What outweighs a doubt, in words: evidence of another kind (the characters of another place, the arithmetic of the ratings)."""


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
    evidence = one.evidence | ({"second_reader"} if same_figures(one.words) and not _doubts(one) else set())
    outweighed = {code: by for code in _NEEDED if code not in evidence and (by := _outweighing(code, one))}
    missing = [code for code in _NEEDED if code not in evidence and code not in outweighed]
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
        why=_why(missing, outweighed, one),
        flags=(*one.flags, *(("repaired_glyphs",) if any(glyph.repaired for word in one.words for glyph in word.glyphs) else ())),
        page=one.page,
        bbox=rounded(one.box),
        row_bbox=rounded(one.row_box),
        quote=one.quote,
        trace=(*one.trace, *_readers(one)),
    )


def _doubts(one: Candidate) -> frozenset[str]:
    """What the characters are in doubt about; a far-off sign takes nothing from a rating of both signs."""
    return doubts_of(one.words, one.unit) - ({"sign_apart"} if one.cond.sign == "+-" else set())


def _outweighing(code: str, one: Candidate) -> str | None:
    """The evidence of another kind that outweighs a doubt about characters: of the number, or of its unit."""
    if code == "second_reader" and _doubts(one) <= UNSURE:
        return next((each for each in _SAY if each in one.evidence), None)
    return "headline" if code == "unit" and "headline" in one.evidence else None


def _why(missing: list[str], outweighed: Mapping[str, str], one: Candidate) -> str:
    doubts = ["; ".join([*(clause for code in missing for clause in _missing(code, one)), *one.lacks])] if missing else []
    said = doubts or [_OUTWEIGHED[code].format(by=_SAY[by]) for code, by in outweighed.items()] or [_SURE]
    return " ".join(f"{sentence[0].upper()}{sentence[1:].rstrip('.')}." for sentence in (*said, *one.remarks))


def _missing(code: str, one: Candidate) -> list[str]:
    """Why evidence of a kind is missing: of the characters, what speaks against them where both readers see the same."""
    doubts = list(in_words(sorted(_doubts(one)))) if code == "second_reader" else []
    return doubts if doubts and same_figures(one.words) else [_MISSING[code], *doubts]


def _readers(one: Candidate) -> Iterator[str]:
    """What the second reader said, for whoever asks how a value was read."""
    if not any(word.second is not None for word in one.words):
        yield "characters: no second reader was asked"
    elif not same_figures(one.words):
        yield f"characters: the second reader sees {''.join(word.second or '' for word in one.words) or 'nothing'} in the same place"
    else:
        yield "characters: the second reader sees the same"
    yield from (f"characters: {clause}" for clause in in_words(sorted(_doubts(one))))
