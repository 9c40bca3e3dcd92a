"""The flags of drawn sheets: what is odd about a sheet is told on the sheet and on the values that it touches."""

from pathlib import Path

import pytest

from parsers.pipeline import read_datasheet

FIXTURES = Path(__file__).resolve().parents[3] / "fixtures" / "datasheets"


def read(family: str):
    """The first sheet of a layout family."""
    file = min((FIXTURES / family).glob("*.pdf"))
    return read_datasheet(file.read_bytes(), file.name)


def flagged(sheet, flag: str):
    """Key, limit, value and place of the values with a flag."""
    return {(one.key, one.limit.value, one.value, one.cond.where) for one in sheet.readings if flag in one.flags}


def test_a_front_that_promises_more_is_told_on_both_sides_and_nowhere_else():
    """130 A and 7.5 mΩ on the front; the tables keep 99.3 A and 8.5 mΩ, as they were drawn."""
    sheet = read("headline_disagrees")

    assert sheet.flags == ("contradicts:headline",)
    assert flagged(sheet, "contradicts:headline") == {
        ("id_cont", "max", 99.3, None),
        ("rds_on", "max", 8.5, None),
        ("id_cont", "max", 130.0, "headline"),
        ("rds_on", "max", 7.5, "headline"),
    }


def test_what_the_front_says_beyond_the_tables_waits_for_a_person():
    """Nothing of a promise that a table breaks is accepted."""
    assert {one.status.value for one in read("headline_disagrees").readings if one.cond.where == "headline"} == {"review"}


@pytest.mark.parametrize("family", ["single_value", "min_typ_max", "unruled", "half_ruled"])
def test_an_ordinary_sheet_has_no_flags(family):
    """A flag that is always up is none."""
    assert read(family).flags == ()
