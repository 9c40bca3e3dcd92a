"""Signs out of fonts of their own: ohm, micro and degree read as what they show."""

import re
from pathlib import Path

import matplotlib as mpl
import pytest
from fontTools.agl import toUnicode
from pdfminer.psparser import LIT
from word_sheets import doubts, drawn, page_of, texts, word

from parsers.glyphs.agreement import agrees
from parsers.glyphs.repairs import repair_of
from parsers.glyphs.symbol_font import SYMBOL
from parsers.glyphs.unicode_map import UnicodeMap

# Two names that the published metrics give to private-use characters, and signs that have more than one code point.
SAME = {"\u2126": "\u03a9", "\u2206": "\u0394", "\u00b5": "\u03bc", "\u2215": "\u2044", "\u2219": "\u22c5", "\u223c": "\u223c"}


def test_the_symbol_table_is_the_one_that_its_maker_published():
    """Adobe's font metrics of Symbol, as matplotlib carries them, name the glyph of every code; Adobe's glyph list says what a name shows."""
    metrics = (Path(mpl.get_data_path()) / "fonts" / "afm" / "psyr.afm").read_text(encoding="latin-1")
    published = {int(code): toUnicode(name) for code, name in re.findall(r"^C (\d+) ;.*?N (\w+) ;", metrics, re.MULTILINE)}
    shown = {code: SAME.get(text, text) for code, text in published.items() if text and not "\ue000" <= text <= "\uf8ff"}

    assert len(shown) > 150
    ours = {code: SAME.get(text, text) for code, text in SYMBOL.items()}
    assert {code: ours[code] for code in ours if code in shown} == {code: shown[code] for code in ours if code in shown}


def test_ohm_and_micro_out_of_the_symbol_font_read_as_ohm_and_micro():
    """A reader that goes by letters alone says W and m."""

    def draw(canvas):
        canvas.drawString(40, 150, "0.15")
        canvas.drawString(40, 120, "250")
        canvas.setFont("Symbol", 10)
        canvas.drawString(66, 150, "Ω")
        canvas.drawString(63, 120, "μ")

    page = page_of(drawn(draw))
    ohm = next(found for found in page.words if found.box[0] > 60 and found.box[3] < 160)

    assert ohm.text == "Ω"
    assert ohm.glyphs[0].repaired
    assert not doubts(ohm), "the second reader sees the ohm by itself"
    assert agrees(ohm)


def names(**entries):
    """A font's dictionary as a file holds it."""
    return {"Subtype": LIT("Type1"), **entries}


def test_glyphs_named_by_decimal_code_are_read_by_that_code():
    """G50 and G52 are 2 and 4."""
    repair = repair_of(names(BaseFont=LIT("ABCDEF+Some050"), Encoding={"Differences": [1, LIT("G50"), LIT("G52"), LIT("G46._")]}))

    assert [repair(code, "") for code in (1, 2, 3)] == ["2", "4", "."]


def test_numbered_glyphs_of_a_font_of_signs_are_signs():
    """W, m and q alone, without any other letter, are ohm, micro and theta."""
    repair = repair_of(names(BaseFont=LIT("ABCDEF+Dutch-Roman"), Encoding={"Differences": [2, LIT("C0087"), LIT("C0113"), LIT("C0109")]}))

    assert [repair(code, "") for code in (2, 3, 4)] == ["Ω", "θ", "\u00b5"]


def test_named_glyphs_need_no_repair():
    """Names of the glyph list say themselves what they show."""
    assert repair_of(names(BaseFont=LIT("Symbol"), Encoding={"Differences": [1, LIT("Omega")]})) is None
    assert repair_of(names(BaseFont=LIT("Helvetica"), Encoding=LIT("WinAnsiEncoding"))) is None


def test_a_true_micro_in_a_symbol_font_stays_a_micro():
    """Its code would stand for another sign in the font's own table."""
    spec = {"Subtype": LIT("Type0"), "BaseFont": LIT("ABCDEF+SymbolMT"), "ToUnicode": object()}
    repair = repair_of(spec)

    assert repair(3, "\u00b5") is None
    assert repair(4, "W") == "Ω"
    assert repair(5, "\uf0b0") == "°"


def test_the_micro_of_a_letter_font_is_left_alone():
    """Only fonts of signs are repaired."""

    def draw(canvas):
        canvas.drawString(40, 150, "5 mW")

    assert texts(page_of(drawn(draw))) == ["5", "mW"]
    assert not word(page_of(drawn(draw)), "mW").glyphs[0].repaired


def test_a_fonts_own_map_is_read_as_the_standard_explains_it():
    """The worked example of ISO 32000-1:2008, 9.10.3 (ToUnicode CMaps): ranges, ligatures one by one, and a character beyond 16 bits."""
    stream = b"""2 beginbfrange
        <0000> <005E> <0020>
        <005F> <0061> [<00660066> <00660069> <00660066006C>]
        endbfrange
        1 beginbfchar
        <3A51> <D840DC3E>
        endbfchar"""
    found = UnicodeMap(stream)

    assert [found.get_unichr(code) for code in (0x00, 0x5E, 0x5F, 0x60, 0x61)] == [" ", "~", "ff", "fi", "ffl"]
    assert found.get_unichr(0x3A51) == "\U0002003e"
    with pytest.raises(KeyError):
        found.get_unichr(0x62)


def test_an_endless_range_costs_nothing_until_it_is_used():
    """Two thousand million codes in 60 bytes are not counted out."""
    found = UnicodeMap(b"1 beginbfrange <00000000> <7FFFFFFF> <0020> endbfrange")

    assert found.get_unichr(33) == "A"
