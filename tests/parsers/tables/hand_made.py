"""Pages set by hand: words at places, so that one stage can be tried without a PDF."""

from parsers.types import Glyph, Page, Rule, Word

WIDE = 5.0
"""Width of a letter. [pt]"""
HIGH = 9.0
"""Height of a letter. [pt]"""


def word(text, x, y, *, second=None, doubt=(), size=HIGH):
    """A word whose middle stands at a height; the second reader sees the same unless told otherwise."""
    glyphs = tuple(
        Glyph(text=letter, box=(x + at * WIDE, y - size / 2, x + (at + 1) * WIDE, y + size / 2), font="Plain", size=size, doubt=doubt)
        for at, letter in enumerate(text)
    )
    box = (x, y - size / 2, x + len(text) * WIDE, y + size / 2)
    return Word(text=text, box=box, glyphs=glyphs, second=text if second is None else second)


def words(rows):
    """Words of rows: a height, then pairs of a place and a text; a text of several words is set with single spaces."""
    for y, *cells in rows:
        for x, text in cells:
            at = x
            for piece in text.split(" "):
                yield word(piece, at, y)
                at += (len(piece) + 0.6) * WIDE


def page(*rows, rules=(), number=1, extra=()):
    """A page with these rows."""
    return Page(number=number, width=595.0, height=842.0, words=(*words(rows), *extra), rules=tuple(rules))


def across(y, x0=40.0, x1=560.0):
    """A horizontal line."""
    return Rule(x0=x0, top=y, x1=x1, bottom=y)


def upright(x, top, bottom):
    """A vertical line."""
    return Rule(x0=x, top=top, x1=x, bottom=bottom)
