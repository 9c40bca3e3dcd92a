"""Fourth stage: the headings of a page's tables, with the lines that stand below each."""

import re
from collections.abc import Iterator, Sequence

from parsers.grid import Head, Line, Region, Role, hull
from parsers.types import Page, Word

_VOCABULARY: dict[str, Role] = {
    **dict.fromkeys(
        ("parameter", "parameters", "characteristic", "characteristics", "item", "description", "参数", "项目", "項目", "parametr"), Role.LABEL
    ),
    **dict.fromkeys(("symbol", "symbols", "sym", "symb", "符号", "記号"), Role.SYMBOL),
    **dict.fromkeys(
        ("condition", "conditions", "test", "note", "notes", "测试条件", "条件", "測定条件", "testconditions", "testcondition", "remark"),
        Role.CONDITION,
    ),
    **dict.fromkeys(("min", "minimum", "最小值", "最小"), Role.MIN),
    **dict.fromkeys(("typ", "typical", "典型值", "典型", "標準"), Role.TYP),
    **dict.fromkeys(("max", "maximum", "最大值", "最大"), Role.MAX),
    **dict.fromkeys(("value", "values", "rating", "ratings", "limit", "limits", "数值", "额定值", "极限值", "定格", "定格値"), Role.VALUE),
    **dict.fromkeys(("unit", "units", "单位", "単位", "unis"), Role.UNIT),
}
_PART = re.compile(r"^(?=.*\d)(?=.*[A-Z])[A-Z0-9][A-Z0-9/\-]{3,}[A-Za-z]?,?$")
_SPECIAL = re.compile(r"^(?:Q[12]|[NP][- ]?ch(?:annel)?|\d{1,2}\s?(?:s|sec|secs|seconds)|steady[ -]?state)$", re.IGNORECASE)
_PACKAGE = re.compile(r"^(?:TO|SOT|SOIC|SO|DPAK|D2PAK|IPAK|SC|DFN|SOP|TSSOP)-?\s?\d[\w-]*$", re.IGNORECASE)
_NOTES = re.compile(r"^(?:notes?\b\s*[:\uff1a]?$|notes?\s*[:\uff1a]|※|备注|注[:\uff1a]|footnote)", re.IGNORECASE)
_FIGURE = re.compile(r"^fig(?:ure|\.)?\s*\d+", re.IGNORECASE)
_REACH = 75.0
"""A gap of more than this below the last line of a table ends it. [pt]"""
_ABOVE = 38.0
"""A caption stands no further above its heading, nor its lines from each other. [pt]"""
_STACK = 17.0
"""Lines of one heading stand no further apart than this. [pt]"""


def regions_in(page: Page, lines: tuple[Line, ...], before: Region | None = None) -> tuple[Region, ...]:
    """The tables of a page by their headings.

    Args:
        page: The page.
        lines: Its lines.
        before: Last region of the page before, whose heading carries over where this page begins with rows.

    Returns:
        Regions from the top; each takes the lines down to the next heading, the notes, or a wide gap.
    """
    headings = _stacked([(index, heads) for index, line in enumerate(lines) if (heads := _heads(line))], lines)
    starts = [first for first, _, _ in headings] + [len(lines)]
    regions = []
    for (first, last, heads), following in zip(headings, starts[1:], strict=True):
        body = tuple(_body(lines[last + 1 : following], lines[last]))
        parted, rest = _subheaded(heads, body)
        box = hull([head.box for head in parted])
        caption = " ".join([_caption(lines, first), *(line.text for line in lines[first : last + 1])])
        regions.append(Region(page=page, heads=parted, top=box[1], heading_bottom=box[3], caption=caption, lines=rest))
    carried = _carried(page, lines[: starts[0]], before)
    return (*([carried] if carried else []), *regions)


def _heads(line: Line) -> tuple[Head, ...]:
    """Heading words of a line; nothing where the line is no heading."""
    heads: list[Head] = []
    strange: list[Word] = []
    for word in line.words:
        for text, box in _tokens(word):
            role = _VOCABULARY.get(re.sub(r"[^a-z\u3040-\u9fff]", "", text.lower()))
            if role is None:
                strange.append(word)
            elif heads and heads[-1].role is role and box[0] - heads[-1].box[2] < line.size:
                heads[-1] = Head(role=role, box=hull([heads[-1].box, box]), text=f"{heads[-1].text} {text}")
            else:
                heads.append(Head(role=role, box=box, text=text))
    heads = list(_merged(heads, line.size))
    roles = {head.role for head in heads}
    phrases = list(_phrases(strange, line.size))
    special = [phrase for phrase in phrases if _SPECIAL.match(_text(phrase))]
    parts = [phrase for phrase in phrases if phrase not in special and all(_PART.match(word.text) for word in phrase)]
    odd = len(phrases) - len(parts) - len(special)
    if len(roles) < 2 and not (Role.UNIT in roles and (parts or special)):
        return ()
    if len(special) > 1 and not any(role.numeric for role in roles):
        heads += [_value(phrase) for phrase in special]
        roles |= {Role.VALUE}
    named = [phrase for phrase in phrases if phrase not in parts and phrase not in special]
    if named and Role.LABEL not in roles and named[0][0].box[0] < heads[0].box[0] and any(role.numeric for role in roles):
        heads = [Head(role=Role.LABEL, box=hull([word.box for word in named[0]]), text=_text(named[0])), *heads]
        odd -= 1
    if odd > len(heads) // 2 + (Role.UNIT in roles) or (not roles & {Role.MIN, Role.TYP, Role.MAX, Role.VALUE, Role.UNIT}):
        return ()
    if parts and not any(role.numeric for role in roles):
        heads += [_value(phrase) for phrase in parts]
    return tuple(sorted(heads, key=lambda head: head.box[0]))


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


def _tokens(word: Word) -> Iterator[tuple[str, tuple[float, float, float, float]]]:
    """A word as heading tokens: ``Typ./Max.`` and ``Unit(s)`` taken apart by their glyphs."""
    pieces = [piece for piece in re.split(r"[/|]", word.text) if piece]
    if len(pieces) < 2:
        yield word.text, word.box
        return
    step = (word.box[2] - word.box[0]) / max(1, len(word.text))
    at = 0
    for piece in pieces:
        at = word.text.index(piece, at)
        yield piece, (word.box[0] + at * step, word.box[1], word.box[0] + (at + len(piece)) * step, word.box[3])
        at += len(piece)


def _merged(heads: Sequence[Head], size: float) -> Iterator[Head]:
    """``Max. Rating`` is one column, and so is ``Limit Values``, ``Note / Test Condition``."""
    waiting: Head | None = None
    for head in heads:
        if waiting is not None and head.box[0] - waiting.box[2] < 0.7 * size:
            pair = {waiting.role, head.role}
            if pair in ({Role.MAX, Role.VALUE}, {Role.MIN, Role.VALUE}, {Role.TYP, Role.VALUE}, {Role.LABEL, Role.VALUE}):
                role = next(iter(pair - {Role.VALUE}))
                waiting = Head(role=role, box=hull([waiting.box, head.box]), text=f"{waiting.text} {head.text}")
                continue
        if waiting is not None:
            yield waiting
        waiting = head
    if waiting is not None:
        yield waiting


def _stacked(found: list[tuple[int, tuple[Head, ...]]], lines: tuple[Line, ...]) -> list[tuple[int, int, tuple[Head, ...]]]:
    """Headings set over several lines are one: ``Values`` above ``Min. Typ. Max.``."""
    out: list[tuple[int, int, tuple[Head, ...]]] = []
    for index, heads in found:
        first, last = index, index
        merged = heads
        for near, step in ((index - 1, -1), (index + 1, 1)):
            if 0 <= near < len(lines) and abs(lines[near].y - lines[index].y) < _STACK and (extra := _loose(lines[near])):
                merged = _joined(merged, extra)
                first, last = (near, last) if step < 0 else (first, near)
        if out and first <= out[-1][1]:
            out[-1] = (out[-1][0], max(last, out[-1][1]), _joined(out[-1][2], merged))
        elif out and lines[first].y - lines[out[-1][1]].y < _reach(heads) and index - out[-1][1] <= 2:
            out[-1] = (out[-1][0], last, _joined(out[-1][2], merged))
        else:
            out.append((first, last, merged))
    return out


def _subheaded(heads: tuple[Head, ...], body: tuple[Line, ...]) -> tuple[tuple[Head, ...], tuple[Line, ...]]:
    """A lone value column whose first line names parts or packages is one column for each of them."""
    values = [head for head in heads if head.role is Role.VALUE]
    if len(values) != 1 or not body or body[0].y - values[0].box[3] > _STACK:
        return heads, body
    phrases = list(_phrases(body[0].words, 0.8 * body[0].size))
    names = [phrase for phrase in phrases if _PART.match(_text(phrase)) or _PACKAGE.match(_text(phrase))]
    if len(names) < 2 or len(names) != len(phrases):
        return heads, body
    return tuple(sorted([*(head for head in heads if head is not values[0]), *map(_value, names)], key=lambda head: head.box[0])), body[1:]


def _reach(heads: tuple[Head, ...]) -> float:
    """How far below a heading its second line may stand: far where it holds nothing but min, typ and max."""
    return 1.6 * _STACK if {head.role for head in heads} <= {Role.MIN, Role.TYP, Role.MAX} else _STACK


def _loose(line: Line) -> tuple[Head, ...]:
    """Heading words of a line that holds nothing else; unlike a heading of its own it may name one role only."""
    heads = [
        Head(role=role, box=word.box, text=word.text)
        for word in line.words
        if (role := _VOCABULARY.get(re.sub(r"[^a-z\u3040-\u9fff]", "", word.text.lower()))) is not None
    ]
    return tuple(heads) if len(heads) == len(line.words) else ()


def _joined(one: tuple[Head, ...], other: tuple[Head, ...]) -> tuple[Head, ...]:
    """Two heading lines as one: a min, typ or max below a value takes its place; what stands over the same place is one column."""
    heads = list(one)
    for head in other:
        over = [known for known in heads if known.box[0] < head.box[2] and head.box[0] < known.box[2]]
        if head in heads or any(known.role is head.role for known in over):
            continue
        heads.append(head)
    limits = [head for head in heads if head.role in {Role.MIN, Role.TYP, Role.MAX}]
    if len(limits) >= 2:
        heads = [head for head in heads if head.role is not Role.VALUE]
    return tuple(sorted(heads, key=lambda head: head.box[0]))


def _body(lines: Sequence[Line], heading: Line) -> Iterator[Line]:
    """Lines of a table, until notes begin or nothing follows for long."""
    y = heading.y
    for line in lines:
        if line.y - y > _REACH or _NOTES.match(line.text) or (_FIGURE.match(line.text) and line.words[0].box[0] < heading.words[0].box[2]):
            return
        yield line
        y = line.y


def _caption(lines: tuple[Line, ...], first: int) -> str:
    """Up to three lines that stand close above a heading."""
    taken: list[str] = []
    y = lines[first].y
    for line in reversed(lines[max(0, first - 3) : first]):
        if y - line.y > _ABOVE:
            break
        taken.insert(0, line.text)
        y = line.y
    return " ".join(taken)


def _carried(page: Page, lines: tuple[Line, ...], before: Region | None) -> Region | None:
    """A table that runs on from the page before without a heading of its own."""
    if before is None or not lines:
        return None
    return Region(page=page, heads=before.heads, top=lines[0].y, heading_bottom=lines[0].y, caption=before.caption, lines=lines, carried=True)
