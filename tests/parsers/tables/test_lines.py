"""Words become lines, whatever their order and the heights of their indices."""

from hand_made import page, word

from parsers.stages.lines import lines_in


def test_words_of_one_height_are_one_line_from_left_to_right():
    """The order in which a page draws its words says nothing."""
    lines = lines_in(page((100, (200, "30"), (50, "Drain-source voltage"), (300, "V"))))

    assert [line.text for line in lines] == ["Drain-source voltage 30 V"]


def test_a_small_raised_word_is_a_mark_of_its_line():
    """A footnote mark is no part of the name beside it."""
    (line,) = lines_in(page((100, (50, "Pulsed")), extra=(word("a", 81, 96, size=5.0),)))

    assert line.text == "Pulsed"
    assert [mark.text for mark in line.marks] == ["a"]


def test_a_small_lowered_word_is_part_of_its_line():
    """An index belongs to the letter before it."""
    (line,) = lines_in(page((100, (50, "R")), extra=(word("DS", 55, 103, size=6.0),)))

    assert line.text == "R DS"
    assert line.marks == ()


def test_words_outside_the_page_are_no_lines():
    """What a crop box hides nobody can check."""
    assert lines_in(page((-30, (50, "hidden")), (100, (50, "shown"))))[0].text == "shown"
