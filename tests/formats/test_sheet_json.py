"""A sheet leaves as switchbank.sheet/1 says, the same bytes each time, and comes back whole."""

import json
from dataclasses import replace

import pytest
from jsonschema import ValidationError

from service.facts.reading import Conditions, Limit, Reading, Refused, Sheet, Status, Unaccounted
from service.formats.json_text import json_bytes
from service.formats.sheet import sheet_from, sheet_json

READING = Reading(
    id="r-1",
    key="rds_on",
    limit=Limit.MAX,
    value=4.0,
    unit="mohm",
    printed="4.0",
    si=0.004,
    cond=Conditions(vgs=10.0, id=50.0, tj=25.0),
    status=Status.ACCEPTED,
    evidence=("second_reader", "row", "column", "unit", "condition"),
    why="two readers, row, column, unit and condition agree",
    page=2,
    bbox=(401.0, 302.5, 420.0, 312.0),
    row_bbox=(40.0, 300.0, 560.0, 314.0),
    quote="RDS(on) VGS = 10 V, ID = 50 A 3.3 4.0 mΩ",
)
SHEET = Sheet(
    reader_version="1",
    file="ab75n40.pdf",
    sha256="ab" * 32,
    part="AB75N40",
    also=("AB75N40S",),
    manufacturer="Northlake Devices",
    polarity="N",
    package="TO-263",
    revision="Rev. 2",
    pages=8,
    text_layer="good",
    readings=(READING,),
    unaccounted=(Unaccounted(page=2, bbox=(40.0, 320.0, 560.0, 330.0), quote="Gate resistance 1.2 Ω"),),
    flags=("preliminary",),
    isolation={"seccomp": "on"},
)
REFUSED = Sheet(
    reader_version="1",
    file="note.pdf",
    sha256="cd" * 32,
    refused=Refused(kind="not_a_datasheet", seems_to_be="application_note", detail="Speaks about parts, rates none."),
)


@pytest.mark.parametrize("sheet", [SHEET, REFUSED], ids=["read", "refused"])
def test_a_sheet_keeps_to_its_published_schema(sheet, validator):
    """What is promised is what leaves."""
    validator("sheet").validate(json.loads(json_bytes(sheet_json(sheet))))


def test_the_fields_are_those_of_the_contract_in_its_order():
    """Scripts that were written from the contract find every field."""
    head = "schema reader_version file sha256 part also manufacturer polarity package revision pages text_layer"
    reading = "id key limit value unit printed si cond status evidence why flags page bbox row_bbox quote"

    assert " ".join(sheet_json(SHEET)) == f"{head} readings curves unaccounted flags refused"
    assert " ".join(sheet_json(SHEET)["readings"][0]) == reading


def test_conditions_hold_only_what_is_printed():
    """What a sheet does not say is absent, not null; the diode current goes by its own name."""
    written = sheet_json(SHEET)["readings"][0]["cond"]
    diode = Conditions(is_=20.0, limited_by="silicon", sign="+-")

    assert written == {"vgs": 10.0, "id": 50.0, "tj": 25.0}
    assert sheet_json(_with(diode))["readings"][0]["cond"] == {"is": 20.0, "limited_by": "silicon", "sign": "+-"}


def test_how_the_reading_was_jailed_stays_at_home():
    """The same file gives the same bytes on a machine that can lock its children in less well."""
    assert b"seccomp" not in json_bytes(sheet_json(SHEET))


@pytest.mark.parametrize("sheet", [SHEET, REFUSED], ids=["read", "refused"])
def test_a_sheet_comes_back_as_it_left(sheet):
    """Nothing is lost or rounded on the way through JSON but the state of the jail."""
    back = sheet_from(json.loads(json_bytes(sheet_json(sheet))))

    assert json_bytes(sheet_json(back)) == json_bytes(sheet_json(sheet))
    assert back.readings == sheet.readings


@pytest.mark.parametrize(
    ("field", "value"),
    [("status", "sure"), ("key", "rdson"), ("unit", "mΩ"), ("limit", "maximum"), ("page", 0), ("bbox", [1, 2, 3]), ("evidence", ["hunch"])],
)
def test_the_schema_refuses_what_the_contract_does_not_know(field, value, validator):
    """The closed lists are closed."""
    written = json.loads(json_bytes(sheet_json(SHEET)))
    written["readings"][0][field] = value

    with pytest.raises(ValidationError):
        validator("sheet").validate(written)


def _with(cond: Conditions) -> Sheet:
    """The sheet with another condition."""
    return replace(SHEET, readings=(replace(READING, cond=cond),))
