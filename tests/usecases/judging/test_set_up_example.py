"""The example is set up by the program's own reading and judging, once."""

import json
import tomllib
from collections.abc import Callable
from dataclasses import replace
from hashlib import sha256
from pathlib import Path

import pytest

from datastore.memory import MemoryStore
from parsers import marking
from service.facts.change import Change
from service.facts.reading import Sheet
from service.usecases.set_up_example import Example, set_up_example

SAID = Change(by="R. Vell", at="2026-11-02T10:00:00+00:00", why="the invented example")
PACKS = Path(__file__).resolve().parents[3] / "fixtures" / "packs"
HOLDS, HOLDS_IF, FAILS = ("AB80N50", 1.0), ("AB80N51", 5.0), ("AB20N50", 1.0)


class FigureReader:
    """Takes a file's contents for a part number, its voltage rating and its on-resistance."""

    version = "1"

    def __init__(self, reading: Callable) -> None:
        self._reading, self.asked = reading, 0

    def read(self, name: str, data: bytes) -> Sheet:
        """Read one file."""
        self.asked += 1
        part, milliohm = json.loads(data)
        readings = (
            self._reading("vds_max", float(part[2:4]), "V"),
            self._reading("tj_max", 175.0, "degC"),
            self._reading("rds_on", milliohm / 1000, "ohm", vgs=10.0),
            self._reading("rth_jc", 0.75, "K/W"),
        )
        own = tuple(replace(one, id=f"{part} {one.id}") for one in readings)
        return Sheet(reader_version="1", file=name, sha256=sha256(data).hexdigest(), part=part, text_layer="good", readings=own)


@pytest.fixture
def example() -> Example:
    """Three parts, and four boards of which nobody knows the last one's part."""
    parts = (HOLDS, HOLDS_IF, FAILS)
    boards = (*(part for part, _ in parts), "AB8?N50")
    return Example(
        sheets=tuple((f"{part[0]}.pdf", json.dumps(part).encode()) for part in parts),
        boards=tuple(
            (
                f"pack with {part}",
                {"claim": {"continuous": "80 A"}, "cells": {"in_series": 8}, "discharge_bank": {"part": part, "switches": 6}},
            )
            for part in boards
        ),
    )


def test_what_the_example_shows_was_read_and_judged_here(example, reading):
    """Boards that hold, hold if, fail and cannot be judged; the last one's part waits for a sheet."""
    store = MemoryStore()
    set_up_example(example, store=store, reader=FigureReader(reading), markings=marking, change=SAID, told=lambda _step: None)

    with store.looking() as shelf:
        worst = {result.title: _outcomes(json.loads(result.report)) for result in shelf.results.listed()}
        assert "fails" not in worst["pack with AB80N50"]
        assert "holds if" not in worst["pack with AB80N50"]
        assert "holds if" in worst["pack with AB80N51"]
        assert "fails" in worst["pack with AB20N50"]
        assert [wanted.marking for wanted in shelf.wanted.listed()] == ["AB8?N50"]
        assert len(shelf.boards.listed()) == 4


def test_setting_up_twice_changes_nothing(example, reading):
    """A demo that is started again shows what it showed before."""
    store, reader, steps = MemoryStore(), FigureReader(reading), []
    for _ in range(2):
        set_up_example(example, store=store, reader=reader, markings=marking, change=SAID, told=steps.append)

    assert (reader.asked, len(steps)) == (3, 7)
    with store.looking() as shelf:
        assert (len(shelf.results.listed()), len(shelf.boards.listed())) == (3, 4)


def test_every_file_that_the_scenario_names_is_there():
    """The example can be set up from a checkout."""
    scenario = tomllib.loads((PACKS / "scenario.toml").read_text(encoding="utf-8"))
    named = [*scenario["sheets"], *(board["file"] for board in scenario["boards"])]

    assert named
    assert all((PACKS.parent / name).is_file() for name in named)


def _outcomes(report: dict) -> set[str]:
    """The outcomes of the current and voltage checks."""
    return {finding["outcome"] for finding in report["findings"] if finding["check"] in {"drain_source_voltage", "continuous_current"}}
