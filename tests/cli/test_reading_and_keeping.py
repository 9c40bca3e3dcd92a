"""From a PDF to a verdict on the command line, with the real reader, engine and store, on sheets that we drew."""

import json
from importlib.resources import files
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

DRAWN = Path(__file__).resolve().parents[2] / "fixtures" / "datasheets"
SHEET = DRAWN / "package_footnote" / "TMT018N08.pdf"
NO_PDF = DRAWN / "broken" / "no_pdf.pdf"


@pytest.fixture(scope="module")
def sheet_schema() -> Draft202012Validator:
    """The published schema of a sheet."""
    return Draft202012Validator(json.loads(files("service.api").joinpath("schemas", "sheet.json").read_text(encoding="utf-8")))


def test_every_line_of_read_keeps_to_the_schema(run, sheet_schema):
    """What was read and what was refused, each on its line; code 1 says that something was refused."""
    shown = run("read", "--json", SHEET, NO_PDF)

    assert shown.code == 1
    lines = [json.loads(line) for line in shown.out.splitlines()]
    for line in lines:
        sheet_schema.validate(line)
    assert [line["refused"] and line["refused"]["kind"] for line in lines] == [None, "not_a_pdf"]
    assert lines[0]["readings"]


def test_the_number_of_workers_changes_no_byte(run):
    """Two at a time give what one after another gives, in the order of the files."""
    folder = [SHEET, NO_PDF, DRAWN / "min_typ_max"]

    assert run("read", "--json", "--workers", 1, *folder).out == run("read", "--json", "--workers", 2, *folder).out


def test_a_kept_sheet_is_judged_and_every_number_shows_its_place(run):
    """A PDF goes in, a verdict comes out, and what it used stands on a page of that very file."""
    sheet = json.loads(run("read", "--json", "--keep", SHEET).out)
    shown = run("judge", "--part", f"sha256:{sheet['sha256']}", "--per-bank", 6, "--cells", 8, "--amps", 80, "--json")

    assert shown.code == 0, shown.err
    report = json.loads(shown.out)
    printed = [one for finding in report["findings"] for one in finding["inputs"] if one["known"] == "printed"]
    readings = {reading["id"]: reading for reading in sheet["readings"]}
    assert {one["source"]["sha256"] for one in printed} == {sheet["sha256"]}
    assert all(readings[one["source"]["reading"]]["bbox"] == one["source"]["bbox"] for one in printed)
    assert set(report["provisional"]["look_at"]) <= set(readings)
    assert report["provisional"]["value"]


def test_for_people_a_provisional_verdict_names_what_to_look_at(run):
    """Which printed values, and on which page of the sheet."""
    sheet = json.loads(run("read", "--json", "--keep", SHEET).out)
    shown = run("judge", "--part", f"sha256:{sheet['sha256']}", "--per-bank", 6, "--cells", 8, "--amps", 80)

    assert "Provisional until a person has looked at the printed values behind it:" in shown.out
    assert "(page 1)" in " ".join(shown.out.split())


def test_keeping_twice_keeps_once(run, tmp_path):
    """The same contents under another name are the same file."""
    copy = tmp_path / "copy.pdf"
    copy.write_bytes(SHEET.read_bytes())
    first, again = run("read", "--json", "--keep", SHEET), run("read", "--json", "--keep", SHEET, copy)

    assert (first.code, again.code) == (0, 0)
    assert (
        len(list((tmp_path / "data" / "files").rglob("*"))) - len([path for path in (tmp_path / "data" / "files").rglob("*") if path.is_dir()]) == 1
    )


def test_reading_without_keeping_leaves_no_trace(run, tmp_path):
    """`read` keeps nothing."""
    run("read", "--json", SHEET)

    assert not (tmp_path / "data").exists()
