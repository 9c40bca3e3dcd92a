"""Operators that place and show text."""

from collections.abc import Callable
from typing import Any, ClassVar

from parsers.glyphs.drawn import Drawn
from parsers.glyphs.fonts import Font
from parsers.glyphs.geometry import IDENTITY, Matrix
from parsers.glyphs.layers import Layers
from parsers.glyphs.lexer import Name
from parsers.glyphs.operators.stage import Stage
from parsers.glyphs.text import show

FindFont = Callable[[Any], Font | None]


class Writing(Stage):
    """Text objects, their state, position and strings.

    Args:
        drawn: Where to keep what is drawn.
        matrix: From the page's own points to the page as shown.
        layers: Which layers are off.
        find_font: Gives the font behind an entry of the resources.
    """

    WRITING: ClassVar[dict[bytes, str]] = {
        b"BT": "begin_text", b"Tf": "set_font", b"Tc": "set_spacing", b"Tw": "set_word_spacing", b"Tz": "set_stretch", b"TL": "set_leading",
        b"Ts": "set_rise", b"Tr": "set_mode", b"Td": "step", b"TD": "step_and_lead", b"Tm": "place", b"T*": "next_line", b"TJ": "show_items",
        b"Tj": "show_one", b"'": "show_on_next_line", b'"': "show_spaced",
    }  # fmt: skip

    def __init__(self, *, drawn: Drawn, matrix: Matrix, layers: Layers, find_font: FindFont) -> None:
        super().__init__(drawn=drawn, matrix=matrix, layers=layers)
        self._find_font = find_font

    def begin_text(self, *_: object) -> None:
        """Begin a text object."""
        self.line.place(IDENTITY)

    def set_font(self, name: Name, size: float) -> None:
        """Choose a font and its size."""
        self.state.font, self.state.size = self._find_font(self.entry("Font", name)), size

    def set_spacing(self, spacing: float) -> None:
        """Leave so much more after each character."""
        self.state.spacing = spacing

    def set_word_spacing(self, spacing: float) -> None:
        """Leave so much more after each space."""
        self.state.word_spacing = spacing

    def set_stretch(self, percent: float) -> None:
        """Write wider or narrower."""
        self.state.stretch = percent / 100

    def set_leading(self, leading: float) -> None:
        """Set the way from line to line."""
        self.state.leading = leading

    def set_rise(self, rise: float) -> None:
        """Write above or below the line."""
        self.state.rise = rise

    def set_mode(self, mode: float) -> None:
        """Choose how characters are painted."""
        self.state.mode = int(mode)

    def step(self, right: float, up: float) -> None:
        """Begin a line beside the last one."""
        self.line.step(right, up)

    def step_and_lead(self, right: float, up: float) -> None:
        """Begin a line below the last one, and keep the distance."""
        self.state.leading = -up
        self.line.step(right, up)

    def place(self, a: float, b: float, c: float, d: float, e: float, f: float) -> None:
        """Begin a line anywhere."""
        self.line.place((a, b, c, d, e, f))

    def next_line(self, *_: object) -> None:
        """Begin the next line."""
        self.line.step(0.0, -self.state.leading)

    def show_items(self, items: list[Any]) -> None:
        """Show strings with gaps between them; without a font that can be read nothing is known of them."""
        if self.state.font is None:
            self.lose()
        marks = show(items, self.state, self.line, self.count())
        self.count(len(marks))
        if self.off:
            for mark in marks:
                mark.doubt = (*mark.doubt, "off")
        self.drawn.marks.extend(marks)

    def show_one(self, text: bytes) -> None:
        """Show a string."""
        self.show_items([text])

    def show_on_next_line(self, text: bytes) -> None:
        """Show a string on the next line."""
        self.next_line()
        self.show_items([text])

    def show_spaced(self, word_spacing: float, spacing: float, text: bytes) -> None:
        """Show a string on the next line, with spacing of its own."""
        self.state.word_spacing, self.state.spacing = word_spacing, spacing
        self.show_on_next_line(text)
