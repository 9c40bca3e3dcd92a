"""Operators that set the state: saving, matrices, colours, opacity."""

from typing import Any, ClassVar

from pdfminer.pdftypes import resolve1

from parsers.glyphs.colour import colour_family, lightness
from parsers.glyphs.drawn import BLACK
from parsers.glyphs.geometry import product
from parsers.glyphs.lexer import Name
from parsers.glyphs.operators.stage import Stage, is_name

_MOST_SAVED = 512


class Settings(Stage):
    """``q Q cm gs`` and the colours of fills; colours of lines change nothing that is kept."""

    SETTINGS: ClassVar[dict[bytes, str]] = {
        b"q": "save", b"Q": "restore", b"cm": "concatenate", b"gs": "apply_dictionary", b"g": "fill_gray", b"rg": "fill_rgb", b"k": "fill_cmyk",
        b"cs": "fill_space", b"sc": "fill_colour", b"scn": "fill_colour",
    }  # fmt: skip

    def save(self, *_: object) -> None:
        """Put the state aside."""
        if len(self.saved) >= _MOST_SAVED:
            self.lose()
        else:
            self.saved.append(self.state.copy())

    def restore(self, *_: object) -> None:
        """Bring back the state put aside last."""
        if self.saved:
            self.state = self.saved.pop()

    def concatenate(self, a: float, b: float, c: float, d: float, e: float, f: float) -> None:
        """Draw through one more matrix."""
        self.state.matrix = product((a, b, c, d, e, f), self.state.matrix)

    def apply_dictionary(self, name: Name) -> None:
        """Take opacity and blending from a dictionary of settings."""
        entries = resolve1(self.entry("ExtGState", name))
        if isinstance(entries, dict):
            self.state.opacity = float(resolve1(entries.get("ca", self.state.opacity)))
            if "BM" in entries:
                self.state.blended = not is_name(entries["BM"], "Normal", "Compatible")

    def fill_colour(self, *operands: Any) -> None:  # noqa: ANN401  operands of any kind
        """Fill with a colour of the current space."""
        self.state.fill = lightness(list(operands), self.state.fill_family)

    def fill_gray(self, *operands: float) -> None:
        """Fill with a grey."""
        self.state.fill_family = "gray"
        self.fill_colour(*operands)

    def fill_rgb(self, *operands: float) -> None:
        """Fill with red, green and blue."""
        self.state.fill_family = "rgb"
        self.fill_colour(*operands)

    def fill_cmyk(self, *operands: float) -> None:
        """Fill with four inks."""
        self.state.fill_family = "cmyk"
        self.fill_colour(*operands)

    def fill_space(self, name: Name) -> None:
        """Choose a colour space, which begins with black."""
        spaces = resolve1(self.resources.get("ColorSpace"))
        self.state.fill_family = colour_family(str(name), spaces if isinstance(spaces, dict) else {})
        self.state.fill = BLACK
