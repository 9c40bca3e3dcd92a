"""Strips become words: cut where a reader of the page would cut, spelled as we spell, doubted where doubt is due."""

import pytest
from pictures import strip

from parsers.ocr.levels import levelled
from parsers.ocr.words import LOOKS_ALIKE, UNSURE, words_of


def texts(*strips) -> list[str]:
    """The words of strips, as text."""
    return [word.text for one in strips for word in words_of(one)]


def test_a_strip_is_cut_at_its_spaces():
    """Each word has its own box."""
    first, second = words_of(strip("Drain current"))

    assert (first.text, second.text) == ("Drain", "current")
    assert first.box[2] <= second.box[0]


def test_a_wide_gap_ends_a_word_though_no_space_was_seen():
    """Two columns may be taken for one strip."""
    left, right = strip("47"), strip("A", left=130.0)
    joined = type(left)(characters=left.characters + right.characters, spaces=frozenset(), box=(100.0, 200.0, 135.0, 210.0))

    assert texts(joined) == ["47", "A"]


def test_a_footnote_mark_is_a_word_of_its_own_raised_and_small():
    """A mark beside a number must never become a digit of it."""
    value, mark = words_of(strip("160①"))

    assert (value.text, mark.text) == ("160", "①")
    assert mark.box[3] < value.box[3]
    assert mark.glyphs[0].size < value.glyphs[0].size


@pytest.mark.parametrize(
    ("seen", "spelled"),
    [
        ("175℃", "175°C"),
        ("25°℃", "25°C"),
        ("W/°℃", "W/°C"),
        ("250μA", "250µA"),
        ("\u221255", "-55"),
        ("\uff08on\uff09", "(on)"),
        ("R0JC", "RθJC"),
        ("ReCs", "RθCs"),
        ("R6JA", "RθJA"),
        ("°CW", "°C/W"),
        ("°CNN", "°C/W"),
        ("CW", "°C/W"),
        ("T」", "TJ"),
        ("V_DS", "VDS"),
    ],
)
def test_what_can_be_nothing_else_is_put_right(seen, spelled):
    """Signs, the theta of a thermal resistance and its unit."""
    assert texts(strip(seen)) == [spelled]


@pytest.mark.parametrize("text", ["0.022", "R0402", "RDS(on)", "IRF520", "°C", "C", "W/°C", "10", "8.6"])
def test_other_words_stay_as_they_were_seen(text):
    """A digit is never changed, nor a word that merely resembles one of ours."""
    assert texts(strip(text)) == [text]


def test_letters_among_words_are_no_unit():
    """CW may mean other things in a sentence."""
    assert texts(strip("CW operation")) == ["CW", "operation"]


@pytest.mark.parametrize("text", ["1O0", "l20", "2S", "4O", "=-1iA,"])
def test_a_letter_that_looks_like_a_digit_is_doubted_among_digits(text):
    """Nobody can tell O from 0 there."""
    (word,) = words_of(strip(text))

    assert any(LOOKS_ALIKE in glyph.doubt for glyph in word.glyphs)


@pytest.mark.parametrize("text", ["TO-220", "Source", "BVDSS", "ID", "120", "-23"])
def test_a_letter_in_a_word_is_not_doubted(text):
    """Part of a name, it is what it is."""
    (word,) = words_of(strip(text))

    assert not any(LOOKS_ALIKE in glyph.doubt for glyph in word.glyphs)


def test_a_number_is_not_torn_at_a_digit_that_was_taken_for_a_letter():
    """-11 A seen as "-1 iA" gives no number -1; seen on a real page at two scales."""
    assert texts(strip("IS =-1 iA, VGS")) == ["IS", "=-1iA,", "VGS"]


def test_an_unsure_character_is_doubted():
    """The reader's own certainty counts."""
    (word,) = words_of(strip("47", certainty=0.4))

    assert all(glyph.doubt == (UNSURE,) for glyph in word.glyphs)


def test_type_of_one_size_gets_one_height():
    """A heading "Max." beside "Typ." must not look like a raised mark because nothing in it hangs below the line."""
    strips = levelled((strip("Typ.", height=12.0, top=199.0), strip("Max.", height=9.0, left=140.0), strip("Min.", height=10.0, left=180.0)))

    assert {round(one.box[3] - one.box[1], 6) for one in strips} == {10.0}


def test_larger_type_keeps_its_height():
    """A title is no ordinary line."""
    strips = levelled((strip("AB75N40", height=25.0), strip("Min."), strip("Max.")))

    assert strips[0].box[3] - strips[0].box[1] == 25.0


def test_a_page_without_text_has_no_height():
    """Nothing was seen."""
    assert levelled(()) == ()
