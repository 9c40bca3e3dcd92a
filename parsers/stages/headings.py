"""The headings of tables: lines whose words name columns, in English, Chinese or Japanese, over one line or several."""

from collections.abc import Sequence

from parsers.grid import Head, Line, Role, hull
from parsers.stages.heading_words import LIMITS, PACKAGE, PART, SPECIAL, loose_heads, phrases_of, sorted_words, text_of, value_head
from parsers.types import Word

_VALUED = LIMITS | {Role.VALUE, Role.UNIT}
_NAMED = frozenset({Role.LABEL, Role.SYMBOL})
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
    phrases = list(phrases_of(line.words, 0.8 * line.size))
    names = [phrase for phrase in phrases if PART.match(text_of(phrase)) or PACKAGE.match(text_of(phrase))]
    return tuple(map(value_head, names)) if len(names) >= 2 and len(names) == len(phrases) else ()


def _with_neighbours(index: int, heads: tuple[Head, ...], lines: Sequence[Line]) -> Found:
    first, last = index, index
    for near in (index - 1, index + 1):
        if 0 <= near < len(lines) and abs(lines[near].y - lines[index].y) < _STACK and _over(extra := loose_heads(lines[near]), heads):
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
    return _FAR * _STACK if {head.role for head in heads} <= LIMITS else _STACK


def _heads(line: Line) -> tuple[Head, ...]:
    """Heading words of a line; nothing where the line is no heading."""
    known, strange = sorted_words(line)
    if _is_sentence(line, strange):
        return ()
    phrases = list(phrases_of(strange, line.size))
    special = [phrase for phrase in phrases if SPECIAL.match(text_of(phrase))]
    parts = [phrase for phrase in phrases if phrase not in special and all(PART.match(word.text) for word in phrase)]
    other = [phrase for phrase in phrases if phrase not in special and phrase not in parts]
    roles = {head.role for head in known}
    divided = max(len(special), len(parts)) > 1 and bool(roles & _NAMED)
    if len(roles) < 2 and not (Role.UNIT in roles and (parts or special)) and not divided:
        return ()
    if not any(role.numeric for role in roles):
        known += [value_head(phrase) for phrase in (special if len(special) > 1 else parts)]
    known = _with_label(known, other)
    known += [
        Head(role=Role.CONDITION, box=hull([word.box for word in phrase]), text=text_of(phrase)) for phrase in other if _is_between(phrase, known)
    ]
    odd = len(other) - any(head.text == text_of(phrase) for head in known for phrase in other[:1])
    if odd > len(known) // 2 + (Role.UNIT in roles) or not (roles & _VALUED or divided):
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
    runs = [(run, sum(word in strange for word in run)) for run in phrases_of(line.words, line.size)]
    return any(_STRAY <= odd < len(run) for run, odd in runs) and sum(not odd for _, odd in runs) < 2


def _with_label(heads: list[Head], other: Sequence[Sequence[Word]]) -> list[Head]:
    """A column of names may be headed by ``Rating`` while the values stand below ``Value``, or by words of its own at the left."""
    values = [head for head in heads if head.role is Role.VALUE]
    if any(head.role is Role.LABEL for head in heads):
        return heads
    if len(values) == 2 and heads[0] is values[0] and values[0].text.lower().startswith("rating"):
        return [Head(role=Role.LABEL, box=values[0].box, text=values[0].text), *heads[1:]]
    if other and other[0][0].box[0] < heads[0].box[0] and any(head.role.numeric for head in heads):
        return [Head(role=Role.LABEL, box=hull([word.box for word in other[0]]), text=text_of(other[0])), *heads]
    return heads


def _joined(one: tuple[Head, ...], other: tuple[Head, ...]) -> tuple[Head, ...]:
    """Two heading lines as one: a min, typ or max below a value takes its place; what stands over the same place is one column."""
    heads = list(one)
    for head in other:
        over = [known for known in heads if known.box[0] < head.box[2] and head.box[0] < known.box[2]]
        if head not in heads and not any(known.role is head.role for known in over):
            heads.append(head)
    if sum(head.role in LIMITS for head in heads) >= 2:
        heads = [head for head in heads if head.role is not Role.VALUE]
    return tuple(sorted(heads, key=lambda head: head.box[0]))
