"""What the second look sees stands beside what the first saw."""

from pictures import strip

from parsers.ocr.agreement import side_by_side
from parsers.ocr.words import words_of


def words(*strips) -> list:
    """The words of strips."""
    return [word for one in strips for word in words_of(one)]


def test_the_same_characters_in_the_same_place_agree():
    """Boxes of two scales differ a little."""
    (word,) = side_by_side(words(strip("0.022")), words(strip("0.022", left=101.0, top=199.0, height=11.0)))

    assert word.second == "0.022"


def test_another_character_is_told():
    """A lost point is the difference that matters most."""
    (word,) = side_by_side(words(strip("0.022")), words(strip("0022", left=101.0)))

    assert word.second == "0022"


def test_a_word_that_is_cut_otherwise_still_agrees():
    """Whether a space is seen between number and unit is no disagreement on the number."""
    first = side_by_side(words(strip("10 V")), words(strip("10V", advance=6.0)))

    assert first[0].second == "10"


def test_what_the_second_look_does_not_see_is_empty_not_unknown():
    """It was asked and saw nothing."""
    (word,) = side_by_side(words(strip("47")), words(strip("47", top=400.0)))

    assert word.second == ""
