"""Characters that stand together become words: by place alone, whatever the order in which they were drawn."""

from dataclasses import dataclass, field

from parsers.glyphs.drawn import Mark

_GAP = 0.2
"""A wider gap than this share of the size ends a word. [1]"""
_SMALLER = 0.85
"""A character smaller than this share of its neighbour is a mark or an index of it. [1]"""
_SHIFT = 0.12
"""A small character stands raised or lowered when its baseline differs by more than this share of the size. [1]"""
_SAME_LINE = 0.3
"""A space ends a word whose baseline is no further off than this share of the size. [1]"""
_CIRCLED: frozenset[str] = frozenset(map(chr, (*range(0x2460, 0x2474), *range(0x24EA, 0x2500), *range(0x2776, 0x2794))))
_BAND = 8.0
"""Height of the bands in which words that are still open are looked up. [pt]"""


@dataclass(slots=True, eq=False)
class Cluster:
    """A word while it grows to the right.

    Attributes:
        marks: Its characters, left to right.
        x1: Right end. [pt]
        size: Size of its largest character. [pt]
        baseline: Baseline of its largest character. [pt]
        closed: Whether a space has ended it.
    """

    marks: list[Mark] = field(default_factory=list)
    x1: float = 0.0
    size: float = 0.0
    baseline: float = 0.0
    closed: bool = False

    def add(self, mark: Mark) -> None:
        """Take one more character at the right."""
        self.marks.append(mark)
        self.x1 = max(self.x1, mark.x1)
        if mark.size > self.size:
            self.size, self.baseline = mark.size, mark.y


def clusters(marks: list[Mark]) -> list[Cluster]:
    """Words of upright characters.

    Args:
        marks: Upright characters, sorted from left to right.

    Returns:
        Words in reading order: by line, then from left to right.
    """
    words: list[Cluster] = []
    bands: dict[int, list[Cluster]] = {}
    last_on: dict[float, Cluster] = {}
    for mark in marks:
        word = last_on.get(mark.y)
        if word is None or not _follows(word, mark):
            word = _neighbour(mark, bands)
        if mark.text.isspace():
            if word is not None and _ends(word, mark):
                word.closed = True
            continue
        if word is None or word.closed or not _joins(word, mark):
            word = _begun(mark, bands)
            words.append(word)
        word.add(mark)
        last_on[mark.y] = word
    return _in_reading_order(words)


def _follows(word: Cluster, mark: Mark) -> bool:
    """Whether a mark is the plain next one of a word, of the same size on the same baseline: the usual case, told quickly."""
    last = word.marks[-1]
    return last.y == mark.y and last.size == mark.size and -_GAP * mark.size < mark.x0 - word.x1 < _GAP * mark.size


def _ends(word: Cluster, space: Mark) -> bool:
    """Whether a space stands behind a word, not over it or on another line."""
    return space.x0 > word.x1 - _GAP * space.size and abs(word.marks[-1].y - space.y) < _SAME_LINE * space.size


def _begun(mark: Mark, bands: dict[int, list[Cluster]]) -> Cluster:
    """A new word, kept where marks that follow it look for it; words far to the left are forgotten."""
    word, band = Cluster(), round(mark.y / _BAND)
    bands[band] = [*(other for other in bands.get(band, ()) if other.x1 > mark.x0 - 2 * mark.size), word]
    return word


def _neighbour(mark: Mark, bands: dict[int, list[Cluster]]) -> Cluster | None:
    """The word that ends where the mark begins, on the nearest baseline."""
    best, least, band = None, 1e9, round(mark.y / _BAND)
    for near in (band - 1, band, band + 1):
        for word in bands.get(near, ()):
            gap, size = mark.x0 - word.x1, max(word.size, mark.size)
            if -0.6 * size < gap < _GAP * size and (away := abs(word.baseline - mark.y)) < 0.6 * size and away + abs(gap) < least:
                best, least = word, away + abs(gap)
    return best


def _joins(word: Cluster, mark: Mark) -> bool:
    """Whether a mark belongs to the word at its left; a footnote mark does not, nor does a digit of another size."""
    last = word.marks[-1]
    if _of_signs(mark) != _of_signs(last) or (mark.font != last.font and _unreadable(mark) != _unreadable(last)):
        return False
    if _alike(mark.size, last.size) and abs(last.y - mark.y) <= _SHIFT * mark.size:
        return True
    if _alike(mark.size, word.size):
        return abs(word.baseline - mark.y) <= _SHIFT * word.size
    raised = mark.y < word.baseline - _SHIFT * word.size
    return mark.size < word.size and not raised and not last.text.isdecimal()


def _alike(size: float, other: float) -> bool:
    """Whether two sizes are those of one word, not of a word and its index."""
    return size >= _SMALLER * other and other >= _SMALLER * size


def _of_signs(mark: Mark) -> bool:
    """Whether a mark is a circled figure: it marks a footnote."""
    return mark.text in _CIRCLED


def _unreadable(mark: Mark) -> bool:
    """Whether nothing tells what a mark shows; out of another font than its neighbours it is taken for a footnote mark."""
    return bool(mark.doubt) and "unmapped" in mark.doubt


def _in_reading_order(words: list[Cluster]) -> list[Cluster]:
    """By line, then from left to right."""
    lines: list[tuple[float, list[Cluster]]] = []
    for word in sorted(words, key=lambda word: word.baseline):
        if lines and word.baseline - lines[-1][0] < 0.3 * word.size:
            lines[-1][1].append(word)
        else:
            lines.append((word.baseline, [word]))
    return [word for _, line in lines for word in sorted(line, key=lambda word: word.marks[0].x0)]
