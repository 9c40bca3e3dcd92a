"""Weighs what a document's words say about its kind."""

from collections.abc import Sequence
from dataclasses import dataclass

from parsers.stages.kind.components import COMPONENTS
from parsers.stages.kind.documents import DOCUMENTS
from parsers.stages.kind.plain import plain
from parsers.stages.kind.shape import Shape, shape_of
from parsers.stages.kind.switches import is_titled_switch, quantities_of

PAGES = 12  # why: the first dozen tell what a document is; a manual may have a thousand
LETTERS = 20_000  # of a page; more is no page that anybody drew
OPENING = 1500  # characters
CLEAR = 15  # of eighteen; a document that names so much of a switch is weighed no further


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """What was found.

    Attributes:
        switch: Quantities of a switch on the two neighbouring pages that name most, and three for its title.
        others: Weight of every other kind; nothing where the switch is clear.
        letters: Length of the text.
        pictured: Whether most pages are pictures.
    """

    switch: int
    others: dict[str, int]
    letters: int
    pictured: bool

    @property
    def best(self) -> str:
        """The other kind that weighs most."""
        return max(self.others, key=lambda kind: self.others[kind])

    @property
    def against(self) -> int:
        """The weight of the best."""
        return max(self.others.values(), default=0)


def weigh(pages: Sequence[str]) -> Weights:
    """Weigh the text of a document's pages."""
    told = [plain(page[:LETTERS]) for page in pages[:PAGES]]
    body, opening = " ".join(told), _opening(told)
    named = [quantities_of(page) for page in told]
    most = max((len(one | other) for one, other in zip(named, [*named[1:], set()], strict=True)), default=0)
    switch = most + 3 * is_titled_switch(opening)
    shape = shape_of(told, pages=len(pages))
    return Weights(
        switch=switch,
        others={} if switch >= CLEAR else _others(opening, body, shape, most),
        letters=len(body),
        pictured=shape.is_pictured,
    )


def _opening(told: list[str]) -> str:
    """Where the document begins, a maker's cover letter left out."""
    own = [page for page in told if "is now part of" not in page[:400]] or told
    return " ".join(own[:2])[:OPENING].strip()


def _others(opening: str, body: str, shape: Shape, quantities: int) -> dict[str, int]:
    is_document = shape.is_prose or shape.is_drawn or (shape.headings < 2 and any(one.is_title_of(opening) for one in DOCUMENTS))
    weights = {one.kind: one.score(opening, body) // (2 if is_document else 1) for one in COMPONENTS}
    weights |= {one.kind: one.score(opening, body) for one in DOCUMENTS}
    # Why less by each quantity: a front page whose tables are missing is prose as well.
    weights["article"] += max(8 - quantities, 0) * shape.is_prose
    weights["schematic"] += 8 * shape.is_drawn
    return weights
