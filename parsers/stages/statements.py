"""Values that a sheet states in a sentence below its tables: a package limit, a junction limit, a resistance for another board."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parsers.grammar.condition import conditions_in
from parsers.grammar.number import number_at, without_marks
from parsers.grammar.unit import SCALE
from parsers.grid import Candidate, Line, hull
from parsers.types import Word
from service.facts.reading import Conditions, Limit


@dataclass(frozen=True, slots=True, kw_only=True)
class Statement:
    """One way to state a value in a sentence.

    Attributes:
        key: What is stated.
        unit: In what.
        pattern: The words up to the number, and those after it; the number is the group ``number``.
        limited_by: Who sets the limit, where the sentence says so.
    """

    key: str
    unit: str
    pattern: re.Pattern[str]
    limited_by: str | None = None


_NUMBER = r"(?P<number>\d{1,4}(?:\.\d+)?)"
_DEGREE = r"\s*(?:°|˚|º|o|℃)?\s?C?"
_PER_WATT = r"\s*(?:°|˚|º|o)?\s?[CK]\s?/\s?W"
STATEMENTS = (
    Statement(
        key="id_cont",
        unit="A",
        limited_by="package",
        pattern=re.compile(
            r"(?:package (?:limitation|limited|limit)(?: current)?(?: is| of| to|:)?|limited by package to"
            rf"|bond(?:ing)?[- ]?wires?(?: current)? limit(?:ed|ation)?(?: is| to)?)\s*{_NUMBER}\s*A\b",
            re.IGNORECASE,
        ),
    ),
    Statement(
        key="rth_jc",
        unit="K/W",
        pattern=re.compile(rf"max(?:imum|\.)?\s+R\s?[θΘq]?\s?JC\s*(?:=|is|of)\s*{_NUMBER}{_PER_WATT}", re.IGNORECASE),
    ),
    Statement(key="tj_max", unit="degC", pattern=re.compile(rf"T\s?v?J\s?[(,_]?\s?max\.?\)?\s*=\s*{_NUMBER}{_DEGREE}", re.IGNORECASE)),
    Statement(
        key="rth_ja",
        unit="K/W",
        pattern=re.compile(rf"(?<![\d.]){_NUMBER}{_PER_WATT}\s+(?:(?:when |if )?mounted|on\s+(?:a\s+)?1-?\s?in)", re.IGNORECASE),
    ),
    Statement(key="rth_ja", unit="K/W", pattern=re.compile(rf"steady[- ]state conditions?\s*(?:is|of|=|:)\s*{_NUMBER}{_PER_WATT}", re.IGNORECASE)),
)
"""Sentences whose value a table does not hold, or not alone."""


def statements_on(page: int, lines: Sequence[Line]) -> Iterator[Candidate]:
    """The values that sentences of a page state.

    Args:
        page: Its number.
        lines: Its lines.

    Yields:
        One candidate for each statement; the same figure said again on a page is left out.
    """
    seen: set[tuple[str, str]] = set()
    for run in _sentences(lines):
        text = without_marks(" ".join(word.text for word in run))
        for statement in STATEMENTS:
            for hit in statement.pattern.finditer(text):
                if (statement.key, hit["number"]) not in seen:
                    seen.add((statement.key, hit["number"]))
                    yield from _candidate(page, statement, run, text, hit)


def states_something(text: str) -> bool:
    """Whether plain text of a page holds a sentence that states a package limit: such a page is read though it has no table."""
    return any(statement.key == "id_cont" and statement.pattern.search(text) for statement in STATEMENTS)


def _sentences(lines: Sequence[Line]) -> Iterator[list[Word]]:
    """Pieces of lines with wide gaps between, each with the piece below it: sentences run on, and notes stand in columns."""
    rows = [[(line, run) for run in _pieces(line)] for line in lines]
    for row, below in zip(rows, [*rows[1:], []], strict=False):
        for line, run in row:
            under = next((other for after, other in below if after.y - line.y < 1.6 * line.size and abs(other[0].box[0] - run[0].box[0]) < 40), [])
            yield [*run, *under]


def _pieces(line: Line) -> Iterator[list[Word]]:
    run: list[Word] = []
    for word in line.words:
        if run and word.box[0] - run[-1].box[2] > 2.2 * line.size:
            yield run
            run = []
        run.append(word)
    if run:
        yield run


def _candidate(page: int, statement: Statement, run: Sequence[Word], text: str, hit: re.Match[str]) -> Iterator[Candidate]:
    number = number_at(text, hit.start("number"))
    words = words_at(run, hit.start("number"), hit.end("number"))
    if number is None or not words or number.printed != hit["number"]:
        return
    said = conditions_in(text)
    yield Candidate(
        key=statement.key,
        limit=Limit.MAX,
        value=number.value,
        unit=statement.unit,
        printed=number.printed,
        si=number.value * SCALE[statement.unit],
        cond=Conditions(where="footnote", limited_by=statement.limited_by, t=said.t if statement.key == "rth_ja" else None),
        page=page,
        box=hull([word.box for word in words]),
        row_box=hull([word.box for word in run]),
        quote=text[max(0, hit.start() - 80) : hit.end() + 40].strip(),
        words=words,
        trace=("layout: a sentence below the tables",),
        evidence=frozenset({"row", "column", "unit", "condition"}),
    )


def words_at(run: Sequence[Word], start: int, end: int) -> tuple[Word, ...]:
    """The words that hold a stretch of their joined text."""
    at, out = 0, []
    for word in run:
        if at < end and at + len(word.text) > start:
            out.append(word)
        at += len(word.text) + 1
    return tuple(out)
