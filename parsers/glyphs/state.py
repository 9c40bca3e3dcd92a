"""What a content stream sets before it draws: the graphics and the text state (ISO 32000-1:2008, 8.4 and 9.3)."""

from dataclasses import dataclass

from parsers.glyphs.drawn import BLACK
from parsers.glyphs.fonts import Font
from parsers.glyphs.geometry import Matrix
from service.facts.reading import Box

_INVISIBLE_MODES = (3, 7)


@dataclass(slots=True)
class State:
    """Everything that ``q`` saves and ``Q`` brings back.

    Attributes:
        matrix: From the stream's own points to the page as shown.
        clip: Outside of this box nothing shows; None before anything is clipped.
        fill: Lightness of fills and of text; None for a pattern. [1]
        fill_family: Colour space of fills.
        opacity: Of fills and text. [1]
        blended: Whether what is painted mixes with what lies under it instead of hiding it.
        font: The current font.
        size: Its size. [text space]
        spacing: Extra after each character. [text space]
        word_spacing: Extra after each space. [text space]
        stretch: Horizontal scale. [1]
        leading: From line to line. [text space]
        rise: Of the baseline. [text space]
        mode: How characters are painted.
    """

    matrix: Matrix
    clip: Box | None = None
    fill: float | None = BLACK
    fill_family: str = "gray"
    opacity: float = 1.0
    blended: bool = False
    font: Font | None = None
    size: float = 0.0
    spacing: float = 0.0
    word_spacing: float = 0.0
    stretch: float = 1.0
    leading: float = 0.0
    rise: float = 0.0
    mode: int = 0

    def copy(self) -> "State":
        """The same state, to be changed on its own."""
        # Why spelled out: this runs for every ``q``, and the general way is ten times slower.
        return State(
            self.matrix, self.clip, self.fill, self.fill_family, self.opacity, self.blended, self.font, self.size, self.spacing, self.word_spacing,
            self.stretch, self.leading, self.rise, self.mode,
        )  # fmt: skip

    @property
    def visible(self) -> bool:
        """Whether characters painted now leave ink."""
        return self.mode not in _INVISIBLE_MODES and self.opacity > 0.05
