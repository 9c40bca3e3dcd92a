"""Signs of doubt that a whole page or file gives its figures, and what every sign means in words for the person who looks."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from parsers.types import Glyph, Page, Word

UNWEIGHED, INCOMPLETE, PAGE_BOX = "unweighed", "incomplete", "page_box"
"""The reference library read the page; part of the page could not be followed; its size or turn is not valid."""
INKLESS = "inkless"
"""A figure leaves no ink where it stands."""
TWO_TEXTS = "two_texts"
"""A font names another figure than its map to text does."""
REBUILT, STRAY, REVISED = "rebuilt", "stray", "revised"
"""The file's table of objects is damaged; it holds an object twice; an earlier revision of it shows another figure."""

_IN_WORDS = {
    UNWEIGHED: "the page was read by the reference library, which does not tell whether a viewer shows the characters",
    INCOMPLETE: "part of the page's content could not be followed, so that something may be missing or painted over",
    PAGE_BOX: "the page's size or turn is not valid, so that viewers may show another part of it",
    REBUILT: "the file's table of objects is damaged, so that its pages had to be put together by searching",
    STRAY: "the file holds an object twice and its table names only one, so that another viewer may show another value",
    REVISED: "an earlier revision inside the file shows something else in this place",
    INKLESS: "a viewer shows no ink in its place",
    TWO_TEXTS: "its font names another figure than the font's map to text does",
    "pale": "it is printed too small or too pale to be seen",
    "hidden": "it is painted invisibly over a picture",
    "cut": "part of it is clipped away",
    "covered": "a picture or a pattern covers it",
    "overlapped": "another character is printed over it",
    "crossed": "a line goes through it",
    "annotated": "an annotation lies over it",
    "symbol_font": "it comes from a font of signs and the second reader does not see the sign",
    "unmapped": "nothing in the file tells which character it shows",
    "sign_apart": "its sign stands far off",
    "uneven_gap": "another number stands oddly near",
    "beside_hidden": "figures that no viewer shows stand on the same line",
    "hidden_value": "the page hides a value that no viewer shows",
    "doubled": "the whole page is drawn twice",
    "stamped": "figures are stamped across the page",
    "unsure": "the reader of pictures is not sure of it",
    "looks_alike": "it may be a letter or a figure that looks like it",
}


def in_words(signs: Iterable[str]) -> Iterator[str]:
    """What speaks against a figure.

    Args:
        signs: Signs of doubt; what follows a colon is the sign's own matter.

    Yields:
        A clause for each kind of sign, none twice.
    """
    kinds = dict.fromkeys(sign.partition(":")[0] for sign in signs)
    yield from (_IN_WORDS[kind] for kind in kinds if kind in _IN_WORDS)


def doubted(page: Page, signs: Iterable[str]) -> Page:
    """A page whose figures carry signs of doubt that touch all of it.

    Args:
        page: The page.
        signs: The signs.

    Returns:
        The page with the signs on every figure; the same page where there are none.
    """
    more = tuple(signs)
    return replace(page, words=tuple(_doubted_word(word, more) for word in page.words)) if more else page


def _doubted_word(word: Word, more: tuple[str, ...]) -> Word:
    return replace(word, glyphs=tuple(_doubted_glyph(glyph, more) for glyph in word.glyphs))


def _doubted_glyph(glyph: Glyph, more: tuple[str, ...]) -> Glyph:
    return replace(glyph, doubt=(*glyph.doubt, *more)) if glyph.text.isdecimal() else glyph
