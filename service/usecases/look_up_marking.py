"""Look a marking up, as read off a board: which part is it, why, and where was it met before?"""

from dataclasses import dataclass

from service.facts.kept_board import KeptBoard
from service.facts.marking import Hit
from service.facts.part import LONGEST_MARKING, Part
from service.facts.result import Result
from service.usecases.ports import MarkingReader, Shelf, Store

CANDIDATES = 60
MOST_HITS = 10


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """A part that may be meant.

    Attributes:
        part: The part under all its names.
        hit: The name that explains the marking best, with the reason in words.
        boards: Boards that carry the part.
        results: Results that speak of it.
    """

    part: Part
    hit: Hit
    boards: tuple[KeptBoard, ...]
    results: tuple[Result, ...]

    @property
    def exact(self) -> bool:
        """Whether the very characters were seen."""
        return self.hit.cost == 0


def look_up_marking(marking: str, *, store: Store, markings: MarkingReader) -> tuple[Candidate, ...]:
    """Find the parts that a marking may stand for.

    Args:
        marking: As read, ``?`` for a character in doubt.
        store: Where parts are kept.
        markings: Knows the confusions of eye and OCR.

    Returns:
        The parts, the likeliest first, each once; none where nothing comes near, or where no marking can be as long.
    """
    if len(marking) > LONGEST_MARKING:
        return ()
    with store.looking() as shelf:
        hits = markings.rank(marking, shelf.parts.near(markings.fold(marking), most=CANDIDATES))
        best: dict[str, Hit] = {}
        for hit in hits:
            best.setdefault(hit.name.part, hit)
        return tuple(candidate for hit in list(best.values())[:MOST_HITS] if (candidate := _candidate(shelf, hit)))


def known_part(marking: str, *, store: Store) -> Part | None:
    """The part that goes by this very name, spelled in any way; None where nothing is certain."""
    with store.looking() as shelf:
        return shelf.parts.find(marking)


def _candidate(shelf: Shelf, hit: Hit) -> Candidate | None:
    """Dress a hit with where the part was met."""
    part = shelf.parts.find(hit.name.part)
    if part is None:
        return None
    return Candidate(part=part, hit=hit, boards=shelf.boards.carrying(part.key), results=shelf.results.of_part(part.key))
