"""Every datasheet that we draw reads as its generator was told to draw it."""

import json
from pathlib import Path

import pytest

from parsers.pipeline import read_datasheet

FIXTURES = Path(__file__).resolve().parents[3] / "fixtures"
EXPECTED = sorted(path for path in (FIXTURES / "readings").rglob("*") if path.is_file())
PICTURES = {"image_only"}


def expected(path):
    """Head and values of a file of expected readings."""
    head, *values = [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines() if line.strip()]
    return head, [value for value in values if value["cond"].get("where") != "headline"]


def agrees(reading, value):
    """Whether a reading says what was drawn, with every condition that was drawn."""
    said = {name: getattr(reading.cond, "is_" if name == "is" else name) for name in value["cond"]}
    return (
        (reading.key, reading.limit, reading.page, reading.unit) == (value["key"], value["limit"], value["page"], value["unit"])
        and abs(reading.value) == pytest.approx(abs(value["value"]))
        and (reading.value == pytest.approx(value["value"]) or "sign" in value["cond"])
        and all(same(said[name], wanted) for name, wanted in value["cond"].items() if name != "note")
    )


def same(one, other):
    """Numbers within a thousandth, words to the letter."""
    return one == pytest.approx(other, rel=1e-3) if isinstance(other, float | int) else one == other


@pytest.fixture(scope="module", params=[path for path in EXPECTED if path.parent.name not in PICTURES], ids=lambda path: path.parent.name)
def sheet(request):
    """One drawn sheet as read, and what was drawn."""
    head, values = expected(request.param)
    file = FIXTURES / "datasheets" / request.param.parent.name / head["file"]
    return read_datasheet(file.read_bytes(), file.name), values


def test_every_value_that_was_drawn_is_read(sheet):
    """Nothing is lost, in any layout family."""
    read, values = sheet

    assert [value for value in values if not any(agrees(reading, value) for reading in read.readings)] == []


def test_nothing_is_accepted_that_was_not_drawn(sheet):
    """A wrong value that nobody would look at is the worst that can happen."""
    read, values = sheet
    accepted = [reading for reading in read.readings if reading.status == "accepted" and reading.cond.where != "headline"]

    assert [reading for reading in accepted if not any(agrees(reading, value) for value in values)] == []


def test_nearly_all_of_what_was_drawn_is_accepted(sheet):
    """A reading that a person must repeat is half a reading."""
    read, values = sheet
    accepted = [reading for reading in read.readings if reading.status == "accepted"]
    found = [value for value in values if any(agrees(reading, value) for reading in accepted)]

    assert len(found) >= 0.95 * len(values)


def test_every_row_of_a_drawn_sheet_is_accounted_for(sheet):
    """Silence is the only error that nobody finds."""
    read, _ = sheet

    assert read.unaccounted == ()
