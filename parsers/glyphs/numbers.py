"""Signs of doubt on a whole number: a sign or a figure that stands apart from it."""

from itertools import pairwise

from parsers.glyphs.clusters import Cluster

_APART = 0.3
"""A sign further than this share of the size from its number may belong elsewhere. [1]"""
_SPACED = 0.6
"""Two numbers on one line closer than this share of the size may be one number, set wide. [1]"""
_TOUCHING = 0.15
"""Words closer than this share of the size touch. [1]"""
_OFF = 0.4
"""Numbers whose baselines differ by more than this share of the size stand on different lines. [1]"""
_POINTS = frozenset(".,")
_SIGNS = frozenset("-+±\u2212\u2013")


def weigh_gaps(words: list[Cluster]) -> None:
    """Note doubt on figures whose neighbours at the left stand oddly close or far.

    Args:
        words: Words in reading order.
    """
    for left, middle, right in zip(words, words[1:], words[2:], strict=False):
        if "unmapped" in middle.marks[0].doubt and _close(left, middle) and _close(middle, right):
            left.marks[-1].doubt, right.marks[0].doubt = (*left.marks[-1].doubt, "unmapped"), (*right.marks[0].doubt, "unmapped")
    for left, right in pairwise(words):
        first, last = right.marks[0], left.marks[-1]
        gap = first.x0 - left.x1
        if not first.text.isdecimal() or abs(left.baseline - right.baseline) > _OFF * right.size or gap < -_APART * right.size:
            continue
        if last.text in _SIGNS and len(left.marks) == 1 and _APART * right.size < gap < 1.5 * right.size:
            first.doubt = (*first.doubt, "sign_apart")
        elif (last.text.isdecimal() or last.text in _POINTS) and _alike(left.size, right.size) and gap < _SPACED * right.size and not _is_word(left):
            last.doubt, first.doubt = (*last.doubt, "uneven_gap"), (*first.doubt, "uneven_gap")


def _alike(size: float, other: float) -> bool:
    return abs(size - other) < 0.05 * size


def _close(left: Cluster, right: Cluster) -> bool:
    """Whether two words touch on one line."""
    return abs(left.baseline - right.baseline) < 0.1 * right.size and abs(right.marks[0].x0 - left.x1) < _TOUCHING * right.size


def _is_word(word: Cluster) -> bool:
    return any(mark.text.isalpha() for mark in word.marks)
