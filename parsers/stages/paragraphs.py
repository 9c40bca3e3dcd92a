"""Which words of a column speak of which entries: drawn cells first, then lines that stand close, then what is centred on a group."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field

from parsers.types import Rule, Word

_ALIGNED = 0.62
"""A line belongs to an entry when their middles differ by less than this share of its size. [1]"""
_THROUGH = 2.5
"""A line no further than this from a value's middle runs through it and bounds nothing. [pt]"""
_WIDE = 60.0
"""A line that crosses half of this much of a column crosses the column. [pt]"""
_CLOSE = 1.45
"""Lines no further apart than this share of their size are one paragraph. [1]"""

Piece = tuple[float, float, tuple[Word, ...], tuple[Word, ...]]
"""Height, size, words and footnote marks of one line of a column."""


@dataclass(slots=True)
class Paragraph:
    """Lines of one column that are read together.

    Attributes:
        lines: Height and text of each.
        entries: Heights of the entries that it speaks of.
        anchored: Whether one of its lines stands on an entry's line.
        marks: Footnote marks beside it.
        whole: Whether all of it speaks of each of its entries.
    """

    lines: list[tuple[float, str]] = field(default_factory=list)
    entries: list[float] = field(default_factory=list)
    homes: dict[float, float] = field(default_factory=dict)
    anchored: bool = False
    marks: tuple[str, ...] = ()
    whole: bool = False

    @property
    def text(self) -> str:
        """All lines."""
        return " ".join(text for _, text in self.lines)

    @property
    def y(self) -> float:
        """Middle height [pt]."""
        return (self.lines[0][0] + self.lines[-1][0]) / 2

    def nearest(self, height: float) -> float | None:
        """The entry on whose line a line stands."""
        return self.homes.get(height)


def crossing(rules: Sequence[Rule], reach: tuple[float, float]) -> list[float]:
    """Heights of the horizontal lines that cross a column, from the top."""
    left, right = reach
    least = 0.5 * min(right - left, _WIDE)
    return sorted(rule.top for rule in rules if min(rule.x1, right) - max(rule.x0, left) > least)


def drawn_cell(crossings: Sequence[float], y: float) -> tuple[float, float]:
    """From where to where a cell reaches, by the lines that cross its column."""
    above = crossings[bisect_left(crossings, y - _THROUGH) - 1] if bisect_left(crossings, y - _THROUGH) else -1e9
    at = bisect_right(crossings, y + _THROUGH)
    return above, crossings[at] if at < len(crossings) else 1e9


def paragraphs_of(lines: Sequence[Piece], entries: Sequence[float]) -> list[Paragraph]:
    """Group a column's lines and tie them to entries.

    Args:
        lines: The column's lines inside one drawn cell, from the top.
        entries: Heights of the entries in that cell.

    Returns:
        Paragraphs from the top; where a cell holds one paragraph it speaks of every entry in it.
    """
    out: list[Paragraph] = []
    last = (-1e9, 0.0)
    ordered = sorted(lines, key=lambda line: line[0])
    for at, (y, size, words, marks) in enumerate(ordered):
        home = min((entry for entry in entries if abs(entry - y) <= _ALIGNED * size), key=lambda entry: abs(entry - y), default=None)
        close = y - last[0] <= _CLOSE * max(size, last[1])
        if not out or not close or (home is None and _opens(ordered, at)) or (home is not None and out[-1].anchored and home not in out[-1].entries):
            out.append(Paragraph())
        paragraph = out[-1]
        paragraph.lines.append((y, " ".join(word.text for word in words)))
        paragraph.marks += tuple(mark.text for mark in marks)
        if home is not None:
            paragraph.anchored = True
            paragraph.homes[y] = home
            if home not in paragraph.entries:
                paragraph.entries.append(home)
        last = (y, size)
    if len(out) == 1:
        out[0].entries = list(entries)
        return out
    return _centred(out, entries)


def whole_cell(lines: Sequence[Piece], entries: Sequence[float]) -> Paragraph:
    """All lines of a drawn cell as one paragraph that speaks of every entry beside it: ``Steady`` over ``State``."""
    return Paragraph(
        lines=[(y, " ".join(word.text for word in words)) for y, _, words, _ in sorted(lines, key=lambda line: line[0])],
        entries=list(entries),
        anchored=True,
        marks=tuple(mark.text for *_, marks in lines for mark in marks),
        whole=True,
    )


def _opens(lines: Sequence[Piece], at: int) -> bool:
    """Whether a line on no entry's line begins what the next line ends: it ends in a comma, and the next is no further away than the last."""
    if at + 1 >= len(lines) or not lines[at][2][-1].text.rstrip().endswith((",", "\uff0c", ";")):
        return False
    below = lines[at + 1][0] - lines[at][0]
    return below <= _CLOSE * lines[at][1] and (at == 0 or below <= lines[at][0] - lines[at - 1][0] + 1)


def _centred(paragraphs: list[Paragraph], entries: Sequence[float]) -> list[Paragraph]:
    """A paragraph on no entry's line speaks of as many silent entries above as below it, or of those below."""
    taken = {entry for paragraph in paragraphs for entry in paragraph.entries}
    for paragraph in paragraphs:
        if paragraph.anchored:
            continue
        up = _silent([entry for entry in reversed(entries) if entry < paragraph.y], taken)
        down = _silent([entry for entry in entries if entry > paragraph.y], taken)
        count = min(len(up), len(down))
        paragraph.entries = [*up[:count], *down[: count or None]]
        taken.update(paragraph.entries)
    return paragraphs


def _silent(entries: list[float], taken: set[float]) -> list[float]:
    """The run of entries that no paragraph speaks of yet."""
    out = []
    for entry in entries:
        if entry in taken:
            break
        out.append(entry)
    return out
