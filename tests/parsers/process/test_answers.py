"""A child's answer is doubted: its shape, its numbers, its words and its places."""

import json
import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parsers.process import answers
from parsers.process.shape import MOST_TEXT, ShapeError, clean
from service.facts.reading import Conditions, Limit, Reading, Refused, Sheet, Status, Unaccounted

READING = Reading(
    id="r1",
    key="rds_on",
    limit=Limit.MAX,
    value=3.2,
    unit="mohm",
    printed="3.2",
    si=0.0032,
    cond=Conditions(vgs=10.0, id=50.0, tj=25.0, note="pulsed"),
    status=Status.ACCEPTED,
    evidence=("second_reader", "row"),
    why="both readers see the same",
    page=2,
    bbox=(300.0, 200.0, 312.5, 208.0),
    row_bbox=(50.0, 198.0, 550.0, 210.0),
    quote="RDS(on) VGS = 10 V 3.2 mΩ",
)
SHEET = Sheet(
    reader_version="1",
    file="a.pdf",
    sha256="0" * 64,
    part="ABC",
    also=("ABD",),
    polarity="N",
    pages=3,
    text_layer="good",
    readings=(READING, replace(READING, limit=Limit.TYP, cond=Conditions())),
    unaccounted=(Unaccounted(page=1, bbox=(0.0, 0.0, 1.0, 1.0), quote="?"),),
    flags=("preliminary",),
)


def altered(**reading: object) -> bytes:
    """The sheet's JSON with some of the first reading's fields replaced."""
    content = json.loads(answers.written(SHEET))
    content["readings"][0] |= reading
    return json.dumps(content).encode()


def test_a_sheet_comes_through_unchanged():
    """What the child read is what the parent gets."""
    assert answers.read_sheet(answers.written(SHEET), pages=3) == SHEET


def test_a_refusal_comes_through_unchanged():
    """Kind, what it seems to be, and the words."""
    refused = Refused(kind="not_a_datasheet", seems_to_be="article", detail="It tells a story.")

    assert answers.read_sheet(answers.refusal(refused), pages=3) == refused


@pytest.mark.parametrize(
    "reading",
    [
        {"page": 4},
        {"page": 0},
        {"page": 1.5},
        {"page": True},
        {"value": math.inf},
        {"value": math.nan},
        {"value": 1e300},
        {"value": "3.2"},
        {"value": None},
        {"bbox": [0, 0, 1]},
        {"bbox": [0, 0, 1, 1e9]},
        {"bbox": "0 0 1 1"},
        {"status": "confirmed"},
        {"limit": None},
        {"evidence": "row"},
        {"cond": {"vgs": "10 V"}},
        {"cond": {"__class__": "Sheet"}},
        {"unknown": 1},
        {"quote": ["a"]},
    ],
    ids=str,
)
def test_a_reading_of_another_shape_is_no_answer(reading):
    """Nothing is guessed, dropped or converted."""
    with pytest.raises(ShapeError):
        answers.read_sheet(altered(**reading), pages=3)


@pytest.mark.parametrize(
    "answer",
    [
        b"",
        b"null",
        b"[]",
        b"{}",
        b"{" * 100_000,
        b"[" * 100_000,
        b"\xff\xfe",
        b'{"pages": NaN}',
        b'{"refused": {"kind": "accepted", "seems_to_be": null, "detail": ""}}',
        b'{"refused": null}',
        b'{"pages": ' + b"9" * 5000 + b"}",
    ],
    ids=lambda answer: repr(answer[:30]),
)
def test_nonsense_is_no_answer(answer):
    """Whatever bytes come, the error is ours."""
    with pytest.raises(ShapeError):
        answers.read_sheet(answer, pages=3)
    with pytest.raises(ShapeError):
        answers.page_count(answer)


@given(
    st.recursive(
        st.none() | st.booleans() | st.floats() | st.text(max_size=5), lambda inner: st.lists(inner) | st.dictionaries(st.text(max_size=8), inner)
    )
)
def test_no_json_breaks_the_parent(content):
    """Any JSON gives a sheet, a refusal or our error."""
    try:
        answers.read_sheet(json.dumps(content).encode(), pages=3)
    except ShapeError:
        return


def test_a_sheet_with_a_number_that_is_not_finite_is_not_written():
    """The child itself fails first."""
    with pytest.raises(ValueError, match="JSON compliant"):
        answers.written(replace(SHEET, readings=(replace(READING, value=math.nan),)))


def test_text_loses_control_and_direction_characters():
    """U+202E would show a number backwards; a lone half of a character cannot be printed."""
    sheet = answers.read_sheet(altered(quote="VDS\t\u202e40\u202c V\x00\n\ud800"), pages=3)

    assert sheet.readings[0].quote == "VDS 40 V "


@given(st.text())
def test_clean_text_is_short_and_printable(text):
    """Whatever the text."""
    cleaned = clean(text * 50)

    assert len(cleaned) <= MOST_TEXT
    cleaned.encode("utf-8")
    assert not any(mark in cleaned for mark in "\u202e\u2066\x00\x1b\n")


def test_ordinary_text_is_left_alone():
    """Symbols, other scripts and hard spaces stay."""
    assert clean("R\u00a0DS(on) ≤ 3,2 mΩ µ 漏源电压 °C") == "R\u00a0DS(on) ≤ 3,2 mΩ µ 漏源电压 °C"
