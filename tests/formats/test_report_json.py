"""A report leaves as switchbank.report/1 says: every number with how it is known, and nothing that JSON cannot hold."""

import json
import math
from dataclasses import replace
from datetime import date

import pytest
from jsonschema import ValidationError

from service.facts.finding import (
    Assumption,
    BothEnds,
    Condition,
    Figure,
    Finding,
    Input,
    Inverse,
    Margin,
    Outcome,
    Provisional,
    Relation,
    Report,
)
from service.facts.source import Source
from service.facts.sourced import Attestation, Known, Sourced
from service.formats.board import read_board
from service.formats.json_text import json_bytes
from service.formats.report import report_json

INVERSES = ("continuous_a", "ambient_degc", "packs_in_series", "surge_s", "switches", "continuous_a_junction")
PRINTED = Sourced(
    value=0.004,
    unit="ohm",
    known=Known.PRINTED,
    source=Source(sha256="ab" * 32, page=2, bbox=(1.0, 2.0, 3.0, 4.0), quote="RDS(on) 4.0", reading="r-1"),
)
MEASURED = Sourced(
    value=47.0,
    unit="K/W",
    known=Known.MEASURED,
    attested=Attestation(by="R. Vell", on="2026-11-02", instrument="thermocouple"),
)
FINDING = Finding(
    check="continuous_current",
    bank="discharge",
    outcome=Outcome.HOLDS_IF,
    text="holds at 80 A if each switch sheds heat at 59 K/W or better",
    demand=Figure(quantity="current", value=80.0, unit="A"),
    limit=Figure(quantity="largest_current", value=79.0, unit="A"),
    margin=Margin(worst=0.99, favourable=math.inf),
    condition=Condition(quantity="junction_to_air", relation=Relation.AT_MOST, value=59.0, unit="K/W", text="at most 59 K/W"),
    conditions=(Condition(quantity="recloses_on_current", relation=Relation.IS, value=True, unit="", text="the protection closes again"),),
    inputs=(Input(name="rds_on", sourced=PRINTED), Input(name="junction_to_air", sourced=MEASURED)),
    assumptions=(Assumption(name="junction_to_air", used=60.0, low=40.0, high=60.0, unit="K/W", flips_at=59.0, basis="plain board"),),
    values={"junction_degc": BothEnds(favourable=90.0, worst=math.nan, unit="degC")},
)


@pytest.fixture
def report(every_key) -> Report:
    """A report with one finding that uses every field."""
    return Report(
        engine_version="1.0.0",
        rule_set="maker",
        board=read_board(every_key),
        findings=(FINDING,),
        limiting="continuous_current",
        provisional=Provisional(value=True, look_at=("r-1",)),
        inverse={name: Inverse(value=1.0, unit="A", check=None, by_rule_set={"maker": 1.0, "trade-80": None}) for name in INVERSES},
        cautions=("No certification.",),
    )


def test_a_report_keeps_to_its_published_schema(report, validator):
    """What is promised is what leaves, the board within it too."""
    written = json.loads(json_bytes(report_json(report)))

    validator("report").validate(written)
    validator("board").validate(written["board"])


def test_every_number_says_how_it_is_known_and_where_it_stands(report):
    """A printed value has its place, a measured one its person, day and instrument."""
    printed, measured = report_json(report)["findings"][0]["inputs"]

    assert printed == {
        "name": "rds_on",
        "value": 0.004,
        "unit": "ohm",
        "known": "printed",
        "source": {"sha256": "ab" * 32, "page": 2, "bbox": [1.0, 2.0, 3.0, 4.0], "quote": "RDS(on) 4.0", "reading": "r-1"},
    }
    assert (measured["source"], measured["by"], measured["on"], measured["with"]) == (None, "R. Vell", "2026-11-02", "thermocouple")


def test_a_condition_is_a_number_or_a_yes_or_no(report):
    """Both kinds leave as they are; yes is not one."""
    found = report_json(report)["findings"][0]

    assert (found["condition"]["relation"], found["condition"]["value"]) == ("<=", 59.0)
    assert (found["conditions"][0]["relation"], found["conditions"][0]["value"]) == ("is", True)


def test_what_is_no_number_leaves_as_null(report):
    """JSON has neither infinity nor not-a-number; a reader gets null for both."""
    found = report_json(report)["findings"][0]

    assert found["margin"] == {"worst": 0.99, "favourable": None}
    assert found["values"]["junction_degc"] == {"favourable": 90.0, "worst": None, "unit": "degC"}


def test_a_finding_without_a_limit_has_no_outcome(report):
    """Conduction loss is information, not an answer."""
    bare = replace(report, findings=(Finding(check="conduction_loss", bank="both", outcome=None, text="makes 9 W"),))

    assert report_json(bare)["findings"][0]["outcome"] is None


def test_the_schema_refuses_a_fifth_outcome(report, validator):
    """The four words for what was computed are all there are."""
    written = json.loads(json_bytes(report_json(report)))
    written["findings"][0]["outcome"] = "probably"

    with pytest.raises(ValidationError):
        validator("report").validate(written)


def test_a_date_of_toml_leaves_as_text():
    """A board file may write a day as TOML does; JSON has only text for it."""
    assert json_bytes({"on": date(2026, 11, 2)}) == b'{"on": "2026-11-02"}\n'
    with pytest.raises(TypeError):
        json_bytes({"on": object()})
