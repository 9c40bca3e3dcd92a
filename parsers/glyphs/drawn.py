"""What a page draws, before characters become words. All places are in points from the top left of the page as shown."""

from dataclasses import dataclass, field

from parsers.glyphs.geometry import Matrix
from parsers.types import Rule
from service.facts.reading import Box

BLACK, WHITE = 0.0, 1.0
SLANTING = 45


@dataclass(slots=True, eq=False)
class Mark:
    """One drawn character.

    Attributes:
        text: What it extracts as.
        x0: Left edge. [pt]
        top: Upper edge. [pt]
        x1: Right edge. [pt]
        bottom: Lower edge. [pt]
        x: Where its origin lies. [pt]
        y: Where its origin lies: on its baseline. [pt]
        font: Name of its font.
        size: Height of its font as shown. [pt]
        turned: By how many degrees, anticlockwise, it is turned on the page as shown: 0, 90, 180, 270, or 45 for any slant.
        order: When it was drawn, counted over everything that the page draws.
        light: Lightness of its colour, 0 black to 1 white. [1]
        repaired: Whether the text was repaired.
        doubt: Signs of doubt on it.
    """

    text: str
    x0: float
    top: float
    x1: float
    bottom: float
    x: float
    y: float
    font: str
    size: float
    turned: int = 0
    order: int = 0
    light: float = BLACK
    repaired: bool = False
    doubt: tuple[str, ...] = ()


@dataclass(slots=True, eq=False)
class Patch:
    """A filled area or a picture, which may lie under characters or cover them.

    Attributes:
        box: Its place.
        order: When it was drawn.
        light: Lightness of a filled area, 0 black to 1 white; None for a picture or a pattern. [1]
        picture: Whether it is a picture.
        opaque: Whether it hides what lies under it.
    """

    box: Box
    order: int
    light: float | None
    picture: bool = False
    opaque: bool = True


@dataclass(slots=True)
class Drawn:
    """Everything that one page draws.

    Attributes:
        width: Of the page as shown. [pt]
        height: Of the page as shown. [pt]
        matrix: From the page's own points to the page as shown.
        marks: Characters in the order in which they are drawn.
        rules: Drawn lines and edges of drawn boxes.
        patches: Filled areas and pictures, in the order in which they are drawn.
        notes: Boxes of annotations that show something.
        doubt: Signs of doubt on the whole page.
    """

    width: float
    height: float
    matrix: Matrix
    marks: list[Mark] = field(default_factory=list)
    rules: list[Rule] = field(default_factory=list)
    patches: list[Patch] = field(default_factory=list)
    notes: list[Box] = field(default_factory=list)
    doubt: set[str] = field(default_factory=set)
