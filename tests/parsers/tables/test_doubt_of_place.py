"""What takes the certainty away from a number's column, unit or condition."""

import pytest
from hand_made import across, page, upright, word

LIMITS = (100, (50, "Parameter"), (160, "Symbol"), (220, "Conditions"), (400, "Min."), (440, "Typ."), (480, "Max."), (530, "Unit"))
RATED = (100, (50, "Parameter"), (250, "Symbol"), (400, "Value"), (500, "Unit"))
RESISTANCE = ((50, "On-resistance"), (160, "RDS(on)"), (220, "VGS = 10 V, ID = 20 A"))


def statuses(readings, key):
    """Values and statuses of one parameter."""
    return {(one.value, one.status.value) for one in readings if one.key == key}


def test_a_dash_far_before_a_number_is_no_minus(read):
    """A dash that stands for no typical value and a number in the next column were taken for one negative number."""
    threshold = ((50, "Gate threshold voltage"), (160, "VGS(th)"), (220, "ID = 250 µA"), (530, "V"))
    readings = read(page(LIMITS, (115, *RESISTANCE, (440, "4.0"), (530, "mΩ")), (129, *threshold, (444, "-"), (462, "2.5"))))

    assert not [one for one in readings if one.value < 0]


def test_a_number_nearer_to_another_heading_goes_to_a_person(read):
    """The gap that the long number leaves parts the columns left of the short one, which stands under Typ."""
    heads = ((50, "Parameter"), (160, "Symbol"), (220, "Conditions"), (390, "Typ."), (490, "Max."), (530, "Unit"))
    capacitance = ((50, "Input capacitance"), (160, "Ciss"), (220, "VDS = 25 V"), (458, "1234.56"), (510, "pF"))
    readings = read(page((100, *heads), (115, *RESISTANCE, (430, "4.0"), (530, "mΩ")), (129, *capacitance)))

    assert statuses(readings, "rds_on") == {(4.0, "review")}


def noted(note, *, mark):
    """A current with a raised mark beside its number, and a note below."""
    current = (115, (50, "Continuous drain current TC = 25 °C"), (250, "ID"), (400, "60"), (500, "A"))
    resistance = (129, (50, "On-resistance VGS = 10 V"), (250, "RDS(on)"), (400, "4.0"), (500, "mΩ"))
    return page(RATED, current, resistance, (200, *note), extra=(word(mark, 411, 111, size=5.0),))


def test_a_mark_without_its_note_leaves_a_current_open(read):
    """It may say that the package sets the limit."""
    assert statuses(read(noted(((50, "Device mounted on a board"),), mark="4")), "id_cont") == {(60.0, "review")}


@pytest.mark.parametrize("text", ["60(4)", "60 (4)", "60*"])
def test_a_mark_of_full_size_refers_to_a_note_too(read, text):
    """Not every sheet raises its marks."""
    current = (115, (50, "Continuous drain current TC = 25 °C"), (250, "ID"), (400, text), (500, "A"))
    resistance = (129, (50, "On-resistance VGS = 10 V"), (250, "RDS(on)"), (400, "4.0"), (500, "mΩ"))
    note = (200, (50, f"{'*' if '*' in text else '(4)'} Package limited."))

    (found,) = [one for one in read(page(RATED, current, resistance, note)) if one.key == "id_cont"]

    assert (found.value, found.cond.limited_by, found.status) == (60.0, "package", "accepted")


def test_a_limit_by_whom_is_not_understood_goes_to_a_person(read):
    """The row says something of the package; what it says was not read."""
    current = (115, (50, "Continuous drain current (package) TC = 25 °C"), (250, "ID"), (400, "60"), (500, "A"))
    resistance = (129, (50, "On-resistance VGS = 10 V"), (250, "RDS(on)"), (400, "4.0"), (500, "mΩ"))

    assert statuses(read(page(RATED, current, resistance)), "id_cont") == {(60.0, "review")}


@pytest.mark.parametrize(("unit", "value", "status"), [("mΩ", "4.0", "accepted"), ("Ω", "4.0", "review"), ("mΩ", "0.004", "review")])
def test_an_on_resistance_that_no_switch_has_at_its_current_goes_to_a_person(read, unit, value, status):
    """4 mΩ at 20 A drop 80 mV; ohms for milliohms would drop 80 V, or 80 µV (Ohm's law)."""
    readings = read(page(LIMITS, (115, *RESISTANCE, (480, value), (530, unit))))

    assert {one.status.value for one in readings if one.key == "rds_on"} <= {status}


def test_a_unit_in_brackets_behind_a_symbol_is_no_part_of_it(read):
    """Tables without a column of units say ``BVDSS (V)``."""
    heads = ((50, "Symbol"), (220, "Conditions"), (400, "Min."), (440, "Typ."), (480, "Max."))
    rows = ((115, (50, "BVDSS (V)"), (220, "ID = 250 µA"), (400, "60")), (129, (50, "RDS(on) (mΩ)"), (220, "VGS = 10 V, ID = 20 A"), (480, "4.0")))

    assert {(one.key, one.value) for one in read(page((100, *heads), *rows))} == {("vbr_dss", 60.0), ("rds_on", 4.0)}


def test_columns_of_channels_need_no_column_of_units(read):
    """The units stand behind the names."""
    heads = ((50, "Parameter"), (250, "Symbol"), (350, "N-Channel"), (450, "P-Channel"))
    rows = ((115, (50, "Drain-source voltage (V)"), (250, "VDS"), (360, "30"), (460, "-30")),)
    resistance = (129, (50, "On-resistance VGS = 10 V (mΩ)"), (250, "RDS(on)"), (360, "20"), (460, "40"))

    found = {(one.value, one.cond.ch) for one in read(page((100, *heads), *rows, resistance)) if one.key == "vds_max"}

    assert found == {(30.0, "Q1"), (-30.0, "Q2")}


def test_traditional_chinese_heads_a_table(read):
    """Signs of Taiwan and Hong Kong."""
    heads = ((50, "參數"), (250, "符號"), (400, "額定值"), (500, "單位"))
    rows = (
        (115, (50, "汲極-源極電壓"), (250, "VDS"), (400, "60"), (500, "V")),
        (129, (50, "導通電阻 VGS = 10 V"), (250, "RDS(on)"), (400, "4.0"), (500, "mΩ")),
    )

    assert {one.key for one in read(page((100, *heads), *rows))} == {"vds_max", "rds_on"}


def test_a_drawn_column_holds_what_stands_beside_its_heading(read):
    """Lines say more than distance."""
    uprights = [upright(x, 92, 140) for x in (40, 155, 215, 370, 430, 520, 560)]
    heads = ((50, "Parameter"), (160, "Symbol"), (220, "Conditions"), (390, "Typ."), (490, "Max."), (530, "Unit"))
    readings = read(page((100, *heads), (115, *RESISTANCE, (432, "4.0"), (530, "mΩ")), rules=uprights))

    assert statuses(readings, "rds_on") == {(4.0, "accepted")}


def test_a_frame_around_a_table_lends_no_condition_to_all_rows(read):
    """The one temperature of the table is the current's; the power's is that of the caption."""
    heads = ((50, "Parameter"), (160, "Symbol"), (220, "Conditions"), (400, "Value"), (500, "Unit"))
    rows = (
        (115, (50, "Drain-source voltage"), (160, "VDS"), (400, "80"), (500, "V")),
        (129, (50, "Continuous drain current"), (160, "ID"), (220, "TC = 100 °C"), (400, "160"), (500, "A")),
        (143, (50, "Pulsed drain current"), (160, "IDM"), (400, "900"), (500, "A")),
        (157, (50, "Power dissipation"), (160, "PD"), (400, "278"), (500, "W")),
        (171, (50, "On-resistance VGS = 10 V"), (160, "RDS(on)"), (400, "3.1"), (500, "mΩ")),
    )
    caption = (86, (50, "Absolute maximum ratings TC = 25 °C unless otherwise noted"))
    readings = read(page(caption, (100, *heads), *rows, rules=[across(93), across(180)]))

    assert {(one.value, one.cond.tc, one.status.value) for one in readings if one.key == "pd"} == {(278.0, 25.0, "accepted")}


def test_a_number_with_another_quantitys_unit_is_no_value(read):
    """``10 s`` in a column of currents is the end of a condition."""
    resistance = (129, (50, "On-resistance VGS = 10 V"), (250, "RDS(on)"), (400, "4.0"), (500, "mΩ"))
    current = (115, (50, "Continuous drain current TC = 25 °C"), (250, "ID"), (400, "10 s"), (500, "A"))

    assert not statuses(read(page(RATED, current, resistance)), "id_cont")


def test_a_mark_that_was_broken_off_is_no_number(read):
    """``(Note`` stands on the line above and ``4)`` below it."""
    resistance = (129, (50, "On-resistance VGS = 10 V"), (250, "RDS(on)"), (400, "4.0"), (500, "mΩ"))
    current = (115, (50, "Continuous drain current TC = 25 °C"), (250, "ID"), (400, "4)"), (500, "A"))

    assert not statuses(read(page(RATED, current, resistance)), "id_cont")


def test_a_condition_in_two_lines_beside_one_number_is_read_whole(read):
    """It stands half a line above and below the number, in a column that no heading names."""
    heads = ((50, "Parameter"), (400, "Value"), (500, "Unit"))
    rows = (
        (110, (330, "VGS = 10 V,")),
        (115, (50, "Drain current"), (405, "60"), (500, "A")),
        (120, (330, "TA = 25 °C")),
        (140, (50, "Drain-source voltage"), (405, "30"), (500, "V")),
        (154, (50, "On-resistance VGS = 10 V"), (405, "4.0"), (500, "mΩ")),
    )
    (found,) = [one for one in read(page((96, *heads), *rows)) if one.key == "id_cont"]

    assert (found.cond.ta, found.cond.vgs) == (25.0, 10.0) or found.status == "review"


def test_numbers_flush_at_the_right_belong_to_the_last_column(read):
    """The heading stands in the middle of a wide column, the numbers at its edge."""
    heads = ((50, "Parameter"), (250, "Symbol"), (400, "Value"))
    rows = ((115, (50, "Drain-source voltage"), (250, "VDS"), (480, "60 V")), (129, (50, "Drain current TC = 25 °C"), (250, "ID"), (480, "80 A")))
    resistance = (143, (50, "On-resistance VGS = 10 V"), (250, "RDS(on)"), (465, "4.0 mΩ"))

    assert {(one.key, one.value) for one in read(page((100, *heads), *rows, resistance))} == {("vds_max", 60.0), ("id_cont", 80.0), ("rds_on", 4.0)}


def test_columns_of_parts_need_no_column_of_units(read):
    """The units stand behind the numbers."""
    heads = ((50, "Parameter"), (250, "Symbol"), (350, "QX60N06"), (450, "QX80N06"))
    rows = ((115, (50, "Drain-source voltage"), (250, "VDS"), (350, "60 V"), (450, "80 V")),)
    resistance = (129, (50, "On-resistance VGS = 10 V"), (250, "RDS(on)"), (350, "4 mΩ"), (450, "5 mΩ"))

    assert {(one.value, one.cond.part) for one in read(page((100, *heads), *rows, resistance)) if one.key == "vds_max"} == {
        (60.0, "QX60N06"),
        (80.0, "QX80N06"),
    }


HEATED = ((50, "Parameter"), (160, "Symbol"), (220, "Conditions"), (400, "Value"), (500, "Unit"))
CLOSING = (185, (50, "On-resistance VGS = 10 V"), (160, "RDS(on)"), (400, "4.0"), (500, "mΩ"))


def test_a_symbol_of_another_kind_of_quantity_goes_to_a_person(read):
    """``Eoss`` is an energy, whatever its words say of a capacitance."""
    stored = (115, (50, "Output capacitance, at 400 V"), (160, "Eoss"), (440, "17"))

    found = read(page(LIMITS, stored, (129, *RESISTANCE, (480, "4.0"), (530, "mΩ"))))

    assert not [one for one in found if one.key == "coss" and one.status == "accepted"]


def test_a_rating_without_a_time_beside_timed_ones_goes_to_a_person(read):
    """The seconds may stand in a merged cell that speaks of both rows."""
    timed = (115, (50, "Continuous drain current"), (160, "ID"), (220, "TA = 25 °C, t < 10 s"), (400, "5.0"), (500, "A"))
    bare = (129, (220, "TA = 70 °C"), (400, "4.0"), (500, "A"))

    assert statuses(read(page((100, *HEATED), timed, bare, CLOSING)), "id_cont") == {(5.0, "accepted"), (4.0, "review")}


def test_a_power_without_a_temperature_in_a_table_that_names_some_goes_to_a_person(read):
    """Its own may have been lost."""
    current = (115, (50, "Continuous drain current"), (160, "ID"), (220, "TC = 25 °C"), (400, "60"), (500, "A"))
    power = (129, (50, "Power dissipation"), (160, "PD"), (400, "120"), (500, "W"))

    assert statuses(read(page((100, *HEATED), current, power, CLOSING)), "pd") == {(120.0, "review")}


def test_a_least_thermal_resistance_is_no_reading(read):
    """Nobody rates one: it is a tick of a graph, or another column's."""
    least = (115, (50, "Thermal resistance junction to case"), (160, "RthJC"), (400, "0.5"), (530, "K/W"))

    assert not statuses(read(page(LIMITS, least, (129, *RESISTANCE, (480, "4.0"), (530, "mΩ")))), "rth_jc")


def test_a_temperature_without_a_name_leaves_an_on_resistance_open(read):
    """``TJ =`` was broken off; a hot value is no cold one."""
    hot = (129, (220, "VGS = 10 V; 125 °C"), (480, "6.4"), (530, "mΩ"))

    assert statuses(read(page(LIMITS, (115, *RESISTANCE, (480, "4.0"), (530, "mΩ")), hot)), "rds_on") == {(4.0, "accepted"), (6.4, "review")}


def test_a_figure_among_the_symbols_puts_the_columns_in_doubt(read):
    """The second power belongs to the value column, and its temperature to the second power."""
    power = (115, (50, "Power dissipation TC = 25 °C"), (250, "PD 78 W"), (400, "156"), (500, "W"))
    resistance = (129, (50, "On-resistance VGS = 10 V"), (250, "RDS(on)"), (400, "4.0"), (500, "mΩ"))

    assert (156.0, "accepted") not in statuses(read(page(RATED, power, resistance)), "pd")


def test_a_bare_figure_at_the_end_of_the_conditions_is_another_columns(read):
    """Two parts have a value each, and their headings ran together into one column."""
    current = (115, (50, "Continuous drain current"), (160, "ID"), (220, "TA = 25 °C"), (330, "6.2"), (400, "5.7"), (500, "A"))

    assert statuses(read(page((100, *HEATED), current, CLOSING)), "id_cont") == {(5.7, "review")}


def test_two_temperatures_of_one_name_in_a_row_leave_it_open(read):
    """The caption of the next table ran into the row."""
    hot = (115, (50, "On-resistance TJ = 25 °C"), (160, "RDS(on)"), (220, "VGS = 10 V, TJ = 175 °C"), (480, "7.8"), (530, "mΩ"))

    assert statuses(read(page(LIMITS, hot)), "rds_on") == {(7.8, "review")}


def test_a_breakdown_voltage_has_no_maximum(read):
    """A number under Max beside its name belongs to a neighbour, such as the leakage current that shares its cell."""
    breakdown = ((50, "Breakdown voltage"), (160, "V(BR)DSS"), (220, "VGS = 0 V, ID = 250 µA"), (530, "V"))
    readings = read(page(LIMITS, (115, *RESISTANCE, (440, "4.0"), (530, "mΩ")), (129, *breakdown, (400, "60"), (480, "100"))))

    assert statuses([one for one in readings if one.limit.value == "min"], "vbr_dss") == {(60.0, "accepted")}
    assert not [one for one in readings if one.key == "vbr_dss" and one.limit.value == "max"]


def test_a_small_current_that_lost_its_unit_goes_to_a_person(read):
    """Threshold and breakdown are measured at microamperes; 250 A is a unit that wrapped into another line."""
    threshold = ((50, "Threshold voltage"), (160, "VGS(th)"), (400, "2.0"), (480, "4.0"), (530, "V"))
    for current, status in (("ID = 250 µA", "accepted"), ("ID = 250", "review")):
        readings = read(page(LIMITS, (115, *RESISTANCE, (440, "4.0"), (530, "mΩ")), (129, *threshold, (220, current))))

        assert statuses(readings, "vgs_th") == {(2.0, status), (4.0, status)}


def test_a_heading_with_two_parts_leaves_open_whose_its_numbers_are(read):
    """Two headings that run into one, and of two numbers below them nobody knows which is whose."""
    heads = ((50, "Parameter"), (250, "Symbol"), (400, "QX18N65D QX18N65DF"), (500, "Unit"))
    resistance = (115, (50, "On-resistance VGS = 10 V"), (250, "RDS(on)"), (400, "4.0"), (500, "mΩ"))

    assert statuses(read(page((100, *heads), resistance)), "rds_on") == {(4.0, "review")}
