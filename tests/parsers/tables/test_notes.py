"""Footnotes, and sentences that state values below the tables."""

import pytest
from hand_made import page, word

from parsers.stages.footnotes import limited_by, notes_on
from parsers.stages.lines import lines_in
from parsers.stages.statements import statements_on, states_something

RATED = (100, (50, "Parameter"), (250, "Symbol"), (400, "Value"), (500, "Unit"))


@pytest.mark.parametrize(
    ("text", "mark"),
    [
        ("a. Package limited.", "a"),
        ("(1) Surface mounted on FR4 board", "1"),
        ("Note 2: Pulse width limited by temperature", "2"),
        ("1) Device on epoxy board of 40 mm", "1"),
        ("* Limited only by maximum temperature", "*"),
        ("c. t = 10 s.", "c"),
    ],
)
def test_a_footnote_opens_with_its_mark(text, mark):
    """Letters, numbers, stars."""
    assert [note.mark for note in notes_on(1, lines_in(page((500, (50, text)))))] == [mark]


def test_a_footnote_takes_its_second_line():
    """A sentence runs on below."""
    (note,) = notes_on(1, lines_in(page((500, (50, "a. Calculated continuous current based on")), (510, (62, "junction temperature.")))))

    assert note.text.endswith("junction temperature.")


def test_ticks_of_a_graph_are_no_footnotes():
    """1.0 opens like a note and says nothing."""
    assert notes_on(1, lines_in(page((500, (50, "1. 0 2. 0"))))) == ()


@pytest.mark.parametrize(
    ("text", "who"),
    [
        ("Package limited.", "package"),
        ("The maximum current rating is limited by bond-wires.", "package"),
        ("Wire Bond Limited", "package"),
        ("Silicon limited", "silicon"),
        ("Calculated continuous current based on maximum allowable junction temperature", "silicon"),
        ("Repetitive rating", None),
    ],
)
def test_a_note_says_who_limits_a_current(text, who):
    """Common wordings, no source."""
    assert limited_by(text) == who


def test_a_marked_current_is_the_packages(read):
    """The mark stands raised beside the name; the note below says package."""
    readings = read(
        page(
            RATED,
            (115, (50, "Continuous drain current TC = 25 °C"), (250, "ID"), (400, "60"), (500, "A")),
            (200, (50, "a. Package limited.")),
            extra=(word("a", 266, 111, size=5.0),),
        )
    )

    assert [one.cond.limited_by for one in readings if one.key == "id_cont"] == ["package"]


@pytest.mark.parametrize(
    ("text", "key", "value"),
    [
        ("Package limitation current is 75A.", "id_cont", 75.0),
        ("Bond wire current limit is 120 A", "id_cont", 120.0),
        ("using TJ(MAX)=150°C, in still air", "tj_max", 150.0),
        ("a) 50°C/W when mounted on a 1 in pad of 2 oz copper", "rth_ja", 50.0),
        ("Maximum under steady state conditions is 81 °C/W.", "rth_ja", 81.0),
        ("Max RθJC = 1.7°C/W, pulse duration", "rth_jc", 1.7),
    ],
)
def test_a_sentence_states_a_value(text, key, value):
    """With its place and its words."""
    (found,) = statements_on(1, lines_in(page((500, (50, text)))))

    assert (found.key, found.value, found.cond.where) == (key, value, "footnote")
    assert found.printed in found.quote


def test_a_page_that_states_a_package_limit_is_known_by_its_plain_text():
    """Such a page is read though no table heads it."""
    assert states_something("junction temperature. Package limitation current is 30A.")
    assert not states_something("Package Outline")
