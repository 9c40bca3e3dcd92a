"""Readings and their history on both shelves."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from service.facts.change import Change
from service.facts.document import Document
from service.facts.keeping_error import MovedOnError
from service.facts.kept_reading import KeptReading, Standing
from service.usecases.ports import Store

Entry = Callable[..., KeptReading]


@pytest.fixture(autouse=True)
def _document(store: Store, document: Document) -> None:
    """The file that the readings are of."""
    with store.changing() as shelf:
        shelf.documents.add(document)


def test_an_entry_comes_back_as_it_went_in(store: Store, entry: Entry) -> None:
    """Nothing is lost or rounded on the way to the shelf and back."""
    with store.changing() as shelf:
        shelf.readings.append(entry())

    with store.looking() as shelf:
        assert shelf.readings.find("r-1") == entry()
        assert shelf.readings.find("nobody") is None
        assert shelf.readings.history("nobody") == ()


def test_the_last_entry_stands_and_the_first_is_kept(store: Store, entry: Entry) -> None:
    """Nothing is overwritten: a correction lies on top."""
    ben = Change(by="Ben", at="2026-11-03T10:00:00Z", why="the crop says 2.6")
    corrected = entry(version=2, reading=replace(entry().reading, value=2.6, si=0.0026), standing=Standing.CORRECTED, change=ben, settled=ben)
    for each in (entry(), corrected):
        with store.changing() as shelf:
            shelf.readings.append(each)

    with store.looking() as shelf:
        assert shelf.readings.find("r-1") == corrected
        assert shelf.readings.history("r-1") == (entry(), corrected)


@pytest.mark.parametrize("version", [1, 3])
def test_an_entry_that_is_not_the_next_one_is_refused(store: Store, entry: Entry, version: int) -> None:
    """Who looked at an older version has to look again."""
    with store.changing() as shelf:
        shelf.readings.append(entry())

    with pytest.raises(MovedOnError, match="look at it again"), store.changing() as shelf:
        shelf.readings.append(entry(version=version))


def test_every_id_that_a_reader_gave_finds_the_place(store: Store, entry: Entry) -> None:
    """A newer reader names the place anew; old links go on working."""
    moved = replace(entry().reading, id="r-1-newer", bbox=(301.0, 200.0, 321.0, 210.0))
    with store.changing() as shelf:
        shelf.readings.append(entry())
        shelf.readings.append(entry(version=2, reading=moved, as_read=moved, reader_version="0.2"))

    with store.looking() as shelf:
        assert shelf.readings.find("r-1-newer") == shelf.readings.find("r-1")
        assert [each.version for each in shelf.readings.history("r-1-newer")] == [1, 2]


def test_readings_of_a_sheet_come_in_the_order_of_the_pages(store: Store, entry: Entry) -> None:
    """By page, then down it, then across."""
    places = {"d": (3, 10.0, 0.0), "c": (2, 50.0, 90.0), "b": (2, 50.0, 10.0), "a": (1, 700.0, 0.0)}
    with store.changing() as shelf:
        for name, (page, top, left) in places.items():
            reading = replace(entry().reading, id=name, page=page, bbox=(left, top, left + 9.0, top + 9.0))
            shelf.readings.append(entry(id=name, reading=reading, as_read=reading))

    with store.looking() as shelf:
        assert [each.id for each in shelf.readings.of_sheet(entry().sha256)] == ["a", "b", "c", "d"]
