"""What all operators share: the state, the resources, and where to keep what is drawn."""

from typing import Any

from pdfminer.pdftypes import resolve1
from pdfminer.psparser import PSLiteral

from parsers.errors import TooLargeError
from parsers.glyphs.doubts import INCOMPLETE
from parsers.glyphs.drawn import Drawn, Patch
from parsers.glyphs.geometry import Matrix, overlap
from parsers.glyphs.layers import Layers
from parsers.glyphs.paths import Path
from parsers.glyphs.state import State
from parsers.glyphs.text import TextLine
from service.facts.reading import Box

MOST_OBJECTS = 200_000
OPAQUE = 0.9
"""From this opacity on a fill hides what lies under it. [1]"""


class Stage:
    """A page while it is drawn.

    Args:
        drawn: Where to keep what is drawn.
        matrix: From the page's own points to the page as shown.
        layers: Which layers are off.
    """

    def __init__(self, *, drawn: Drawn, matrix: Matrix, layers: Layers) -> None:
        self.drawn, self.layers = drawn, layers
        self.state, self.saved = State(matrix), list[State]()
        self.line, self.path, self.clips = TextLine(), Path(), False
        self.tags: list[bool] = []
        self.resources: dict[str, Any] = {}
        self._objects = 0

    @property
    def off(self) -> bool:
        """Whether what is drawn now belongs to a layer that is off."""
        return True in self.tags

    def count(self, more: int = 1) -> int:
        """Count objects drawn.

        Args:
            more: How many are added.

        Returns:
            How many there are, which is also the order of the last one.

        Raises:
            TooLargeError: There are more than are read.
        """
        self._objects += more
        if self._objects > MOST_OBJECTS:
            raise TooLargeError(f"A page draws more than {MOST_OBJECTS} objects; print the datasheet to a new PDF and read that.")
        return self._objects

    def lose(self) -> None:
        """Note that part of the page cannot be followed."""
        self.drawn.doubt.add(INCOMPLETE)

    def entry(self, kind: str, name: object) -> Any:  # noqa: ANN401  pdfminer carries no types
        """What the resources hold under a name.

        Args:
            kind: Which of their maps, such as ``Font``.
            name: The name.

        Returns:
            The entry, not yet resolved; None where there is none.
        """
        found = resolve1(self.resources.get(kind))
        return found.get(str(name)) if isinstance(found, dict) else None

    def patch(self, box: Box, order: int, *, light: float | None = None, picture: bool = False, opaque: bool) -> None:
        """Keep an area or a picture, as far as it is not clipped away.

        Args:
            box: Its place.
            order: When it was drawn.
            light: Its lightness, if that can be told. [1]
            picture: Whether it is a picture.
            opaque: Whether it hides what lies under it, as far as it knows.
        """
        visible = box if self.state.clip is None else overlap(box, self.state.clip)
        if visible:
            hides = opaque and self.state.opacity >= OPAQUE and not self.state.blended
            self.drawn.patches.append(Patch(visible, order, light, picture, hides))


def is_name(value: Any, *names: str) -> bool:  # noqa: ANN401  pdfminer carries no types
    """Whether a value of a dictionary is one of some names.

    Args:
        value: The value, resolved or not.
        names: The names.

    Returns:
        Whether it is.
    """
    found = resolve1(value)
    return isinstance(found, PSLiteral) and found.name in names
