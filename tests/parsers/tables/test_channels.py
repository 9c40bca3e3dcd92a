"""Tables that speak of one channel each."""

from hand_made import page

HEAD = ((50, "Parameter"), (160, "Symbol"), (220, "Conditions"), (400, "Min."), (440, "Typ."), (480, "Max."), (530, "Unit"))


def resistance(top, caption, value, *, head=HEAD):
    """A table of one on-resistance below a caption."""
    return (
        (top, (50, caption)),
        (top + 14, *head),
        (top + 29, (50, "On-resistance"), (160, "RDS(on)"), (220, "VGS = 10 V"), (480, value), (530, "mΩ")),
    )


def channels(readings):
    """Values with the channel that they are said to be of."""
    return {(one.value, one.cond.ch, one.status.value) for one in readings}


def test_a_caption_names_the_channel_of_its_table(read):
    """Each channel has a table of its own below its own caption."""
    found = read(page(*resistance(100, "Q1 Electrical characteristics", "21"), *resistance(300, "Q2 Electrical characteristics", "34")))

    assert channels(found) == {(21.0, "Q1", "accepted"), (34.0, "Q2", "accepted")}


def test_a_number_goes_before_a_polarity(read):
    """Of two N channels the second is no first."""
    found = read(page(*resistance(100, "Q1 N-Channel characteristics", "21"), *resistance(300, "Q2 N-Channel characteristics", "34")))

    assert channels(found) == {(21.0, "Q1", "accepted"), (34.0, "Q2", "accepted")}


def test_a_caption_that_repeats_the_title_parts_nothing(read):
    """Where no caption names another channel, there is none."""
    found = read(page(*resistance(100, "N-Channel characteristics", "21")))

    assert channels(found) == {(21.0, None, "accepted")}


def test_a_table_without_a_channel_beside_those_of_channels_goes_to_a_person(read):
    """Its values may be of either."""
    tables = (
        *resistance(100, "Q1 characteristics", "21"),
        *resistance(300, "Q2 characteristics", "34"),
        *resistance(500, "More characteristics", "40"),
    )

    assert (40.0, None, "review") in channels(read(page(*tables)))


def test_a_line_of_words_in_a_table_heads_a_section(read):
    """One table may hold a section for each channel."""
    row = ((50, "On-resistance"), (160, "RDS(on)"), (220, "VGS = 10 V"), (530, "mΩ"))
    found = read(page((100, *HEAD), (114, (50, "N-Channel")), (128, *row, (480, "21")), (142, (50, "P-Channel")), (156, *row, (480, "34"))))

    assert {(one.value, one.cond.ch) for one in found} == {(21.0, "Q1"), (34.0, "Q2")}
