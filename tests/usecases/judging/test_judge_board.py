"""A board is judged with the parts that are kept; the result says what of them waits for a person, and knows what it was made from."""

import json

import pytest

from datastore.memory import MemoryStore
from parsers import marking
from service.facts.change import Change
from service.facts.kept_reading import Standing
from service.facts.reading import Reading, Refused, Sheet, Status
from service.facts.result import InputKind
from service.formats.board import read_board
from service.formats.json_text import json_bytes
from service.formats.report import report_json
from service.usecases.judge_board import judge_board, keep_result
from service.usecases.keep_sheet import keep_sheet, take_in
from service.usecases.refusals import CannotJudgeError
from service.usecases.review_reading import confirm, correct
from service.usecases.type_part import type_part

SAID = Change(by="R. Vell", at="2026-11-02T10:00:00+00:00", why="looked at the page")


@pytest.fixture
def store() -> MemoryStore:
    """An empty store."""
    return MemoryStore()


@pytest.fixture
def sheet(store: MemoryStore, reading) -> Sheet:
    """A kept sheet of an invented part, as a reader would give it; one value waits for review."""
    readings = (
        reading("vds_max", 80.0, "V"),
        reading("tj_max", 175.0, "degC"),
        reading("rds_on", 0.005, "ohm", vgs=10.0),
        reading("rth_jc", 0.75, "K/W"),
        reading("vgs_max", 20.0, "V", status=Status.REVIEW),
    )
    return kept(store, readings, part="AB80N50")


def kept(store: MemoryStore, readings: tuple[Reading, ...], *, part: str, refused: Refused | None = None) -> Sheet:
    """Keep a sheet as the use cases do."""
    document = take_in(f"{part}.pdf", part.encode(), store=store, change=SAID).document
    sheet = Sheet(
        reader_version="1",
        file=document.name,
        sha256=document.sha256,
        part=part,
        polarity="N",
        pages=8,
        text_layer="good",
        readings=readings,
        refused=refused,
    )
    keep_sheet(sheet, store=store, markings=marking, change=SAID)
    return sheet


def board(part: str):
    """Six of a part per bank, eight cells, 80 A."""
    return read_board({"claim": {"continuous": "80 A"}, "cells": {"in_series": 8}, "discharge_bank": {"part": part, "switches": 6}})


@pytest.mark.usefixtures("sheet")
@pytest.mark.parametrize("name", ["AB80N50", "ab-80 n50"])
def test_a_kept_part_is_judged_under_any_spelling_of_its_name(store, name):
    """The contract's board with its part read from a sheet: 59.48 K/W decides, as worked there."""
    report = judge_board(board(name), store=store).report
    current = next(finding for finding in report.findings if finding.check == "continuous_current")

    assert current.condition.value == 59.48


def test_one_very_sheet_may_be_named(store, sheet):
    """A part with several sheets is judged by the one that the board names."""
    report = judge_board(board(f"sha256:{sheet.sha256}"), store=store).report

    assert report.board.discharge_bank.switch.marking == "AB80N50"
    assert report_json(report)["board"]["discharge_bank"]["part"] == f"sha256:{sheet.sha256}"


@pytest.mark.usefixtures("sheet")
def test_only_what_the_findings_used_waits_for_a_person(store):
    """A result is provisional until the readings behind it are settled, and no longer."""
    waiting = judge_board(board("AB80N50"), store=store).report.provisional

    assert waiting.value
    assert set(waiting.look_at) == {"vds_max-max-80.0", "tj_max-max-175.0", "rds_on-max-0.005-10.0", "rth_jc-max-0.75"}


@pytest.mark.usefixtures("sheet")
def test_a_result_is_final_once_all_that_it_uses_is_confirmed(store):
    """Four values, four looks; what waits for review elsewhere on the sheet does not matter."""
    for reading_id in judge_board(board("AB80N50"), store=store).report.provisional.look_at:
        confirm(reading_id, version=1, store=store, change=SAID)
    report = judge_board(board("AB80N50"), store=store).report

    assert (report.provisional.value, report.provisional.look_at) == (False, ())


@pytest.mark.usefixtures("sheet")
def test_a_result_is_out_of_date_once_a_reading_that_it_used_is_corrected(store):
    """The frozen report stays as it was; why it no longer speaks for today is said."""
    judgement = judge_board(board("AB80N50"), store=store)
    result = keep_result(judgement, title="dinghy", board=None, store=store, change=SAID)
    correct("rds_on-max-0.005-10.0", written="6 mohm", version=1, store=store, change=SAID)

    with store.looking() as shelf:
        later = shelf.results.find(result.id)
    assert later.report == result.report
    assert json.loads(later.report)["findings"] == json.loads(json_bytes(report_json(judgement.report)))["findings"]
    assert [(reason.kind, reason.id) for reason in later.out_of_date] == [(InputKind.READING, "rds_on-max-0.005-10.0")]


@pytest.mark.usefixtures("sheet")
def test_the_same_judgement_is_one_result(store):
    """Judging twice without a change keeps one result; a changed input makes another."""
    first = keep_result(judge_board(board("AB80N50"), store=store), title="dinghy", board=None, store=store, change=SAID)
    again = keep_result(judge_board(board("AB80N50"), store=store), title="dinghy", board=None, store=store, change=SAID)
    correct("rds_on-max-0.005-10.0", written="6 mohm", version=1, store=store, change=SAID)
    changed = keep_result(judge_board(board("AB80N50"), store=store), title="dinghy", board=None, store=store, change=SAID)

    assert first.id == again.id != changed.id
    assert json.loads(first.report)["board"] == json.loads(changed.report)["board"]


def test_a_part_typed_into_the_store_keeps_a_result_provisional(store):
    """A part without a sheet can be judged, and says for good that no sheet stands behind it."""
    typed = read_board(
        {
            "claim": {"continuous": "80 A"},
            "cells": {"in_series": 8},
            "discharge_bank": {"part": "typed:AB80N50", "switches": 6},
            "typed": {
                "AB80N50": {
                    "vds_max": {"max": "80 V"},
                    "tj_max": {"max": "175 °C"},
                    "rds_on": {"max": "5 mohm", "vgs": "10 V"},
                    "rth_jc": {"max": "0.75 K/W"},
                },
            },
        },
    ).discharge_bank.switch
    type_part(typed, store=store, markings=marking, change=SAID)
    judgement = judge_board(board("AB80N50"), store=store)

    assert judgement.report.provisional.value
    assert [(one.kind, one.id, one.version) for one in judgement.inputs] == [(InputKind.TYPED_PART, "AB80N50", 1)]


def test_an_unknown_part_cannot_be_judged(store):
    """The way on is said."""
    with pytest.raises(CannotJudgeError, match="No kept part goes by 'AB99'"):
        judge_board(board("AB99"), store=store)


def test_a_sheet_without_a_usable_reading_cannot_be_judged(store, reading):
    """What waits for review is named as what to do."""
    kept(store, (reading("vds_max", 80.0, "V", status=Status.REVIEW),), part="AB81N50")

    with pytest.raises(CannotJudgeError, match="confirm or correct its values first"):
        judge_board(board("AB81N50"), store=store)


def test_a_refused_sheet_cannot_be_judged(store):
    """Its own reason is repeated."""
    refused = Refused(kind="no_text", seems_to_be=None, detail="Pages are pictures.")
    sheet = kept(store, (), part="AB82N50", refused=refused)

    with pytest.raises(CannotJudgeError, match="Pages are pictures"):
        judge_board(board(f"sha256:{sheet.sha256}"), store=store)


def test_a_sheet_that_is_not_kept_cannot_be_judged(store):
    """A hash alone is no sheet."""
    with pytest.raises(CannotJudgeError, match="is kept and read"):
        judge_board(board(f"sha256:{'0' * 64}"), store=store)


def test_every_reading_behind_a_finding_may_be_used(store, sheet):
    """No value that waits for review stands behind any figure of the report."""
    report = judge_board(board("AB80N50"), store=store).report
    with store.looking() as shelf:
        standing = {entry.id: entry.standing for entry in shelf.readings.of_sheet(sheet.sha256)}
    used = {one.sourced.source.reading for finding in report.findings for one in finding.inputs if one.sourced.source}

    assert used
    assert all(standing[reading_id] is not Standing.REVIEW for reading_id in used)
