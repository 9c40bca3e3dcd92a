"""One value explained: its stages in order, its evidence, its status; the same words wherever they are shown."""

from dataclasses import replace
from pathlib import Path

import pytest

from parsers.pipeline import read_datasheet
from service.facts.reading import Conditions, Limit, Reading, Status
from service.usecases.explain_reading import NEEDED, STAGES, evidence_words, explain_reading, flag_words

FIXTURES = Path(__file__).resolve().parents[3] / "fixtures" / "datasheets"
READING = Reading(
    id="r-1",
    key="rds_on",
    limit=Limit.MAX,
    value=4.0,
    unit="mohm",
    printed="4.0",
    si=0.004,
    cond=Conditions(vgs=10.0),
    status=Status.REVIEW,
    evidence=("second_reader", "row", "unit", "headline"),
    why="It is not certain which column it belongs to.",
    flags=("contradicts:headline",),
    page=2,
    bbox=(401.0, 302.5, 420.0, 312.0),
    row_bbox=(40.0, 300.0, 560.0, 314.0),
    quote="RDS(on) VGS = 10 V 4.0 mΩ",
    trace=("characters: the second reader sees the same", "layout: min, typ, max", "row: named on its own line", "something else"),
)


def test_the_stages_are_told_in_the_order_in_which_they_work():
    """A note of no known stage stands last, as it is; the page and the row's words come first."""
    steps = explain_reading(READING).steps

    assert [step.stage for step in steps] == ["Page", "Table", "Row", "Characters", "Also"]
    assert steps[0].found == "page 2, in the words: RDS(on) VGS = 10 V 4.0 mΩ"
    assert steps[-1].found == "something else"


def test_every_kind_of_evidence_that_a_value_needs_is_told_there_or_missing():
    """What came on top stands below; nothing is left to be guessed."""
    grounds = explain_reading(READING).grounds

    assert [ground.given for ground in grounds] == [True, True, False, True, False, True]
    assert [ground.words for ground in grounds if not ground.given] == ["the column is not certain", "what it holds for was not read whole"]
    assert grounds[-1].words == "the front of the sheet says the same"


@pytest.mark.parametrize(("status", "begins"), [(Status.ACCEPTED, "It may be used unseen."), (Status.REVIEW, "A person has to look first.")])
def test_the_verdict_says_what_the_status_means_and_why(status, begins):
    """The reader's own reason is repeated to the letter."""
    verdict = explain_reading(replace(READING, status=status)).verdict

    assert verdict.startswith(begins)
    assert verdict.endswith(READING.why)


def test_what_is_odd_about_the_sheet_is_told_in_words():
    """No code stands alone, known or not."""
    assert explain_reading(READING).oddities == ("the front of the sheet and its tables do not agree",)
    assert flag_words("contradicts:order") == "its numbers contradict each other: order"
    assert evidence_words("identity:power") == "it fits the sheet's other numbers (power)"


def test_a_value_that_was_kept_without_notes_is_explained_as_far_as_it_goes():
    """Older stores have no notes of the stages."""
    said = explain_reading(replace(READING, trace=()))

    assert [step.stage for step in said.steps] == ["Page"]
    assert len(said.grounds) > len(NEEDED)


@pytest.fixture(scope="module")
def drawn():
    """Readings of a drawn sheet whose front and tables disagree."""
    file = FIXTURES / "headline_disagrees" / "BWP085N10.pdf"
    return read_datasheet(file.read_bytes(), file.name).readings


def test_every_note_of_a_drawn_sheet_belongs_to_a_stage(drawn):
    """What the reader notes, people can read under a name."""
    assert {line.partition(": ")[0] for reading in drawn for line in reading.trace} <= set(STAGES)
    assert "Also" not in {step.stage for reading in drawn for step in explain_reading(reading).steps}


def test_the_status_of_every_value_of_a_drawn_sheet_follows_from_its_evidence(drawn):
    """Accepted with all five kinds of evidence, waiting where one is missing."""
    whole = {reading.id: all(ground.given for ground in explain_reading(reading).grounds) for reading in drawn}

    assert {reading.id: reading.status is Status.ACCEPTED for reading in drawn} == whole
