"""What the front of a sheet promises, and what that says about the values in its tables."""

import pytest
from hand_made import page, word

from parsers.stages.headline import promises_on
from parsers.stages.lines import lines_in

HEAD = (300, (50, "Parameter"), (200, "Symbol"), (270, "Conditions"), (400, "Min."), (440, "Typ."), (480, "Max."), (530, "Unit"))
TABLE = (
    HEAD,
    (315, (50, "Drain-source voltage"), (200, "VDS"), (480, "80"), (530, "V")),
    (329, (50, "Continuous drain current"), (200, "ID"), (270, "TC = 25 °C"), (480, "120"), (530, "A")),
    (343, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 10 V, ID = 50 A"), (440, "2.4"), (480, "2.9"), (530, "mΩ")),
    (357, (50, "On-resistance"), (200, "RDS(on)"), (270, "VGS = 6 V, ID = 50 A"), (440, "3.1"), (480, "3.9"), (530, "mΩ")),
)


def promised(*rows):
    """Key, value, unit and gate voltage of each promise in these lines."""
    return [(one.key, one.value, one.unit, one.cond.vgs) for one in promises_on(1, lines_in(page(*rows)))]


@pytest.mark.parametrize(
    ("text", "promises"),
    [
        ("VDS 80 V", [("vds_max", 80.0, "V", None)]),
        ("VDS (V) = 30V", [("vds_max", 30.0, "V", None)]),
        ("VDSS (V) 100", [("vds_max", 100.0, "V", None)]),
        ("ID (at VGS=-10V) -8A", [("id_cont", -8.0, "A", -10.0)]),
        ("RDS(ON) (at VGS = 4.5V) < 33mΩ", [("rds_on", 33.0, "mohm", 4.5)]),
        ("RDS(on), max 2.9 mΩ", [("rds_on", 2.9, "mohm", None)]),
        ("r DS(ON) = 0.040Ω, V GS = 10V", [("rds_on", 0.04, "ohm", 10.0)]),
        ("RDS(ON)=1.9mΩ (typical) @ VGS=10V", [("rds_on", 1.9, "mohm", 10.0)]),
        ("VDS =-100V,ID =-30A", [("vds_max", -100.0, "V", None), ("id_cont", -30.0, "A", None)]),
        ("30V N-Channel MOSFET", [("vds_max", 30.0, "V", None)]),
        ("5.6A, 100V, 0.540 Ohm, N-Channel", [("id_cont", 5.6, "A", None), ("vds_max", 100.0, "V", None), ("rds_on", 0.54, "ohm", None)]),
    ],
)
def test_a_promise_is_read_as_sheets_write_it(text, promises):
    """Names with their figures in any order of conditions, or bare figures in a title."""
    assert sorted(promised((100, (50, text)))) == sorted(promises)


@pytest.mark.parametrize(
    "text",
    [
        "Low leakage IDSS = 100 μA (VDS = 600 V)",
        "Tvj = 25 °C, ID = 4 A, VGS = 18 V",
        "operation with gate voltages as low as 2.5V",
        "Very low RDS(on) at 4.5 VGS",
    ],
)
def test_conditions_and_praise_promise_nothing(text):
    """What a current was measured at is no rating."""
    assert promised((100, (50, text))) == []


def test_a_name_with_its_unit_goes_on_in_the_line_below():
    """``RDS(on) [mΩ]`` over ``VGS = 10 V   1.8``."""
    assert promised((100, (50, "RDS(on) [mΩ]")), (114, (50, "VGS = 10 V"), (200, "1.8"))) == [("rds_on", 1.8, "mohm", 10.0)]


def by_key(readings, limit="max"):
    """Evidence and flags of the tables' values by key and gate voltage."""
    return {(one.key, one.cond.vgs): one for one in readings if one.limit == limit and one.cond.where is None}


def test_a_table_that_keeps_its_promise_has_the_headline_as_evidence(read):
    """The promise itself is no reading of its own: it is said once."""
    readings = read(page((100, (50, "VDS 80 V")), (114, (50, "RDS(on), max 2.9 mΩ at VGS = 10 V")), (128, (50, "ID 120 A")), *TABLE))
    found = by_key(readings)

    assert {place for place, one in found.items() if "headline" in one.evidence} == {("vds_max", None), ("rds_on", 10.0), ("id_cont", None)}
    assert all(one.cond.where is None and not one.flags for one in readings)


def test_a_promise_that_the_table_breaks_is_told_on_both(read):
    """The value of the table is read right and flagged; the front's goes to a person; each says what the other says."""
    readings = read(page((100, (50, "VDS 80 V")), (114, (50, "RDS(on), max 2.5 mΩ at VGS = 10 V")), *TABLE))
    table = by_key(readings)["rds_on", 10.0]
    (front,) = [one for one in readings if one.cond.where == "headline"]

    assert (table.status, table.flags) == ("accepted", ("contradicts:headline",))
    assert table.why.endswith("The front of the sheet says 2.5 mΩ.")
    assert (front.value, front.status, front.flags) == (2.5, "review", ("contradicts:headline",))
    assert "the table says 2.9 mΩ" in front.why


def test_a_promise_without_a_table_goes_to_a_person(read):
    """A page without tables still says something, and nobody has borne it out."""
    (one,) = read(page((100, (50, "VDS"), (150, "-40"), (190, "V"))))

    assert (one.key, one.value, one.status, one.cond.where) == ("vds_max", -40.0, "review", "headline")
    assert "front of the sheet alone" in one.why


def test_a_typical_promise_does_not_speak_of_the_largest_value(read):
    """2.4 mΩ typical is no word about 2.9 mΩ at most."""
    readings = read(page((100, (50, "RDS(on) = 2.4 mΩ (typical) @ VGS = 10 V")), *TABLE))

    assert "headline" in by_key(readings, "typ")["rds_on", 10.0].evidence
    assert "headline" not in by_key(readings)["rds_on", 10.0].evidence


def test_a_title_never_contradicts(read):
    """A part is called after rounded figures."""
    readings = read(page((100, (50, "75V 100A N-Channel MOSFET")), *TABLE))

    assert [flag for one in readings for flag in one.flags] == []


def smudged(doubt, *, second=None):
    """The tables with the largest on-resistance at 10 V in doubt."""
    rows = (*TABLE[:3], (343, *TABLE[3][1:4], (440, "2.4"), (530, "mΩ")), TABLE[4])
    return page((100, (50, "RDS(on), max 2.9 mΩ at VGS = 10 V")), *rows, extra=(word("2.9", 480, 343, doubt=doubt, second=second),))


def test_the_front_outweighs_a_doubtful_glyph_and_says_so(read):
    """Evidence of another kind: other characters in another place say the same."""
    one = by_key(read(smudged(("symbol_font",), second="?")))["rds_on", 10.0]

    assert (one.status, "second_reader" in one.evidence) == ("accepted", False)
    assert one.why.startswith("One reader alone is sure of the characters, and the front of the sheet prints the same value")


@pytest.mark.parametrize("sign", ["covered", "hidden_value:Ω", "crossed", "annotated"])
def test_nothing_outweighs_a_sign_that_a_viewer_shows_something_else(read, sign):
    """A struck-out figure may be the one that the front repeats."""
    assert by_key(read(smudged((sign,))))["rds_on", 10.0].status == "review"


def test_a_hidden_value_bears_on_values_of_its_own_unit_alone(read):
    """Volts that no viewer shows say nothing about milliohms."""
    assert by_key(read(smudged(("hidden_value:V",))))["rds_on", 10.0].status == "accepted"
    assert by_key(read(smudged(("hidden_value:Ω",))))["rds_on", 10.0].status == "review"


def test_figures_under_names_bear_a_table_out_and_never_contradict(read):
    """A small table on the front may list other parts as well."""
    names = (100, (50, "Type"), (120, "VDSS"), (220, "RDS(on) max"), (330, "ID"))
    own, other = (
        (114, (50, "QX80N03"), (115, "80 V"), (230, "2.9 mΩ"), (328, "120 A")),
        (128, (50, "QX80N09"), (115, "80 V"), (230, "9 mΩ"), (328, "60 A")),
    )
    found = by_key(read(page(names, own, other, *TABLE)))

    assert {place for place, one in found.items() if "headline" in one.evidence} == {("vds_max", None), ("rds_on", 10.0), ("id_cont", None)}
    assert [flag for one in found.values() for flag in one.flags] == []


def test_full_width_figures_are_read_and_printed_as_they_stand():
    """Chinese and Japanese sheets may set them."""
    (one,) = promises_on(1, lines_in(page((100, (50, "VDS"), (100, "\uff14\uff10"), (130, "V")))))

    assert (one.value, one.printed, one.quote) == (40.0, "\uff14\uff10", "VDS \uff14\uff10 V")
