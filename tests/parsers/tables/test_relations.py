"""What the numbers of one sheet say about each other: support, a flag, a doubt."""

from hand_made import page

from parsers.harvest import harvest

RATED = (100, (50, "Parameter"), (250, "Symbol"), (400, "Value"), (500, "Unit"))
CASE = (86, (50, "Absolute maximum ratings TC = 25 °C unless otherwise noted"))


def sheet(power="333", junction="175", current="202"):
    """A sheet with the figures that power, resistance and current meet in; IRF1404's unless told otherwise."""
    return page(
        CASE,
        RATED,
        (115, (50, "Continuous drain current"), (250, "ID"), (400, current), (500, "A")),
        (129, (50, "Power dissipation"), (250, "PD"), (400, power), (500, "W")),
        (143, (50, "Operating junction temperature"), (250, "TJ"), (400, junction), (500, "°C")),
        (157, (50, "Junction to case"), (250, "RthJC"), (400, "0.45"), (500, "K/W")),
        (171, (50, "Drain-source on-resistance VGS = 10 V"), (250, "RDS(on)"), (400, "4"), (500, "mΩ")),
        (300, (50, "Calculated continuous current. Package limitation current is 75 A.")),
    )


def by_key(readings):
    """Readings by key; sentences below the tables apart."""
    return {one.key: one for one in readings if one.cond.where is None}


def test_power_and_resistance_that_agree_support_each_other(read):
    """333 W times 0.45 K/W is 150 K."""
    found = by_key(read(sheet()))

    assert "identity:power" in found["pd"].evidence
    assert "identity:power" in found["rth_jc"].evidence


def test_a_sheet_that_contradicts_itself_is_flagged_and_read(read):
    """The figures are printed so; whether they are true is not the reader's to say."""
    found = by_key(read(sheet(power="280")))

    assert found["pd"].flags == ("contradicts:power",)
    assert found["pd"].status == "accepted"


def test_a_power_far_off_goes_to_a_person(read):
    """A factor of ten is a misreading of one of the three."""
    found = by_key(read(sheet(power="33")))

    assert found["pd"].status == "review"
    assert "power times thermal resistance" in found["pd"].why.lower()


def test_a_current_above_the_package_limit_is_the_silicons(read):
    """A footnote states 75 A; 202 A can only be what the silicon would carry."""
    readings = read(sheet())

    assert by_key(readings)["id_cont"].cond.limited_by == "silicon"
    assert [(one.value, one.cond.limited_by) for one in readings if one.cond.where == "footnote"] == [(75.0, "package")]


def test_a_row_out_of_order_goes_to_a_person(read):
    """A typical value above the largest is two columns taken for each other."""
    head = (100, (50, "Parameter"), (200, "Symbol"), (270, "Conditions"), (400, "Min."), (440, "Typ."), (480, "Max."), (530, "Unit"))
    readings = read(page(head, (115, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V"), (440, "4.0"), (480, "3.0"), (530, "mΩ"))))

    assert {one.status.value for one in readings} == {"review"}


def test_a_sheet_without_a_switch_gives_nothing_unseen(read):
    """A diode's sheet rates power and junction too."""
    readings = read(page(CASE, RATED, (115, (50, "Power dissipation"), (250, "PD"), (400, "5"), (500, "W"))))

    assert {one.status.value for one in readings} == {"review"}


def test_a_comma_before_three_digits_is_what_the_sheets_other_numbers_say(read):
    """Fractions with a comma elsewhere make it a fraction; nothing elsewhere leaves it to a person."""
    head = (100, (50, "Parameter"), (200, "Symbol"), (270, "Conditions"), (400, "Min."), (440, "Typ."), (480, "Max."), (530, "Unit"))
    row = (115, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 1 A"), (480, "1,250"), (530, "Ω"))
    other = (129, (50, "Diode forward voltage"), (200, "VSD"), (270, "IS = 1 A"), (480, "1,2"), (530, "V"))

    assert [(one.value, one.status.value) for one in read(page(head, row, other)) if one.key == "rds_on"] == [(1.25, "accepted")]
    assert [one.status.value for one in read(page(head, row))] in (["review"], [])


FULL = (100, (50, "Parameter"), (200, "Symbol"), (270, "Conditions"), (400, "Min."), (440, "Typ."), (480, "Max."), (530, "Unit"))


def rows(*given):
    """A table of characteristics."""
    return page(FULL, *((115 + 14 * at, *row) for at, row in enumerate(given)))


def statuses(readings, key):
    """Status of each reading of a parameter."""
    return {one.status.value for one in readings if one.key == key}


def test_an_on_resistance_without_a_gate_voltage_is_another_rows(read):
    """At VGS = 0 V the switch is off."""
    readings = read(rows(((50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 0 V, ID = 20 A"), (480, "3.0"), (530, "mΩ"))))

    assert statuses(readings, "rds_on") == {"review"}


def test_a_threshold_measured_with_a_gate_voltage_is_another_rows(read):
    """A threshold is what is measured, not what is set."""
    readings = read(
        rows(
            ((50, "Gate threshold voltage"), (200, "VGS(th)"), (270, "VGS = -4.5 V, ID = 20 A"), (440, "5.8"), (480, "7.0"), (530, "V")),
            ((50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 20 A"), (480, "3.0"), (530, "mΩ")),
        )
    )

    assert statuses(readings, "vgs_th") == {"review"}
    assert statuses(readings, "rds_on") == {"accepted"}


def test_on_resistance_that_rises_with_the_gate_voltage_is_in_doubt(read):
    """Two rows were taken for each other."""
    readings = read(
        rows(
            ((50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 20 A"), (480, "4.6"), (530, "mΩ")),
            ((270, "VGS = 4.5 V, ID = 20 A"), (480, "3.0"), (530, "mΩ")),
        )
    )

    assert statuses(readings, "rds_on") == {"review"}


def test_a_pulse_below_the_continuous_current_and_air_nearer_than_the_case_are_in_doubt(read):
    """Each is the next row's figure."""
    readings = read(
        page(
            CASE,
            RATED,
            (115, (50, "Continuous drain current"), (250, "ID"), (400, "60"), (500, "A")),
            (129, (50, "Pulsed drain current"), (250, "IDM"), (400, "24"), (500, "A")),
            (143, (50, "Junction to case"), (250, "RthJC"), (400, "62"), (500, "K/W")),
            (157, (50, "Junction to ambient"), (250, "RthJA"), (400, "40"), (500, "K/W")),
            (171, (50, "Drain-source on-resistance VGS = 10 V"), (250, "RDS(on)"), (400, "4"), (500, "mΩ")),
        )
    )

    assert statuses(readings, "id_pulse") == {"review"}
    assert statuses(readings, "rth_ja") == {"review"}
    assert statuses(readings, "id_cont") == {"accepted"}


def test_two_values_for_the_same_conditions_are_in_doubt(read):
    """What tells them apart was not read."""
    readings = read(
        page(
            CASE,
            RATED,
            (115, (50, "Continuous drain current"), (250, "ID"), (400, "60"), (500, "A")),
            (129, (50, "Continuous drain current chip"), (250, "ID"), (400, "80"), (500, "A")),
            (171, (50, "Drain-source on-resistance VGS = 10 V"), (250, "RDS(on)"), (400, "4"), (500, "mΩ")),
        )
    )

    assert statuses(readings, "id_cont") == {"review"}


def test_a_reading_says_how_it_was_read_and_keeps_its_name(read):
    """The same file gives the same name; the stages are told in words."""
    table = rows(((50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 20 A"), (480, "3.0"), (530, "mΩ")))
    (first,), (again,) = read(table), read(table)

    assert first.id == again.id
    assert [line.split(": ")[0] for line in first.trace] == ["layout", "row", "column", "unit", "conditions", "characters"]


def test_a_minus_sign_on_an_n_channel_sheet_is_in_doubt():
    """A dash for a missing typical value stands close to the largest one; a P-channel part has it rightly."""
    threshold = ((50, "Gate threshold voltage"), (200, "VGS(th)"), (270, "ID = 250 µA"), (480, "-2.5"), (530, "V"))
    resistance = ((50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 20 A"), (480, "3.0"), (530, "mΩ"))
    pages = [rows(threshold, resistance)]

    assert statuses(harvest(pages, "0" * 64, "N").readings, "vgs_th") == {"review"}
    assert statuses(harvest(pages, "0" * 64, "P").readings, "vgs_th") == {"accepted"}
    assert statuses(harvest(pages, "0" * 64).readings, "vgs_th") == {"accepted"}
