"""Second stage: one page of a document becomes words, rules and pictures on the page as shown."""

from parsers.glyphs.clusters import Cluster, clusters
from parsers.glyphs.drawn import Mark
from parsers.glyphs.reference import drawn_page
from parsers.glyphs.symbol_font import repaired
from parsers.glyphs.twice import without_copies
from parsers.types import Document, Glyph, Page, Word


def read_page(document: Document, number: int) -> Page:
    """Read one page in full.

    Args:
        document: An opened document.
        number: The page, counted from 1.

    Returns:
        The page's words, rules and pictures, in points from the top left of the page as shown.
    """
    drawn = drawn_page(document.data, number)
    upright = [repaired(mark) for mark in without_copies(drawn.marks) if not mark.turned]
    return Page(
        number=number,
        width=drawn.width,
        height=drawn.height,
        words=tuple(_word(cluster) for cluster in clusters(upright)),
        rules=tuple(drawn.rules),
        pictures=tuple(drawn.pictures),
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
