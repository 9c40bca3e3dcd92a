"""The single questions behind a sheet's identity, on words alone."""

import pytest

from parsers.stages.identity.maker import maker_of
from parsers.stages.identity.package import package_of
from parsers.stages.identity.part_number import candidates_in, is_part_number, plain_number
from parsers.stages.identity.polarity import polarity_of
from parsers.stages.identity.revision import revision_of
from parsers.stages.identity.saying import Saying


def said(*lines: str) -> list[Saying]:
    """Lines below each other on the upper part of a first page."""
    return [Saying(text=line, words=tuple(line.split()), size=1.0, top=0.02 * n, page=1) for n, line in enumerate(lines)]


@pytest.mark.parametrize("word", ["AB12N04", "2N9999", "XY8205A", "8205A", "QR020N08N5", "Zz303DS", "AB-12N04-T1"])
def test_a_part_number_is_known_by_its_shape(word: str):
    """Capitals and digits in one word."""
    assert is_part_number(word)


@pytest.mark.parametrize(
    "word",
    [
        *("TO-220", "SOT-23", "DFN5X6-8L", "100V", "5.6A", "250uA", "2021-04-17", "16-May-16"),
        *("AEC-Q101", "JESD22-A114", "PD-94008", "2011", "VGS10", "Q101", "1.5x2.0"),
    ],
)
def test_cases_quantities_dates_and_papers_are_no_parts(word: str):
    """They have capitals and digits as well."""
    assert not is_part_number(word)


@pytest.mark.parametrize(
    ("word", "parts"), [("AB12N04,", ["AB12N04"]), ("AB12N04/CD12N04", ["AB12N04", "CD12N04"]), ("(AB12N04)", ["AB12N04"]), ("V/ns", [])]
)
def test_a_word_may_hold_several_parts(word: str, parts: list[str]):
    """Punctuation and strokes are taken off."""
    assert list(candidates_in(word)) == parts


def test_dashes_and_the_lead_free_ending_make_no_other_part():
    """Makers add and drop them at will."""
    assert plain_number("AB-12N04TRPbF") == plain_number("AB12N04")


@pytest.mark.parametrize(
    ("lines", "polarity"),
    [
        (["N-Channel 30 V MOSFET"], "N"),
        (["P−Channel Enhancement Mode"], "P"),
        (["Dual N-Channel MOSFET"], "N+N"),
        (["30V Dual P-Channel MOSFET"], "P+P"),
        (["N- and P-Channel MOSFET"], "N+P"),
        (["Complementary Power MOSFET", "N-Channel", "P-Channel"], "N+P"),
        (["P沟道增强型场效应管"], "P"),
        (["N-Channel MOSFET", "G1 S1 D1", "G2 S2 D2"], "N+N"),
        (["Power MOSFET", "VDSS = -55V"], "P"),
        (["Power MOSFET", "VDSS = 55V"], "N"),
        (["N-Channel MOSFET", "Figure 2 Switching waveforms"], "N"),
        (["Power MOSFET"], None),
    ],
)
def test_the_channels_are_told_by_words_pins_or_signs(lines: list[str], polarity: str | None):
    """Title first, then pins, then the sign of the rated voltage; silence stays silence."""
    assert polarity_of(said(*lines), []) == polarity


@pytest.mark.parametrize(
    ("pages", "maker"),
    [
        (["© Brackwater Semiconductor Ltd.", "© Brackwater Semiconductor Ltd."], "Brackwater Semiconductor Ltd."),
        (["see www.ostervik.example for more"], "ostervik"),
        (["Ostervik Power AS 2021", "nothing here"], "Ostervik Power AS"),
        (["a page without a name"], None),
    ],
)
def test_a_maker_nobody_knows_is_found_by_its_form_or_its_site(pages: list[str], maker: str | None):
    """No list of makers is complete."""
    assert maker_of(pages) == maker


def test_a_cover_letter_does_not_make_the_part():
    """Whoever bought the maker puts a page before the sheet."""
    pages = ["Harbour Devices Inc. is now part of Quay Power Inc.", "Harbour Devices Inc.", "Harbour Devices Inc."]

    assert maker_of(pages) == "Harbour Devices Inc."


@pytest.mark.parametrize(("text", "case"), [("in a TO-220AB case", "TO-220AB"), ("DFN5X6-8L", "DFN5X6-8L"), ("D2PAK", "D2PAK"), ("no case", None)])
def test_the_case_is_read_as_printed(text: str, case: str | None):
    """A few dozen names are in use."""
    assert package_of([text]) == case


@pytest.mark.parametrize(
    ("text", "edition"),
    [*((text, text) for text in ("Rev 8: Dec 2011", "Rev. 2.2, 2017-12-04", "V3.0", "April 1995")), ("none", None)],
)
def test_the_edition_is_a_revision_a_version_or_a_date(text: str, edition: str | None):
    """In that order."""
    assert revision_of([text]) == edition
