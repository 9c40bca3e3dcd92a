"""Each layout family knows its own headings, in words and in a whole page."""

from importlib import import_module
from pkgutil import iter_modules

import pytest
from hand_made import page

from parsers import layouts
from parsers.layouts import FAMILIES
from parsers.stages.headings import headings_in
from parsers.stages.lines import lines_in

HEADINGS = {
    "min_typ_max": ((50, "Parameter"), (250, "Symbol"), (350, "Min."), (400, "Typ."), (450, "Max."), (500, "Unit")),
    "single_value": ((50, "Parameter"), (250, "Symbol"), (350, "Limit"), (500, "Unit")),
    "part_columns": ((50, "Parameter"), (250, "Symbol"), (350, "QX60N06"), (420, "QX80N06"), (500, "Unit")),
    "channel_columns": ((50, "Parameter"), (250, "Symbol"), (350, "N-Channel"), (420, "P-Channel"), (500, "Unit")),
    "duration_columns": ((50, "Parameter"), (250, "Symbol"), (350, "10 s"), (400, "Steady State"), (500, "Unit")),
}
ROWS = {
    "min_typ_max": ((50, "Gate threshold voltage"), (250, "VGS(th)"), (350, "1.0"), (400, "1.5"), (450, "2.5"), (500, "V")),
    "single_value": ((50, "Drain-source voltage"), (250, "VDS"), (350, "60"), (500, "V")),
    "part_columns": ((50, "Drain-source voltage"), (250, "VDS"), (350, "60"), (420, "80"), (500, "V")),
    "channel_columns": ((50, "Drain-source voltage"), (250, "VDS"), (350, "30"), (420, "-30"), (500, "V")),
    "duration_columns": ((50, "Junction to ambient"), (250, "RthJA"), (350, "40"), (400, "70"), (500, "K/W")),
}
EXPECTED = {
    "min_typ_max": {("min", 1.0, None), ("typ", 1.5, None), ("max", 2.5, None)},
    "single_value": {("max", 60.0, None)},
    "part_columns": {("max", 60.0, "QX60N06"), ("max", 80.0, "QX80N06")},
    "channel_columns": {("max", 30.0, "Q1"), ("max", -30.0, "Q2")},
    "duration_columns": {("max", 40.0, "10 s"), ("max", 70.0, "steady")},
}


@pytest.mark.parametrize("name", HEADINGS)
def test_the_first_family_that_knows_a_heading_is_its_own(name):
    """A family that claims another's heading would lose what its columns say."""
    ((_, _, heads),) = headings_in(lines_in(page((100, *HEADINGS[name]))))
    first = next(family for family in FAMILIES if family.read(heads) is not None)

    assert first is import_module(f"parsers.layouts.{name}").FAMILY


@pytest.mark.parametrize("name", HEADINGS)
def test_a_family_gives_each_value_what_its_column_says(name, read):
    """A limit, a part, a channel, a duration."""
    readings = read(page((100, *HEADINGS[name]), (115, *ROWS[name])))

    assert {(one.limit.value, one.value, one.cond.part or one.cond.ch or one.cond.t) for one in readings} == EXPECTED[name]


def test_every_layout_file_is_registered_and_has_a_heading_here():
    """A new file that nobody lists would never be asked."""
    files = {module.name for module in iter_modules(layouts.__path__)}

    assert files == set(HEADINGS)
    assert {family.name for family in FAMILIES} == {import_module(f"parsers.layouts.{name}").FAMILY.name for name in files}


def test_a_lone_value_between_the_parts_speaks_of_both(read):
    """A merged cell holds for every part under whose columns it stands."""
    readings = read(page((100, *HEADINGS["part_columns"]), (115, (50, "Gate-source voltage"), (250, "VGS"), (398, "20"), (500, "V"))))

    assert {(one.value, one.cond.part) for one in readings} == {(20.0, "QX60N06"), (20.0, "QX80N06")}


def test_columns_headed_by_packages_are_matched_to_parts_as_a_doubt(read):
    """The order of the title is a hint, no proof."""
    top = (60, (50, "QX60N06, QX60N06F"))
    head = (100, (50, "Parameter"), (250, "Symbol"), (380, "Value"), (500, "Unit"))
    readings = read(
        page(
            top,
            head,
            (114, (350, "TO-220"), (420, "TO-220F")),
            (128, (50, "Power dissipation TC = 25 °C"), (250, "PD"), (350, "120"), (420, "38"), (500, "W")),
        )
    )

    assert {(one.value, one.cond.part, one.status.value) for one in readings} == {(120.0, "QX60N06", "review"), (38.0, "QX60N06F", "review")}


def by_package(*orders):
    """Two parts in two packages, and what a list says of which comes in which."""
    head = (100, (50, "Parameter"), (250, "Symbol"), (380, "Value"), (500, "Unit"))
    return page(
        (60, (50, "QX60N06, QX60N06F")),
        head,
        (114, (350, "TO-220"), (420, "TO-220F")),
        (128, (50, "Power dissipation TC = 25 °C"), (250, "PD"), (350, "120"), (420, "38"), (500, "W")),
        (142, (50, "Drain-source on-resistance VGS = 10 V"), (250, "RDS(on)"), (385, "9.0"), (500, "mΩ")),
        *((300 + 14 * at, (50, part), (250, package), (400, "Tube")) for at, (part, package) in enumerate(orders)),
    )


def test_a_list_of_what_to_order_proves_which_part_a_package_is_of(read):
    """Each of its lines names one part and one package."""
    readings = read(by_package(("QX60N06", "TO-220"), ("QX60N06F", "TO-220F")))

    assert {(one.value, one.cond.part, one.status.value) for one in readings if one.key == "pd"} == {
        (120.0, "QX60N06", "accepted"),
        (38.0, "QX60N06F", "accepted"),
    }


@pytest.mark.parametrize("orders", [[("QX60N06", "TO-220")], [("QX60N06", "TO-220F"), ("QX60N06F", "TO-220")]], ids=["half", "crosswise"])
def test_a_list_that_says_less_or_otherwise_proves_nothing(read, orders):
    """Half a list leaves the other part open; one that says otherwise makes the order of the title worthless."""
    assert {one.status.value for one in read(by_package(*orders)) if one.key == "pd"} == {"review"}
