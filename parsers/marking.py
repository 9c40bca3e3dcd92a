"""A part number read off a package, with the characters that eye and OCR confuse.

Which characters look alike is common practice, no source: worn laser marks and small dot fonts.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby

from rapidfuzz.distance import DamerauLevenshtein

from service.facts.marking import Hit
from service.facts.part import PartName, wanted_key

DOUBT = "?"
ALIKE = ("O0QD", "1IL", "5S", "8B", "2Z", "6G", "7T", "VU", "4A")
"""Groups of characters that look alike; the first of each stands for all of it when a marking is folded."""
FOLD = str.maketrans({letter: group[0] for group in ALIKE for letter in group})

LOOKS_ALIKE, IN_DOUBT, MORE_PRINTED, OTHER = 0.25, 0.3, 0.3, 1.0
"""What one character costs: one that looks alike, one in doubt, one of the name that the package leaves out at an end, any other.

Why in this order: a part of the name left out is how small packages are marked; a different character is a different part. The sizes
are custom; only their order, and that three alike cost less than one other, is meant.
"""
MOST = 2.5
"""What may be explained away at most; more would offer parts that merely have a number like it."""


def fold(text: str) -> str:
    """Make characters that are confused equal, and drop what separates.

    Args:
        text: A marking, ``?`` for a character in doubt: ``ab-75n?0``.

    Returns:
        ``4875N?O`` for that; two markings that an eye may take for one another are equal.
    """
    return wanted_key(text).translate(FOLD)


@dataclass(frozen=True, slots=True)
class Step:
    """How one character of the marking stands to one of the name; empty where one has none."""

    seen: str
    known: str
    cost: float


def rank(seen: str, names: Iterable[PartName]) -> tuple[Hit, ...]:
    """Order names by how well they explain what was seen.

    Args:
        seen: The marking as read, ``?`` for a character in doubt.
        names: Known names.

    Returns:
        The names that may be meant, the likeliest first, each with the reason in words.
    """
    hits = (explain(seen, name) for name in names)
    return tuple(sorted((hit for hit in hits if hit is not None), key=lambda hit: (hit.cost, hit.name.text, hit.name.part)))


def explain(seen: str, name: PartName) -> Hit | None:
    """Say what has to be explained away if this name was meant; None where that is too much to believe.

    Args:
        seen: The marking as read.
        name: A known name.
    """
    marking, known = wanted_key(seen), wanted_key(name.text)
    if not marking.replace(DOUBT, "") or not _worth_a_look(marking, known):
        return None
    steps = cheapest_steps(marking, known)
    cost = round(sum(step.cost for step in steps), 2)
    certain = sum(1 for step in steps if step.seen and step.known and step.cost <= LOOKS_ALIKE)
    # Why half: two characters of a marking that agree with a number of ten say nothing.
    if cost > MOST or 2 * certain < len(known):
        return None
    return Hit(name=name, cost=cost, reason=f"{in_words(steps)} ({name.kind} {name.text})")


def _worth_a_look(marking: str, known: str) -> bool:
    """Tell quickly whether two texts are near: whatever one is longer may be left out at an end, the rest must nearly agree."""
    apart = DamerauLevenshtein.distance(marking.translate(FOLD), known.translate(FOLD))
    return apart - marking.count(DOUBT) - abs(len(known) - len(marking)) <= MOST


def cheapest_steps(marking: str, known: str) -> tuple[Step, ...]:
    """Lay a marking beside a name so that the least has to be explained away.

    Args:
        marking: Letters, digits and ``?`` in capitals.
        known: Letters and digits in capitals.

    Returns:
        One step a character, from the left.
    """
    best: dict[tuple[int, int], tuple[float, tuple[Step, ...]]] = {(0, 0): (0.0, ())}
    for i in range(len(marking) + 1):
        for j in range(len(known) + 1):
            ways = [
                (best[i - step_i, j - step_j], step) for step_i, step_j, step in _last_steps(marking, known, i, j) if (i - step_i, j - step_j) in best
            ]
            if ways:
                (before, steps), step = min(ways, key=lambda way: way[0][0] + way[1].cost)
                best[i, j] = (before + step.cost, (*steps, step))
    return best[len(marking), len(known)][1]


def _last_steps(marking: str, known: str, i: int, j: int) -> Iterable[tuple[int, int, Step]]:
    """The ways in which the first i and j characters may end: both have one, the marking lacks one, the name lacks one, two swapped."""
    if i and j:
        yield 1, 1, Step(marking[i - 1], known[j - 1], _difference(marking[i - 1], known[j - 1]))
    if j:
        yield 0, 1, Step("", known[j - 1], MORE_PRINTED if i in {0, len(marking)} else OTHER)
    if i:
        yield 1, 0, Step(marking[i - 1], "", OTHER)
    if i > 1 and j > 1 and marking[i - 2 : i] == known[j - 2 : j][::-1] and marking[i - 1] != marking[i - 2]:
        yield 2, 2, Step(marking[i - 2 : i], known[j - 2 : j], OTHER)


def _difference(seen: str, known: str) -> float:
    """What it costs to take one character for the other."""
    if seen == known:
        return 0.0
    if seen == DOUBT:
        return IN_DOUBT
    return LOOKS_ALIKE if seen.translate(FOLD) == known.translate(FOLD) else OTHER


def in_words(steps: Iterable[Step]) -> str:
    """Say what was explained away, from the left: "? taken as 5, O taken as 0, TR not on the package"."""
    told = [text for left_out, run in groupby(steps, key=_left_out) for text in _told(list(run), left_out=left_out)]
    return ", ".join(told) or "the same characters"


def _left_out(step: Step) -> bool:
    """Whether a character of the name is one that the package leaves out at an end."""
    return not step.seen and step.cost < OTHER


def _told(run: list[Step], *, left_out: bool) -> list[str]:
    """Say steps that stand together: what is left out in one breath, the others one by one."""
    if left_out:
        return [f"{''.join(step.known for step in run)} not on the package"]
    return [_told_alone(step) for step in run if step.cost]


def _told_alone(step: Step) -> str:
    """Say one step."""
    if not step.seen:
        return f"{step.known} missing"
    if not step.known:
        return f"{step.seen} too many"
    if len(step.seen) > 1:
        return f"{step.seen} swapped to {step.known}"
    return f"{step.seen} taken as {step.known}" if step.cost < OTHER else f"{step.seen} is not {step.known}"


def likely(seen: str, *, most: int) -> tuple[str, ...]:
    """Spell out the likeliest readings of a marking: as it is, then with one character after the other taken for one that looks alike.

    Args:
        seen: The marking as read; a ``?`` stays, because any of 36 characters may stand there.
        most: How many at most.

    Returns:
        The readings, without repeats.
    """
    text = wanted_key(seen)
    others = (
        text[:place] + other + text[place + 1 :]
        for place, letter in enumerate(text)
        for group in ALIKE
        if letter in group
        for other in group
        if other != letter
    )
    return tuple(dict.fromkeys((text, *others)))[:most]
