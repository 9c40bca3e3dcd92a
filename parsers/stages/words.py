"""Second stage: one page of a document becomes words, rules and pictures on the page as shown."""

import functools

from parsers.glyphs.clusters import Cluster, clusters
from parsers.glyphs.drawn import Mark
from parsers.glyphs.source import Source
from parsers.glyphs.turning import main_turn, turned_page
from parsers.glyphs.twice import without_copies
from parsers.types import Document, Glyph, Page, Word


@functools.lru_cache(maxsize=1)
def _source(data: bytes) -> Source:
    """The document that is being read: its pages share fonts, so the last one is kept open."""
    return Source(data)


def read_page(document: Document, number: int) -> Page:
    """Read one page in full.

    Args:
        document: An opened document.
        number: The page, counted from 1.

    Returns:
        The page's words, rules and pictures, in points from the top left of the page as shown.
    """
    drawn = _source(document.data).draw(number)
    turn = main_turn(drawn.marks)
    page = turned_page(drawn, turn)
    upright = [mark for mark in without_copies(page.marks) if not mark.turned]
    return Page(
        number=number,
        width=page.width,
        height=page.height,
        words=tuple(_word(cluster) for cluster in clusters(upright)),
        rules=tuple(page.rules),
        pictures=tuple(patch.box for patch in page.patches if patch.light is None),
        turned=turn,
    )


def _word(cluster: Cluster) -> Word:
    glyphs = tuple(_glyph(mark) for mark in cluster.marks)
    return Word(
        text="".join(glyph.text for glyph in glyphs),
        box=(
            min(glyph.box[0] for glyph in glyphs),
            min(glyph.box[1] for glyph in glyphs),
            max(glyph.box[2] for glyph in glyphs),
            max(glyph.box[3] for glyph in glyphs),
        ),
        glyphs=glyphs,
    )


def _glyph(mark: Mark) -> Glyph:
    return Glyph(
        text=mark.text,
        box=(mark.x0, mark.top, mark.x1, mark.bottom),
        font=mark.font,
        size=mark.size,
        upright=not mark.turned,
        repaired=mark.repaired,
        doubt=mark.doubt,
    )
