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


def energy(*notes, mark="EAS"):
    """A sheet with an avalanche energy and footnotes."""
    rows = (
        ("Drain-source voltage", "VDS", "60", "V"),
        ("Single pulse avalanche energy", mark, "185", "mJ"),
        ("Gate-source voltage", "VGS", "±20", "V"),
        ("Continuous drain current TC = 25 °C", "ID", "33", "A"),
    )
    table = [(115 + 14 * at, *zip((50, 250, 400, 500), row, strict=True)) for at, row in enumerate(rows)]
    return page(RATED, *table, *((300 + 20 * at, (50, note)) for at, note in enumerate(notes)))


def test_an_avalanche_energy_takes_its_test_from_the_footnote_that_it_refers_to(read):
    """The surge that the energy stands for is known by its current."""
    (one,) = [each for each in read(energy("(2) Starting TJ = 25 °C, L = 1.5 mH, IAS = 16 A", mark="EAS (Note 2)")) if each.key == "eas"]

    assert (one.cond.id, one.cond.tj, one.cond.note, one.status) == (16.0, 25.0, "L = 1.5 mH", "accepted")


def test_a_lone_footnote_about_the_test_needs_no_mark(read):
    """Marks are often set in fonts that nobody can read; one energy and one test belong together."""
    (one,) = [each for each in read(energy("\ufffd Starting TJ = 25 °C, L = 1.5 mH, IAS = 16 A")) if each.key == "eas"]

    assert (one.cond.id, one.cond.note) == (16.0, "L = 1.5 mH")


def test_two_footnotes_about_tests_are_given_to_nobody(read):
    """Which of them is meant only the mark could tell."""
    tests = ("\ufffd Starting TJ = 25 °C, L = 1.5 mH, IAS = 16 A", "\ufffd Starting TJ = 25 °C, L = 0.1 mH, IAS = 40 A")
    (one,) = [each for each in read(energy(*tests)) if each.key == "eas"]

    assert (one.cond.id, one.cond.note) == (None, None)


def test_what_parts_endured_beside_the_rating_is_said_to_be_no_rating(read):
    """A typical energy above the largest one is at destruction; the rating keeps its status."""
    head = (100, (50, "Parameter"), (200, "Symbol"), (270, "Conditions"), (400, "Min."), (440, "Typ."), (480, "Max."), (530, "Unit"))
    rows = (
        (115, (50, "Single pulse avalanche energy"), (200, "EAS"), (270, "IAS = 16 A, L = 1.5 mH"), (440, "700"), (480, "185"), (530, "mJ")),
        (129, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 16 A"), (480, "44"), (530, "mΩ")),
    )
    found = {one.limit.value: one for one in read(page(head, *rows)) if one.key == "eas"}

    assert (found["max"].value, found["max"].status, found["max"].cond.id) == (185.0, "accepted", 16.0)
    assert "no rating" in found["typ"].why
    assert "no rating" not in found["max"].why
