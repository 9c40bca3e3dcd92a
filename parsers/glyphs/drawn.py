"""What a page draws, before characters become words."""

from dataclasses import dataclass, field

from parsers.types import Rule
from service.facts.reading import Box


@dataclass(slots=True, kw_only=True)
class Mark:
    """One drawn character, in points from the top left of the page as shown.

    Attributes:
        text: What it extracts as.
        x0: Left edge. [pt]
        top: Upper edge. [pt]
        x1: Right edge. [pt]
        bottom: Lower edge. [pt]
        baseline: Height of the line that it stands on, along its own upward direction. [pt]
        font: Name of its font.
        size: Size of its font as shown. [pt]
        turned: By how many degrees, anticlockwise, the character is turned on the page as shown: 0, 90, 180 or 270.
        repaired: Whether the text was repaired.
        doubt: Signs of doubt on this character.
    """

    text: str
    x0: float
    top: float
    x1: float
    bottom: float
    baseline: float
    font: str
    size: float
    turned: int = 0
    repaired: bool = False
    doubt: tuple[str, ...] = ()


@dataclass(slots=True, kw_only=True)
class Drawn:
    """Everything that one page draws.

    Attributes:
        width: Of the page as shown. [pt]
        height: Of the page as shown. [pt]
        marks: Characters in the order in which they are drawn.
        rules: Drawn lines and edges of drawn boxes.
        pictures: Boxes of bitmaps.
    """

    width: float
    height: float
    marks: list[Mark] = field(default_factory=list)
    rules: list[Rule] = field(default_factory=list)
    pictures: list[Box] = field(default_factory=list)
