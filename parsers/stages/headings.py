"""The headings of tables: lines whose words name columns, in English, Chinese or Japanese, over one line or several."""

import re
from collections.abc import Iterator, Sequence

from parsers.grid import Head, Line, Role, hull
from parsers.types import Word
from service.facts.reading import Box

_WORDS: dict[str, Role] = {
    **dict.fromkeys(("parameter", "parameters", "characteristic", "characteristics", "item", "items", "description", "parametr"), Role.LABEL),
    **dict.fromkeys(("symbol", "symbols", "sym", "symb"), Role.SYMBOL),
    **dict.fromkeys(("condition", "conditions", "test", "note", "notes", "testconditions", "testcondition", "remark"), Role.CONDITION),
    **dict.fromkeys(("min", "minimum"), Role.MIN),
    **dict.fromkeys(("typ", "typical"), Role.TYP),
    **dict.fromkeys(("max", "maximum"), Role.MAX),
    **dict.fromkeys(("value", "values", "rating", "ratings", "limit", "limits"), Role.VALUE),
    **dict.fromkeys(("unit", "units", "unis"), Role.UNIT),
}
_SIGNS: tuple[tuple[str, Role], ...] = (
    ("参数", Role.LABEL),
    ("项目", Role.LABEL),
    ("項目", Role.LABEL),
    ("符号", Role.SYMBOL),
    ("記号", Role.SYMBOL),
    ("条件", Role.CONDITION),
    ("最小", Role.MIN),
    ("典型", Role.TYP),
    ("標準", Role.TYP),
    ("最大值", Role.MAX),
    ("最大", Role.MAX),
    ("单位", Role.UNIT),
    ("単位", Role.UNIT),
    ("定格", Role.VALUE),
    ("额定", Role.VALUE),
    ("极限", Role.VALUE),
    ("数值", Role.VALUE),
    ("规格", Role.VALUE),
)
"""Chinese and Japanese words for the columns; the first that stands in a token decides."""

PART = re.compile(r"^(?=.*\d)(?=.*[A-Z])[A-Z0-9][A-Z0-9/\-]{3,}[A-Za-z]?,?$")
"""A part number over a column of values."""
PACKAGE = re.compile(r"^(?:TO|SOT|SOIC|SO|DPAK|D2PAK|IPAK|SC|DFN|SOP|TSSOP)-?\s?\d[\w-]*$", re.IGNORECASE)
"""A package over a column of values."""
_SPECIAL = re.compile(r"^(?:Q[12]|[NP][- ]?ch(?:annel)?|\d{1,2}\s?(?:s|sec|secs|seconds)|steady[ -]?state)$", re.IGNORECASE)
_LIMITS = frozenset({Role.MIN, Role.TYP, Role.MAX})
_VALUED = _LIMITS | {Role.VALUE, Role.UNIT}
_MOST_LETTERS = 8
"""A Chinese or Japanese heading is no longer than this. [1]"""
_STACK = 17.0
"""Lines of one heading stand no further apart than this. [pt]"""
_STRAY = 2
"""So many other words beside a heading word, a space apart, make a sentence. [1]"""
_KNOWN = 4
"""An unknown word is a heading only among so many known ones. [1]"""
_ASIDE = 40.0
"""A heading word over the values stands no further left of them. [pt]"""
_FAR = 1.6
"""A line that holds nothing but min, typ and max may stand so many times further below. [1]"""

Found = tuple[int, int, tuple[Head, ...]]
"""First and last line of a heading, and its words from left to right."""


def headings_in(lines: Sequence[Line]) -> list[Found]:
    """The headings of a page, from the top.

    Args:
        lines: Lines of the page.

    Returns:
        Each with the lines that it is set over: ``Values`` above ``Min. Typ. Max.`` is one heading.
    """
    out: list[Found] = []
    for index, line in enumerate(lines):
        heads = _heads(line)
        if not heads:
            continue
        first, last, merged = _with_neighbours(index, heads, lines)
        above = out[-1] if out else None
        if above and (first <= above[1] or (lines[first].y - lines[above[1]].y < _reach(heads) and index - above[1] <= 2)):
            out[-1] = (above[0], max(last, above[1]), _joined(above[2], merged))
        else:
            out.append((first, last, merged))
    return out


def subheads_in(line: Line) -> tuple[Head, ...]:
    """The parts or packages that a line names and holds nothing else; none where it holds fewer than two."""
    phrases = list(_phrases(line.words, 0.8 * line.size))
    names = [phrase for phrase in phrases if PART.match(_text(phrase)) or PACKAGE.match(_text(phrase))]
    return tuple(map(_value, names)) if len(names) >= 2 and len(names) == len(phrases) else ()


def _with_neighbours(index: int, heads: tuple[Head, ...], lines: Sequence[Line]) -> Found:
    first, last = index, index
    for near in (index - 1, index + 1):
        if 0 <= near < len(lines) and abs(lines[near].y - lines[index].y) < _STACK and _over(extra := _loose(lines[near]), heads):
            heads = _joined(heads, extra)
            first, last = min(first, near), max(last, near)
    return first, last, heads


def _over(extra: tuple[Head, ...], heads: tuple[Head, ...]) -> bool:
    """Whether loose heading words stand over or under the values; ``Maximum ratings`` at the left is a caption."""
    values = [head.box[0] for head in heads if head.role.numeric]
    names = [head.box[2] for head in heads if head.role in {Role.LABEL, Role.SYMBOL}]
    first = min(values) if values else max(names, default=0.0)
    return bool(extra) and all(head.role in {Role.LABEL, Role.SYMBOL} or head.middle > first - _ASIDE for head in extra)


def _reach(heads: tuple[Head, ...]) -> float:
    return _FAR * _STACK if {head.role for head in heads} <= _LIMITS else _STACK


def _heads(line: Line) -> tuple[Head, ...]:
    """Heading words of a line; nothing where the line is no heading."""
    known, strange = _sorted_words(line)
    if _is_sentence(line, strange):
        return ()
    phrases = list(_phrases(strange, line.size))
    special = [phrase for phrase in phrases if _SPECIAL.match(_text(phrase))]
    parts = [phrase for phrase in phrases if phrase not in special and all(PART.match(word.text) for word in phrase)]
    other = [phrase for phrase in phrases if phrase not in special and phrase not in parts]
    roles = {head.role for head in known}
    if len(roles) < 2 and not (Role.UNIT in roles and (parts or special)):
        return ()
    if not any(role.numeric for role in roles):
        known += [_value(phrase) for phrase in (special if len(special) > 1 else parts)]
    known = _with_label(known, other)
    known += [
        Head(role=Role.CONDITION, box=hull([word.box for word in phrase]), text=_text(phrase)) for phrase in other if _is_between(phrase, known)
    ]
    odd = len(other) - any(head.text == _text(phrase) for head in known for phrase in other[:1])
    if odd > len(known) // 2 + (Role.UNIT in roles) or not roles & _VALUED:
        return ()
    return tuple(sorted(known, key=lambda head: head.box[0]))


def _is_between(phrase: Sequence[Word], heads: Sequence[Head]) -> bool:
    """Whether an unknown word stands as a heading of its own between two known ones: ``Type``, ``Device``."""
    if len(phrase) > 1 or len(heads) < _KNOWN or not phrase[0].text.isalpha():
        return False
    box = phrase[0].box
    return any(head.box[2] < box[0] for head in heads) and any(head.box[0] > box[2] for head in heads)


def _is_sentence(line: Line, strange: Sequence[Word]) -> bool:
    """Whether heading words stand among others as in a sentence, and fewer than two of them stand alone."""
    runs = [(run, sum(word in strange for word in run)) for run in _phrases(line.words, line.size)]
    return any(_STRAY <= odd < len(run) for run, odd in runs) and sum(not odd for _, odd in runs) < 2


def _sorted_words(line: Line) -> tuple[list[Head], list[Word]]:
    """The words of a line that name columns, and the others."""
    heads: list[Head] = []
    strange: list[Word] = []
    for word in line.words:
        for text, box in _tokens(word):
            role = _role(text)
            if role is None:
                strange.append(word)
            elif heads and heads[-1].role is role and box[0] - heads[-1].box[2] < line.size:
                heads[-1] = Head(role=role, box=hull([heads[-1].box, box]), text=f"{heads[-1].text} {text}")
            else:
                heads.append(Head(role=role, box=box, text=text))
    return list(_merged(heads, line.size)), strange


def _role(text: str) -> Role | None:
    """What a token says of its column."""
    plain = re.sub(r"[^a-z]", "", text.lower())
    signs = re.sub(r"[^\u3040-\u9fff]", "", text)
    if signs and len(signs) <= _MOST_LETTERS:
        return next((role for sign, role in _SIGNS if sign in signs), None)
    return _WORDS.get(plain)


def _with_label(heads: list[Head], other: Sequence[Sequence[Word]]) -> list[Head]:
    """A column of names may be headed by ``Rating`` while the values stand below ``Value``, or by words of its own at the left."""
    values = [head for head in heads if head.role is Role.VALUE]
    if any(head.role is Role.LABEL for head in heads):
        return heads
    if len(values) == 2 and heads[0] is values[0] and values[0].text.lower().startswith("rating"):
        return [Head(role=Role.LABEL, box=values[0].box, text=values[0].text), *heads[1:]]
    if other and other[0][0].box[0] < heads[0].box[0] and any(head.role.numeric for head in heads):
        return [Head(role=Role.LABEL, box=hull([word.box for word in other[0]]), text=_text(other[0])), *heads]
    return heads


def _phrases(words: Sequence[Word], size: float) -> Iterator[list[Word]]:
    """Words that stand together."""
    run: list[Word] = []
    for word in words:
        if run and word.box[0] - run[-1].box[2] > 0.6 * size:
            yield run
            run = []
        run.append(word)
    if run:
        yield run


def _text(words: Sequence[Word]) -> str:
    return " ".join(word.text for word in words).strip(" ,()")


def _value(words: Sequence[Word]) -> Head:
    """A column of values that is headed by what they hold for: a part, a channel, a duration."""
    return Head(role=Role.VALUE, box=hull([word.box for word in words]), text=_text(words))


def _tokens(word: Word) -> Iterator[tuple[str, Box]]:
    """A word as heading tokens: ``Typ./Max.`` is taken apart, each piece with its share of the width."""
    step = (word.box[2] - word.box[0]) / max(1, len(word.text))
    pieces = list(re.finditer(r"[^/|]+", word.text))
    if len(pieces) < 2:
        yield word.text, word.box
        return
    for piece in pieces:
        yield piece.group(), (word.box[0] + piece.start() * step, word.box[1], word.box[0] + piece.end() * step, word.box[3])


def _merged(heads: Sequence[Head], size: float) -> Iterator[Head]:
    """``Max. Rating`` is one column, and so is ``Limit Values``."""
    waiting: Head | None = None
    for head in heads:
        close = waiting is not None and head.box[0] - waiting.box[2] < 0.7 * size
        if waiting is not None and close and Role.VALUE in (pair := {waiting.role, head.role}) and pair & (_LIMITS | {Role.LABEL}):
            role = next(iter(pair - {Role.VALUE}))
            waiting = Head(role=role, box=hull([waiting.box, head.box]), text=f"{waiting.text} {head.text}")
            continue
        if waiting is not None:
            yield waiting
        waiting = head
    if waiting is not None:
        yield waiting


def _loose(line: Line) -> tuple[Head, ...]:
    """Heading words of a line that holds nothing else; unlike a heading of its own it may name one role only."""
    heads = [Head(role=role, box=word.box, text=word.text) for word in line.words if (role := _role(word.text)) is not None]
    return tuple(heads) if len(heads) == len(line.words) else ()


def _joined(one: tuple[Head, ...], other: tuple[Head, ...]) -> tuple[Head, ...]:
    """Two heading lines as one: a min, typ or max below a value takes its place; what stands over the same place is one column."""
    heads = list(one)
    for head in other:
        over = [known for known in heads if known.box[0] < head.box[2] and head.box[0] < known.box[2]]
        if head not in heads and not any(known.role is head.role for known in over):
            heads.append(head)
    if sum(head.role in _LIMITS for head in heads) >= 2:
        heads = [head for head in heads if head.role is not Role.VALUE]
    return tuple(sorted(heads, key=lambda head: head.box[0]))
