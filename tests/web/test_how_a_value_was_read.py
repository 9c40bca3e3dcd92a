"""Beside a printed value stands how it was read: its stages, its evidence, and why its status is what it is."""

import re


def block(page: str, reading: str) -> str:
    """The article of one value."""
    return next(one for one in re.findall(r'<article class="printed".*?</article>', page, re.DOTALL) if reading in one)


def test_a_part_shows_how_each_of_its_values_was_read(client, send, dropped):
    """The words of the command line, folded up."""
    send("/", {"sheet": dropped()}, to="/start")
    value = block(client.get("/parts/QX80N50").get_data(as_text=True), "vsd 1.2 V")

    assert "<summary>How it was read</summary>" in value
    assert "Page: page 1, in the words: vsd 1.2 V" in value
    assert "A person has to look first. the column does not say which end it is" in value
    assert "the unit is printed with it" in value


def test_a_value_that_a_person_confirmed_no_longer_asks_for_a_look(client, send, dropped):
    """Its history says who looked; the reader's reason stays."""
    send("/", {"sheet": dropped()}, to="/start")
    value = block(client.get("/parts/QX80N50").get_data(as_text=True), "vsd 1.2 V")
    seen = re.search(r'name="seen" value="([^"]+)"', value)
    send("/parts/QX80N50", {"seen": seen[1], "back": "/parts/QX80N50"}, to="/parts/readings/confirm")
    value = block(client.get("/parts/QX80N50").get_data(as_text=True), "vsd 1.2 V")

    assert "A person has to look first" not in value
    assert "the column does not say which end it is" in value
