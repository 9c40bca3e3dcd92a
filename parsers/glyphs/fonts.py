"""A font of a PDF as a table from character codes to text and width; pdfminer reads the font, the table makes it quick."""

import unicodedata
from typing import Any

from pdfminer.pdfexceptions import PDFException
from pdfminer.pdffont import PDFFont, PDFType3Font, PDFUnicodeNotDefined
from pdfminer.pdfinterp import PDFResourceManager
from pdfminer.pdftypes import PDFObjRef, PDFStream, dict_value, resolve1

from parsers.glyphs.doubts import TWO_TEXTS
from parsers.glyphs.repairs import Repair, repair_of
from parsers.glyphs.unicode_map import UnicodeMap

_LATIN_LOOK_ALIKES = str.maketrans("ΑΒΕΖΗΙΚΜΝΟΡΤΥΧο", "ABEZHIKMNOPTYXo")  # noqa: RUF001  the look-alikes are the subject
"""Greek capitals that a sheet sets for Latin ones, as in an ampere or a temperature out of a font of signs."""

_OTHER_SPELLINGS = {"μ": ("µ",), "Ω": ("\u2126",), "Δ": ("\u2206",)}
_USUAL_WIDTH = 0.5
"""Width taken for a sign that no table gives a width. [em]"""

Code = tuple[str, float, bool, tuple[str, ...]]
"""Text, width [em], whether the text was repaired, signs of doubt."""


class Font:
    """One font.

    Args:
        font: The font as pdfminer reads it.
        spec: Its dictionary in the file.

    Attributes:
        name: Its name, without the tag of a subset.
        multibyte: Whether its codes are longer than a byte, so that word spacing does not apply.
        vertical: Whether it is written from top to bottom.
        rise: From the baseline to the lower edge of its characters. [em]
        height: Of its characters. [em]
    """

    def __init__(self, font: PDFFont, spec: dict[str, Any]) -> None:
        self._font = font
        self._repair: Repair | None = repair_of(spec)
        self._named: dict[int, str] = _named_characters(font, spec)
        self._codes: dict[int, Code] = {}
        self.name = str(font.fontname).rpartition("+")[2]
        self.multibyte = font.is_multibyte()
        self.vertical = font.is_vertical()
        self.rise, self.height = _extent(font)
        self.decode = font.decode

    def __getitem__(self, code: int) -> Code:
        """Text, width and doubt of a character code."""
        found = self._codes.get(code)
        if found is None:
            found = self._codes[code] = self._look_up(code)
        return found

    def _look_up(self, code: int) -> Code:
        try:
            text = str(self._font.to_unichr(code)).translate(_LATIN_LOOK_ALIKES)
        except PDFUnicodeNotDefined:
            text = ""
        width = float(self._font.char_width(code))
        repaired = self._repair(code, text) if self._repair else None
        if repaired and (repaired := repaired.translate(_LATIN_LOOK_ALIKES)) != text:
            return repaired, width or self._width_by_text(repaired), True, ("symbol_font",)
        if not _readable(text):
            return text or "\ufffd", width, False, ("unmapped",)
        return text, width, False, (TWO_TEXTS,) if _contradict(text, self._named.get(code, text)) else ()

    def _width_by_text(self, text: str) -> float:
        """Width of a sign whose code says nothing: the standard fonts' own tables go by text."""
        spellings = (text, *_OTHER_SPELLINGS.get(text, ()))
        return next((float(self._font.widths[text]) / 1000 for text in spellings if text in self._font.widths), _USUAL_WIDTH)


def font_of(manager: PDFResourceManager, reference: Any) -> Font | None:  # noqa: ANN401  pdfminer carries no types
    """The font behind a name in a page's resources.

    Args:
        manager: pdfminer's store of fonts.
        reference: What the resources hold under the font's name.

    Returns:
        The font, or None where the file's own data of it cannot be read.
    """
    spec = dict_value(reference)
    try:
        found = _own_map(spec)
        font = manager.get_font(None if found else reference.objid if isinstance(reference, PDFObjRef) else None, _lean(spec) if found else spec)
    except (PDFException, KeyError, TypeError, ValueError, AssertionError, AttributeError, IndexError):
        return None
    if found:
        font.unicode_map = found  # type: ignore[attr-defined]  # fonts of letters and of whole scripts have it, their base has not
    return Font(font, spec)


def _named_characters(font: PDFFont, spec: dict[str, Any]) -> dict[int, str]:
    """What the glyphs are called that a font with a map to text draws; empty where its codes have no names (ISO 32000-1:2008, 9.6.6)."""
    return getattr(font, "cid2unicode", {}) if "ToUnicode" in spec and "Encoding" in spec else {}


def _contradict(text: str, named: str) -> bool:
    """Whether a map says another figure than the glyph's name, or a figure where that says none; a wide figure is the same figure."""
    figures = [unicodedata.decimal(one, None) if len(one) == 1 else None for one in (text, named)]
    return figures[0] != figures[1]


def _own_map(spec: dict[str, Any]) -> UnicodeMap | None:
    """The font's own map from codes to text, where it has one and only uses what we read of such maps."""
    stream = resolve1(spec.get("ToUnicode"))
    found = UnicodeMap(stream.get_data()) if isinstance(stream, PDFStream) else None
    return found if found and found.complete else None


def _lean(spec: dict[str, Any]) -> dict[str, Any]:
    """A font's dictionary without what is only read for a map to text that is there already."""
    lean = {key: value for key, value in spec.items() if key != "ToUnicode"}
    if isinstance(parts := resolve1(spec.get("DescendantFonts")), list) and parts:
        part = dict(dict_value(parts[0]))
        part["CIDSystemInfo"] = {"Registry": b"Adobe", "Ordering": b"Identity"}
        if "FontDescriptor" in part:
            part["FontDescriptor"] = {key: value for key, value in dict_value(part["FontDescriptor"]).items() if key != "FontFile2"}
        lean["DescendantFonts"] = [part]
    return lean


def _extent(font: PDFFont) -> tuple[float, float]:
    """Lower edge and height of characters; one em from a little below the baseline, whatever the font says of itself.

    Why not the font's own figures: makers' files carry 0, or figures of another scale, in the same row of a table.
    """
    if isinstance(font, PDFType3Font) and font.bbox[3] != font.bbox[1]:
        return font.bbox[1] * font.vscale, (font.bbox[3] - font.bbox[1]) * font.vscale
    return -0.22, 1.0


def _readable(text: str) -> bool:
    """Whether text holds no private-use, control or replacement character."""
    return bool(text) and not any(
        "\ue000" <= char <= "\uf8ff" or char == "\ufffd" or (char < " " and char not in "\t\n\r") or "\x7f" <= char <= "\x9f" for char in text
    )
