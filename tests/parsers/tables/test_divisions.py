"""Rows that speak of one part or one channel among several."""

from hand_made import page

HEAD = (100, (50, "Parameter"), (160, "Symbol"), (220, "Conditions"), (340, "Type"), (400, "Min."), (440, "Typ."), (480, "Max."), (530, "Unit"))


def rows(*rest):
    """A table of on-resistances."""
    return page(HEAD, *rest)


def test_a_row_names_its_part_and_the_row_below_goes_with_it(read):
    """The part stands once for several rows."""
    readings = read(
        rows(
            (115, (50, "On-resistance"), (160, "RDS(on)"), (220, "VGS = 10 V"), (340, "QX7000"), (480, "5"), (530, "Ω")),
            (129, (220, "VGS = 4.5 V"), (480, "5.3"), (530, "Ω")),
            (143, (220, "VGS = 10 V"), (340, "QX7002"), (480, "7.5"), (530, "Ω")),
        )
    )

    assert {(one.value, one.cond.part) for one in readings} == {(5.0, "QX7000"), (5.3, "QX7000"), (7.5, "QX7002")}


def test_a_row_names_its_channel(read):
    """N-Ch and P-Ch of a mixed part."""
    readings = read(
        rows(
            (115, (50, "On-resistance"), (160, "RDS(on)"), (220, "VGS = 10 V"), (340, "N-Ch"), (480, "21"), (530, "mΩ")),
            (129, (220, "VGS = -10 V"), (340, "P-Ch"), (480, "34"), (530, "mΩ")),
        )
    )

    assert {(one.value, one.cond.ch) for one in readings} == {(21.0, "Q1"), (34.0, "Q2")}


def test_a_row_of_a_divided_table_that_names_none_goes_to_a_person(read):
    """Which of the two a value belongs to is no matter for guessing."""
    readings = read(
        rows(
            (115, (50, "On-resistance"), (160, "RDS(on)"), (220, "VGS = 10 V"), (340, "N-Ch"), (480, "21"), (530, "mΩ")),
            (129, (220, "VGS = -10 V"), (340, "P-Ch"), (480, "34"), (530, "mΩ")),
            (143, (50, "Diode forward voltage"), (160, "VSD"), (220, "IS = 1 A"), (480, "1.2"), (530, "V")),
        )
    )

    assert [one.status.value for one in readings if one.key == "vsd"] == ["review"]
