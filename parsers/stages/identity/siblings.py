"""Other part numbers of the same sheet: ordering codes, and parts that share it."""

from collections.abc import Sequence
from difflib import SequenceMatcher
from itertools import groupby

from parsers.stages.identity.main_part import Candidate
from parsers.stages.identity.part_number import candidates_in, plain_number
from parsers.stages.identity.saying import Saying


def siblings_of(main: Candidate, others: Sequence[Candidate], sayings: Sequence[Saying]) -> tuple[str, ...]:
    """Numbers that stand as large as the main one, begin with it, or share its core, in the order in which they were met."""
    beside = {
        plain_number(text)
        for line in sayings
        if line.size >= 0.9 * main.size > 1 and line.top < 0.5
        for word in line.words
        for text in candidates_in(word)
    }
    own = plain_number(main.text)
    # Why not what the main one begins with: that is the main one cut off.
    whole = [one for one in others if not own.startswith(plain_number(one.text))]
    mine = [one for one in whole if plain_number(one.text) in beside or _is_akin(plain_number(one.text), own)]
    return tuple(one.text for one in sorted(mine, key=lambda one: one.order))


def _is_akin(other: str, main: str) -> bool:
    """Whether a number is the main one with something more, or shares its core of digits and most of the rest."""
    if other.startswith(main):
        return True
    core = max(("".join(run) for digit, run in groupby(main, str.isdigit) if digit), key=len, default="")
    shared = SequenceMatcher(None, other, main, autojunk=False).find_longest_match().size
    return len(core) >= 3 and core in other and shared >= max(5, 0.7 * len(main))
