"""Which name, which column, which unit and which conditions a number belongs to."""

from dataclasses import replace

from hand_made import across, page, upright, word

HEAD = (100, (50, "Parameter"), (200, "Symbol"), (270, "Conditions"), (400, "Min."), (440, "Typ."), (480, "Max."), (530, "Unit"))
RATED = (100, (50, "Parameter"), (250, "Symbol"), (400, "Value"), (500, "Unit"))


def said(readings):
    """Key, limit, value, unit and status of each reading."""
    return {(one.key, one.limit.value, one.value, one.unit, one.status.value) for one in readings}


def test_a_number_takes_the_limit_of_the_heading_over_it(read):
    """Place decides, not order: here the typical value is missing."""
    readings = read(page(HEAD, (115, (50, "Gate threshold voltage"), (200, "VGS(th)"), (270, "ID = 250 µA"), (402, "1.0"), (482, "2.5"), (532, "V"))))

    assert said(readings) >= {("vgs_th", "min", 1.0, "V", "review"), ("vgs_th", "max", 2.5, "V", "review")}


def test_a_value_column_is_a_maximum_but_for_a_breakdown_voltage(read):
    """Value, Rating and Limit say no limit; the parameter does."""
    (vds,) = [one for one in read(page(RATED, (115, (50, "Drain-source voltage"), (250, "VDS"), (402, "60"), (502, "V")))) if one.key == "vds_max"]

    assert (vds.limit, vds.value) == ("max", 60.0)


def on_resistance(*rows, rules=()):
    """A page with a table that states an on-resistance."""
    return page(HEAD, *rows, rules=rules)


def test_a_row_without_a_name_goes_with_the_name_above(read):
    """Second and third gate voltage stand under the first."""
    readings = read(
        on_resistance(
            (115, (50, "Drain-source on-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 20 A"), (440, "2.4"), (480, "3.0"), (530, "mΩ")),
            (129, (270, "VGS = 4.5 V, ID = 20 A"), (440, "3.5"), (480, "4.6"), (530, "mΩ")),
        )
    )

    assert {(one.cond.vgs, one.limit.value, one.value) for one in readings} == {
        (10, "typ", 2.4),
        (10, "max", 3.0),
        (4.5, "typ", 3.5),
        (4.5, "max", 4.6),
    }
    assert {one.status.value for one in readings} == {"accepted"}


def test_a_row_that_adds_only_a_temperature_keeps_the_gate_voltage_above(read):
    """Hot on-resistance is printed as TJ = 125 °C under the cold one."""
    readings = read(
        on_resistance(
            (115, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 20 A"), (480, "3.0"), (530, "mΩ")),
            (129, (270, "TJ = 125 °C"), (480, "4.1"), (530, "mΩ")),
        )
    )

    assert {(one.cond.vgs, one.cond.tj, one.value) for one in readings} == {(10, None, 3.0), (10, 125, 4.1)}


def test_a_name_centred_on_its_rows_speaks_of_all_of_them(read):
    """Lines show that the rows above and below the name are one cell."""
    rules = [across(108), across(150), across(129, x0=265), upright(195, 90, 150), upright(265, 90, 150)]
    readings = read(
        on_resistance(
            (115, (270, "VGS = 10 V"), (480, "3.0"), (530, "mΩ")),
            (129, (50, "On-resistance"), (200, "RDS(on)")),
            (143, (270, "VGS = 4.5 V"), (480, "4.6"), (530, "mΩ")),
            rules=rules,
        )
    )

    assert {(one.cond.vgs, one.value) for one in readings} == {(10, 3.0), (4.5, 4.6)}


def test_a_row_that_differs_in_nothing_from_the_row_above_is_left_to_a_person(read):
    """A misprint dropped its name; guessing would make a second continuous current."""
    table = (
        RATED,
        (115, (50, "Continuous drain current"), (250, "ID"), (402, "0.22"), (502, "A")),
        (129, (402, "0.5"), (502, "A")),
        (143, (50, "Drain-source on-resistance"), (250, "RDS(on)"), (402, "5"), (502, "Ω")),
    )

    assert {(one.value, one.status.value) for one in read(page(*table)) if one.key == "id_cont"} == {(0.22, "accepted"), (0.5, "review")}


def test_a_condition_that_is_printed_and_not_understood_bars_acceptance(read):
    """The gate voltage lost its digits."""
    readings = read(on_resistance((115, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = V, ID = 20 A"), (480, "3.0"), (530, "mΩ"))))

    assert [one.status.value for one in readings] == ["review"]
    assert "condition" not in readings[0].evidence


def test_what_the_second_reader_does_not_see_is_left_to_a_person(read):
    """Glyphs that two readers read differently are in doubt."""
    row = (115, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 20 A"), (530, "mΩ"))
    (one,) = read(page(HEAD, row, extra=(word("3.0", 480, 115, second="8.0"),)))

    assert one.status == "review"
    assert "second_reader" not in one.evidence
    assert "second reader" in one.why


def test_a_doubtful_glyph_bars_acceptance(read):
    """A pale or covered digit may not be what a person sees."""
    row = (115, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 20 A"), (530, "mΩ"))
    (one,) = read(page(HEAD, row, extra=(word("3.0", 480, 115, doubt=("pale",)),)))

    assert one.status == "review"


def test_a_far_sign_is_no_doubt_of_a_rating_of_both_signs(read):
    """``±`` far off its number leaves the number what it is; a minus far off may have been lost."""
    both = (115, (50, "Gate-source voltage"), (250, "VGS"), (395, "±"), (500, "V"))
    channel = (129, (50, "On-resistance VGS = 10 V"), (250, "RDS(on)"), (410, "9"), (500, "mΩ"))
    drain = (143, (50, "Drain-source voltage"), (250, "VDS"), (395, "-"), (500, "V"))
    far = (word("20", 410, 115, doubt=("sign_apart",)), word("60", 410, 143, doubt=("sign_apart",)))
    found = {one.key: (one.status.value, one.cond.sign) for one in read(page(RATED, both, channel, drain, extra=far))}

    assert found == {"vgs_max": ("accepted", "+-"), "rds_on": ("accepted", None), "vds_max": ("review", None)}


def test_a_repaired_glyph_is_flagged(read):
    """A figure whose characters were mended says so."""
    row = (115, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 20 A"), (530, "mΩ"))
    plain = word("3.0", 480, 115)
    mended = replace(plain, glyphs=tuple(replace(glyph, repaired=True) for glyph in plain.glyphs))
    (one,) = read(page(HEAD, row, extra=(mended,)))

    assert one.flags == ("repaired_glyphs",)


def test_two_tables_under_one_line_of_headings_are_two(read):
    """The names begin anew right of the units."""
    readings = read(
        page(
            (
                100,
                (50, "Parameter"),
                (150, "Symbol"),
                (200, "Value"),
                (250, "Unit"),
                (320, "Parameter"),
                (430, "Symbol"),
                (480, "Value"),
                (540, "Unit"),
            ),
            (
                115,
                (50, "On-resistance"),
                (150, "RDS(on)"),
                (200, "3.0"),
                (250, "mΩ"),
                (320, "Junction to case"),
                (430, "RthJC"),
                (480, "0.9"),
                (530, "K/W"),
            ),
        )
    )

    assert {(one.key, one.value) for one in readings} == {("rds_on", 3.0), ("rth_jc", 0.9)}


def test_a_heading_carries_over_to_the_next_page(read):
    """A table that runs on has no heading of its own."""
    first = page(HEAD, (115, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V"), (480, "3.0"), (530, "mΩ")))
    second = page((60, (50, "Diode forward voltage"), (200, "VSD"), (270, "IS = 20 A"), (440, "0.8"), (480, "1.2"), (530, "V")), number=2)

    assert {(one.limit.value, one.value, one.page) for one in read(first, second) if one.key == "vsd"} == {("typ", 0.8, 2), ("max", 1.2, 2)}


def test_the_box_is_tight_on_the_number_and_the_quote_holds_it(read):
    """A person finds the digits in the crop, and in the words beside it."""
    (one,) = read(page(HEAD, (115, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V"), (480, "3.0"), (530, "mΩ"))))

    assert one.bbox == (480.0, 110.5, 495.0, 119.5)
    assert one.printed in one.quote
    assert one.row_bbox[0] <= 50
    assert one.row_bbox[2] >= 540


def test_a_condition_beside_one_of_two_rows_is_not_the_others(read):
    """The first row leaves its temperature to the caption; the one printed below it is the second row's."""
    rated = (100, (50, "Parameter"), (160, "Symbol"), (220, "Conditions"), (400, "Value"), (500, "Unit"))
    readings = read(
        page(
            (86, (50, "Absolute maximum ratings TC = 25 °C unless otherwise noted")),
            rated,
            (115, (50, "Power dissipation"), (160, "PD"), (400, "341"), (500, "W")),
            (129, (220, "TC = 100 °C"), (400, "170"), (500, "W")),
            (143, (50, "Drain-source on-resistance"), (160, "RDS(on)"), (220, "VGS = 10 V"), (400, "4"), (500, "mΩ")),
            rules=(across(93), across(108), across(136), across(150)),
        )
    )

    assert not [one for one in readings if (one.value, one.cond.tc, one.status) == (341.0, 100.0, "accepted")]


def test_a_measured_value_in_a_lone_column_has_an_unclear_limit(read):
    """It counts as the largest, and may be the typical one; a rating in the same column is a largest value."""
    head = (100, (50, "Parameter"), (200, "Symbol"), (300, "Value"), (400, "Unit"))
    rating = (115, (50, "Drain-source voltage"), (200, "VDS"), (300, "80"), (400, "V"))
    measured = (129, (50, "On-resistance at VGS = 10 V"), (200, "RDS(on)"), (300, "2.9"), (400, "mΩ"))
    said = (143, (50, "On-resistance at VGS = 6 V"), (200, "RDS(on)"), (280, "max"), (300, "3.9"), (400, "mΩ"))

    assert {(one.value, one.limit.value): one.flags for one in read(page(head, rating, measured, said))} == {
        (80.0, "max"): (),
        (2.9, "max"): ("limit_unclear",),
        (3.9, "max"): (),
    }
