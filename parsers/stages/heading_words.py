"""Words that name the columns of a table, in English, Chinese or Japanese."""

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
    ("參數", Role.LABEL),
    ("项目", Role.LABEL),
    ("項目", Role.LABEL),
    ("符号", Role.SYMBOL),
    ("符號", Role.SYMBOL),
    ("記号", Role.SYMBOL),
    ("条件", Role.CONDITION),
    ("條件", Role.CONDITION),
    ("最小", Role.MIN),
    ("典型", Role.TYP),
    ("標準", Role.TYP),
    ("最大值", Role.MAX),
    ("最大", Role.MAX),
    ("单位", Role.UNIT),
    ("單位", Role.UNIT),
    ("単位", Role.UNIT),
    ("定格", Role.VALUE),
    ("额定", Role.VALUE),
    ("額定", Role.VALUE),
    ("极限", Role.VALUE),
    ("極限", Role.VALUE),
    ("数值", Role.VALUE),
    ("數值", Role.VALUE),
    ("规格", Role.VALUE),
    ("規格", Role.VALUE),
)
"""Chinese and Japanese words for the columns; the first that stands in a token decides."""

PART = re.compile(r"^(?=.*\d)(?=.*[A-Z])[A-Z0-9][A-Z0-9/\-]{3,}[A-Za-z]?,?$")
"""A part number over a column of values."""

PACKAGE = re.compile(r"^(?:TO|SOT|SOIC|SO|DPAK|D2PAK|IPAK|SC|DFN|SOP|TSSOP)-?\s?\d[\w-]*$", re.IGNORECASE)
"""A package over a column of values."""

SPECIAL = re.compile(r"^(?:Q[12]|[NP][- ]?ch(?:annel)?|\d{1,2}\s?(?:s|sec|secs|seconds)|steady[ -]?state)$", re.IGNORECASE)

LIMITS = frozenset({Role.MIN, Role.TYP, Role.MAX})

_MOST_LETTERS = 8
"""A Chinese or Japanese heading is no longer than this. [1]"""


def sorted_words(line: Line) -> tuple[list[Head], list[Word]]:
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


def phrases_of(words: Sequence[Word], size: float) -> Iterator[list[Word]]:
    """Words that stand together."""
    run: list[Word] = []
    for word in words:
        if run and word.box[0] - run[-1].box[2] > 0.6 * size:
            yield run
            run = []
        run.append(word)
    if run:
        yield run


def text_of(words: Sequence[Word]) -> str:
    """The words with single spaces between, brackets and commas at their ends taken off."""
    return " ".join(word.text for word in words).strip(" ,()")


def value_head(words: Sequence[Word]) -> Head:
    """A column of values that is headed by what they hold for: a part, a channel, a duration."""
    return Head(role=Role.VALUE, box=hull([word.box for word in words]), text=text_of(words))


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
        if waiting is not None and close and Role.VALUE in (pair := {waiting.role, head.role}) and pair & (LIMITS | {Role.LABEL}):
            role = next(iter(pair - {Role.VALUE}))
            waiting = Head(role=role, box=hull([waiting.box, head.box]), text=f"{waiting.text} {head.text}")
            continue
        if waiting is not None:
            yield waiting
        waiting = head
    if waiting is not None:
        yield waiting


def loose_heads(line: Line) -> tuple[Head, ...]:
    """Heading words of a line that holds nothing else; unlike a heading of its own it may name one role only."""
    heads = [Head(role=role, box=word.box, text=word.text) for word in line.words if (role := _role(word.text)) is not None]
    return tuple(heads) if len(heads) == len(line.words) else ()
