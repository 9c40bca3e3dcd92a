"""Records as text in a column, and back."""

import json
from dataclasses import dataclass, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from datastore.plain import from_text, to_text
from service.facts.reading import Conditions, Limit, Reading, Sheet, Status, Unaccounted
from service.facts.switch import Switch

NUMBERS = st.floats(allow_nan=False, allow_infinity=False)
BOXES = st.tuples(NUMBERS, NUMBERS, NUMBERS, NUMBERS)
CONDITIONS = st.builds(Conditions, vgs=st.none() | NUMBERS, t=st.none() | st.text(), ch=st.none() | st.text())
READINGS = st.builds(Reading, value=NUMBERS, si=NUMBERS, cond=CONDITIONS, bbox=BOXES, row_bbox=BOXES, flags=st.lists(st.text()).map(tuple))
SHEETS = st.builds(
    Sheet,
    readings=st.lists(READINGS, max_size=3).map(tuple),
    unaccounted=st.lists(st.builds(Unaccounted, bbox=BOXES), max_size=2).map(tuple),
    isolation=st.dictionaries(st.text(), st.text(), max_size=3),
)


@given(SHEETS)
def test_every_sheet_comes_back_as_it_went_in(sheet: Sheet) -> None:
    """To the last digit and the last odd character."""
    assert from_text(Sheet, to_text(sheet)) == sheet


def test_words_come_back_as_their_kinds(reading: Reading) -> None:
    """A limit is a limit, not merely a text that looks like one."""
    back = from_text(Reading, to_text(reading))

    assert (type(back.limit), type(back.status), type(back.cond)) == (Limit, Status, Conditions)


@pytest.mark.parametrize("number", [float("nan"), float("inf"), float("-inf")])
def test_a_number_that_is_not_finite_is_never_kept(reading: Reading, number: float) -> None:
    """JSON knows none, and no printed value is one."""
    with pytest.raises(ValueError, match="not JSON compliant"):
        to_text(replace(reading, si=number))


def test_a_field_that_came_later_takes_its_default() -> None:
    """What an earlier version wrote can be read for ever."""
    assert from_text(Switch, '{"marking": "AB75N40"}') == Switch(marking="AB75N40")


def test_a_field_that_went_is_left_aside() -> None:
    """And so can what a later version wrote, as far as it goes."""
    assert from_text(Switch, '{"marking": "AB75N40", "colour": "black"}') == Switch(marking="AB75N40")


def test_the_text_is_plain_json(reading: Reading) -> None:
    """Any other program can read it."""
    text = json.loads(to_text(reading))

    assert (text["key"], text["cond"]["vgs"], text["bbox"]) == ("rds_on", 10.0, [300.0, 200.0, 320.0, 210.0])


def test_only_records_are_kept() -> None:
    """A bare text has no class to come back as."""

    @dataclass(frozen=True)
    class Nothing:
        """A record without fields."""

    assert to_text(Nothing()) == "{}"
    with pytest.raises(TypeError):
        to_text("text")
