"""`switchbank lookup`: the parts that a marking may stand for, with the reason; and the ways on where there are none."""

import json

import pytest

from parsers import marking
from service.facts.change import Change
from service.facts.reading import Limit
from service.facts.sourced import Known, Sourced
from service.facts.switch import RatedValue, Switch
from service.usecases.type_part import type_part
from service.wiring import ground


@pytest.fixture
def drawer(tmp_path):
    """A data folder that knows one typed part."""
    value = RatedValue(key="vds_max", limit=Limit.MAX, sourced=Sourced(value=75.0, unit="V", known=Known.TYPED))
    store = ground.open_store(tmp_path / "data")
    type_part(
        Switch(marking="AB75N40", values=(value,), typed=True),
        store=store,
        markings=marking,
        change=Change(by="R. Vell", at="2026-11-02T10:00:00+00:00", why="no sheet to be had"),
    )
    store.close()
    return tmp_path / "data"


@pytest.mark.usefixtures("drawer")
@pytest.mark.parametrize("seen", ["AB75N40", "ab-75n40", "AB7?N40", "A875N4O"])
def test_a_marking_finds_its_part_with_the_reason(run, seen):
    """Spelled in any way, with a character in doubt, or with confused ones."""
    shown = run("lookup", seen, "--json")

    assert shown.code == 0
    found = json.loads(shown.out)
    assert (found["part"], found["typed"], found["sheets"]) == ("AB75N40", True, [])
    assert found["reason"]


@pytest.mark.usefixtures("drawer")
def test_for_people_a_part_is_a_line(run):
    """Which part, why, and what is known of it."""
    assert run("lookup", "AB75N40").out.startswith("AB75N40  ")
    assert "typed, no sheet" in run("lookup", "AB75N40").out


def test_where_nothing_comes_near_the_ways_on_are_named(run):
    """Code 1; take the sheet in, type the part, or search for it; nothing is sent and no folder is made."""
    ended = run("lookup", "ZZ9?")

    assert ended.code == 1
    assert "switchbank read --keep FILE" in ended.out
    assert "[typed.NAME]" in ended.out
    assert "ZZ9*" in ended.out
