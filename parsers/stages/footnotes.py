"""Footnotes below the tables, and which of them a row refers to."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from parsers.grammar.condition import conditions_in
from parsers.grid import Entry, Line, hull
from parsers.types import Word
from service.facts.reading import Box, Conditions

_MARKED = re.compile(
    r"^(?:notes?\s*[:\uff1a]?\s*)?[(\[\uff08]?\s*(?P<mark>[a-zA-Z]|\d{1,2}[a-z]?|\*{1,3}|†|‡|[①-⑳])\s*[)\].:\uff1a\uff09]+\s*(?P<text>\S.*)",
    re.IGNORECASE,
)
_GLYPH = re.compile(r"^\s*(?P<mark>(?:\(cid:\d+\)|[\ue000-\uf8ff①-⑳])+)\s*(?P<text>.*)")
_UNREADABLE = re.compile(r"^\s*\ufffd+\s*(?P<text>\S.*)")
"""A mark that nothing can be made of: it opens a note that no row can be seen to refer to."""
_STARRED = re.compile(r"^\(?(?P<mark>\*\d|\*{1,3})\)?\s*(?P<text>\S.*)")
_REFERENCE = re.compile(r"\(?\bnotes?\s*:?\s*(?P<marks>\d{1,2}[a-z]?(?:\s*[,&]\s*\d{1,2}[a-z]?)*|[a-z](?:\s*[,&]\s*[a-z])*)\b\s*\)?", re.IGNORECASE)
_PACKAGE = re.compile(
    r"package[- ]limit|limited by (?:the )?(?:package|bond|wire)|(?:limited|restricted) by bond|bond[- ]?wires?|package limitation"
    r"|wire[- ]?bond[- ]limit|package is limited",
    re.IGNORECASE,
)
_SILICON = re.compile(
    r"silicon[- ]limit|calculated continuous current|calculated (?:from|based on)[^.]{0,40}junction temperature"
    r"|limited by (?:the )?silicon|limited only by max|chip capability|die limit",
    re.IGNORECASE,
)
_WORDS = 2
"""A raised mark opens a note of more words than this, itself among them. [1]"""
_LETTERS = 12
"""A note has at least this many letters. [1]"""
_NUMBERED = re.compile(r"^\(?\d{1,2}[.)]$")
_BELOW = 15.0
"""A line of a note that goes on stands no further below than this. [pt]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """One footnote.

    Attributes:
        mark: What refers to it: a letter, a number, a glyph without a name; empty where it cannot be read.
        text: What it says.
        page: Counted from 1.
        box: Its place.
        words: Its words.
    """

    mark: str
    text: str
    page: int
    box: Box
    words: tuple[Word, ...]


def notes_on(page: int, lines: Sequence[Line]) -> tuple[Note, ...]:
    """The footnotes of a page, from the top.

    Args:
        page: Its number.
        lines: Its lines.

    Returns:
        Notes with all their lines.
    """
    notes: list[tuple[str, list[tuple[float, list[Word]]]]] = []
    for line in lines:
        for run in _columns(line):
            text = " ".join(word.text for word in run)
            found = _opening(text, run, line)
            if found is not None:
                notes.append((found, [(line.y, run)]))
            elif (home := _above(notes, line.y, run)) is not None:
                home.append((line.y, run))
    return tuple(note for mark, rows in notes if _says_something((note := _note(page, mark, rows)).text))


def _says_something(text: str) -> bool:
    """Whether a note is words, or a time; ticks of a graph open like notes."""
    return sum(map(str.isalpha, text)) >= _LETTERS or conditions_in(text) != Conditions()


def conditions_of_notes(notes: Iterable[Note]) -> Conditions:
    """What footnotes add to a value: who limits it, and for how long it holds."""
    limited, lasting = None, None
    for note in notes:
        limited = limited or limited_by(note.text)
        t = conditions_in(note.text).t if re.search(r"\bt\s?p?\s*(?:≤|<|=|\ufffd|£|\(cid)", note.text) else None
        lasting = lasting or (t if t and t.endswith(" s") else None)
    return Conditions(limited_by=limited, t=lasting)


def limited_by(text: str) -> str | None:
    """Whether a text says that the package or the silicon sets the limit."""
    if _SILICON.search(text):
        return "silicon"
    return "package" if _PACKAGE.search(text) else None


def notes_for(entry: Entry, notes: Sequence[Note], *, of_name: bool = False) -> tuple[Note, ...]:
    """The footnotes that a row refers to: the next below it on its page, else the first on a later page."""
    page = entry.table.region.page.number
    out = []
    for mark in dict.fromkeys(_raised((*entry.label.marks, *entry.symbol.marks)) if of_name else _marks(entry)):
        fitting = [note for note in notes if note.mark == mark]
        below = [note for note in fitting if note.page == page and note.box[1] > entry.y]
        after = [note for note in fitting if note.page > page]
        if below or after:
            out.append((below or after)[0])
    return tuple(out)


def is_left_open(entry: Entry, notes: Sequence[Note]) -> bool:
    """Whether a mark beside a row's number refers to a footnote that was not found, or is cut off."""
    marks = {mark for cell in entry.cells for mark in (*_raised(mark.text for mark in cell.marks), *_level(cell.text))}
    return bool(marks - {note.mark for note in notes}) or any(cell.text.count("(") > cell.text.count(")") for cell in entry.cells)


def _marks(entry: Entry) -> Iterator[str]:
    """Marks of a row: raised letters, ``(Note 1)``, glyphs without a name."""
    texts = (entry.label, entry.symbol, entry.condition)
    raised = [mark for text in texts for mark in text.marks] + [mark.text for cell in entry.cells for mark in cell.marks]
    yield from _raised(raised)
    words = " ".join([*(f"{text.own} {text.block}" for text in texts), *(cell.text for cell in entry.cells)])
    yield from re.findall(r"\(cid:\d+\)(?!\s?[CW/A])|[\ue000-\uf8ff①-⑳]", words)
    for cell in entry.cells:
        yield from _level(cell.text)
    for found in _REFERENCE.finditer(words):
        yield from (piece.lower() for piece in re.split(r"[\s,&]+", found["marks"]) if piece)


def _level(text: str) -> Iterator[str]:
    """Marks of full size beside a number: ``75(1)``, ``75 (a)``, ``75*``."""
    yield from re.findall(r"(?<=\()\*{1,3}(?=\))|\*\d|(?<=\d)\*{1,3}(?!\d)", text)
    yield from (mark.lower() for mark in re.findall(r"(?<=\d)\s?\((\d|[A-Za-z])\)", text))


def _raised(marks: Iterable[str]) -> Iterator[str]:
    """Single marks out of raised words such as ``b, c``."""
    for mark in (re.sub(r"notes?", "", raised, flags=re.IGNORECASE) for raised in marks):
        yield from (piece.lower() for piece in re.findall(r"\*\d|[A-Za-z]|\d{1,2}|\*+|\(cid:\d+\)|[①-⑳\ufffd]", mark))


def _columns(line: Line) -> Iterator[list[Word]]:
    """Pieces of a line with wide gaps between: notes are often set in two columns."""
    run: list[Word] = []
    for word in sorted((*line.words, *line.marks), key=lambda word: word.box[0]):
        gap = word.box[0] - run[-1].box[2] if run else 0.0
        if gap > 2.2 * line.size or (gap > 0.6 * line.size and _NUMBERED.match(word.text)):
            yield run
            run = []
        run.append(word)
    if run:
        yield run


def _opening(text: str, run: Sequence[Word], line: Line) -> str | None:
    """The mark with which a piece of a line opens a note."""
    if run[0] in line.marks and len(run) > _WORDS and re.fullmatch(r"[\w*]{1,2}\)?", run[0].text):
        return run[0].text.strip(")").lower()
    for pattern in (_GLYPH, _MARKED, _STARRED):
        found = pattern.match(text)
        if found:
            marks = re.findall(r"\(cid:\d+\)|[^()]", found["mark"]) if pattern is _GLYPH else [found["mark"].lower()]
            return marks[-1]
    return "" if _UNREADABLE.match(text) else None


def _above(notes: list[tuple[str, list[tuple[float, list[Word]]]]], y: float, run: Sequence[Word]) -> list[tuple[float, list[Word]]] | None:
    """The open note that a piece of a line goes on with."""
    for _, rows in reversed(notes[-6:]):
        last_y, last = rows[-1]
        if 0 < y - last_y <= _BELOW and run[0].box[0] < last[-1].box[2] and run[-1].box[2] > last[0].box[0]:
            return rows
    return None


def _note(page: int, mark: str, rows: Sequence[tuple[float, Sequence[Word]]]) -> Note:
    words = tuple(word for _, run in rows for word in run)
    return Note(mark=mark, text=" ".join(word.text for word in words), page=page, box=hull([word.box for word in words]), words=words)
