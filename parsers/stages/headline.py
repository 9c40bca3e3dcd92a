"""What the front of a sheet promises above its tables: ``VDS 80 V``, ``RDS(on), max 2.9 mΩ at VGS = 10 V``, ``ID 120 A``."""

import re
from collections.abc import Iterator, Sequence

from parsers.grammar.condition import conditions_in
from parsers.grammar.number import Number, number_at, without_marks
from parsers.grammar.unit import SCALE, unit_named
from parsers.grid import Candidate, Line, hull
from parsers.parameters import BY_KEY
from parsers.stages.footnotes import limited_by
from parsers.stages.statements import words_at
from parsers.types import Word
from service.facts.reading import Conditions, Limit

BARE = "a figure in the sheet's title, without a name"
"""How a promise without a name is found; it may bear a table out and never speaks against one."""

_SIGNED = r"(?:[-\u2212\u2013\u2014±]\s?)?(?:\d{1,4}(?:\.\d{1,4})?|\.\d{1,4})"
_GATE = rf"V\s?GS\s*=\s*{_SIGNED}\s?V?"
_WARM = r"@?\s*(?:T\s?[CA]\s*=)?\s*\+?25\s?[°˚℃]\s?C?"
_LIMIT = r"(?:\s*[(,]?\s*(?:max|typ)\w*\.?\)?)?"
_BETWEEN = (
    rf"{_LIMIT}(?:\s*[\[(]\s*(?P<unit>m?\s?[VAΩ]|m?ohm)\s*[\])])?(?:\s*(?:@|at\b)?\s*\(?\s*(?:@|at\b)?\s*{_GATE}\)?)?"
    rf"(?:\s*\((?:silicon|package)[^\d)]*\)?)?(?:\s*\(?{_WARM}\)?)?{_LIMIT}\s*(?:[=:<≤\uff1c]|<=)?\s*"
)
_AFTER = rf"{_LIMIT}(?:\s*[,(@]?\s*(?:@|at\b)?\s*\(?\s*{_GATE}\s*\)?(?:\s*[,;]?\s*I\s?D\s*=\s*{_SIGNED}\s?m?A)?)?(?:\s*\(\s*typ\w*\.?[^)]*\))?"
NAMES = {"vds_max": r"B?V\s?\(?\s?(?:BR\s?\)?)?\s?DSS?", "rds_on": r"r\s?DS\s?\(?\s?on\s?\)?", "id_cont": r"I\s?D"}
_PROMISES = {
    key: re.compile(
        rf"(?<![A-Za-z]){name}(?![A-Za-z]){_BETWEEN}(?P<number>{_SIGNED})\s?(?P<after>m?\s?(?:V|A|Ω|ohms?))?(?![A-Za-z/\d.]){_AFTER}", re.IGNORECASE
    )
    for key, name in NAMES.items()
}
_TITLE = re.compile(r"channel|mosfet|\bfet\b|沟道|チャネル|transistor", re.IGNORECASE)
_LIST = re.compile(rf"^\W*(?:[ln]\s)?{_SIGNED}\s?m?[VAΩ]\s*[,./–-]")
FIGURE = re.compile(rf"(?<![\w.])(?P<number>{_SIGNED})[\s-]?(?P<after>V|A|mA|mΩ|Ω|ohms?)(?![A-Za-z/\d]|\s?GS)", re.IGNORECASE)
_WIDE = {0xFF10 + digit: str(digit) for digit in range(10)}
"""Full-width figures, as Chinese and Japanese sheets may set them."""
KEY_OF = {"V": "vds_max", "A": "id_cont", "mA": "id_cont", "ohm": "rds_on", "mohm": "rds_on"}


def promises_on(page: int, lines: Sequence[Line]) -> tuple[Candidate, ...]:
    """What the lines above the first table of a front page promise.

    Args:
        page: Its number.
        lines: Lines above its tables.

    Returns:
        One candidate for each promise, from the top; each says ``headline`` for where it stands. It names its quantity and its unit,
        and not for which column of a table it speaks.
    """
    upright = [line for line in lines if all(glyph.upright for word in line.words for glyph in word.glyphs)]
    return tuple(one for line, below in zip(upright, [*upright[1:], None], strict=False) for one in _promises(page, line, below))


def _promises(page: int, line: Line, below: Line | None) -> Iterator[Candidate]:
    """The promises of one line; a name with its unit alone on a line goes on in the line below."""
    named = list(_named(page, line.words))
    if not named and below is not None and re.fullmatch(r"\S.{0,24}[\[(]\s?m?\s?\S{1,3}\s?[\])]", line.text):
        named = list(_named(page, (*line.words, *below.words)))
    yield from named
    text = without_marks(line.text)
    if not named and (_TITLE.search(text) or _LIST.match(text)):
        for hit in FIGURE.finditer(text):
            unit = unit_named(hit["after"])
            yield from promise(page, KEY_OF[unit], line.words, hit, unit, BARE) if unit in KEY_OF else ()


def _named(page: int, words: Sequence[Word]) -> Iterator[Candidate]:
    text = without_marks(" ".join(word.text for word in words)).translate(_WIDE)
    taken: list[tuple[int, int]] = []
    for key, pattern in sorted(_PROMISES.items(), key=lambda each: each[0] != "rds_on"):
        for hit in pattern.finditer(text):
            if _is_condition(key, hit) or any(start <= hit.start() < end for start, end in taken):
                continue
            taken.append(hit.span())
            unit = unit_named(hit["after"] or hit["unit"] or "")
            yield from promise(page, key, words, hit, unit, "a name with its figure above the tables")


def _is_condition(key: str, hit: re.Match[str]) -> bool:
    """Whether a name with its figure says for what something else holds: it stands in brackets, or a current beside a gate voltage."""
    before = hit.string[: hit.start()]
    beside = re.match(r"[^,]*,\s*V\s?GS", hit.group()) or re.search(rf"{_GATE}\s*[,;]?\s*$", before)
    return before.count("(") > before.count(")") or (key == "id_cont" and beside is not None)


def promise(page: int, key: str, words: Sequence[Word], hit: re.Match[str], unit: str | None, how: str) -> Iterator[Candidate]:
    """One promise, if its unit and its size are those of its quantity.

    Args:
        page: Where it stands.
        key: What it speaks of.
        words: The words that hold it.
        hit: Where it stands in the words' joined text; its number is the group ``number``.
        unit: Its unit.
        how: How it was found, in words.

    Yields:
        The promise.
    """
    card, number = BY_KEY[key], number_at(hit.string, hit.start("number"))
    held = words_at(words, hit.start("number"), hit.end("number"))
    if number is None or unit not in card.units or not held or not card.low <= abs(number.value) * SCALE[unit] <= card.high:
        return
    limit, start = _limit(key, hit.group()), hit.start("number")
    printed = " ".join(word.text for word in words)
    yield Candidate(
        key=key,
        limit=limit or Limit.MAX,
        value=number.value,
        unit=unit,
        printed=printed[start : start + len(number.printed)],
        si=number.value * SCALE[unit],
        cond=_cond(key, hit.group(), number),
        page=page,
        box=hull([word.box for word in held]),
        row_box=hull([word.box for word in words_at(words, *hit.span())]),
        quote=printed[hit.start() : hit.end()].strip(),
        words=held,
        trace=(f"layout: {how}",),
        evidence=frozenset({"row", "unit"}),
        flags=() if limit else ("limit_unclear",),
    )


def _limit(key: str, text: str) -> Limit | None:
    """The limit that a promise names; ratings are largest values, an on-resistance may be either where nothing is said."""
    if re.search(r"typ", text, re.IGNORECASE) and not re.search(r"[<≤\uff1c]", text):
        return Limit.TYP
    return Limit.MAX if key != "rds_on" or re.search(r"max|[<≤\uff1c]", text, re.IGNORECASE) else None


def _cond(key: str, text: str, number: Number) -> Conditions:
    said = conditions_in(text)
    return Conditions(
        vgs=said.vgs if "vgs" in BY_KEY[key].keeps else None,
        limited_by=limited_by(text) if key == "id_cont" else None,
        where="headline",
        sign=number.sign,
    )
