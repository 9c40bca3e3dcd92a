"""`switchbank read --explain KEY`: how a value was read, as text for people."""

from pathlib import Path

import pytest

SHEET = Path(__file__).resolve().parents[2] / "fixtures" / "datasheets" / "headline_disagrees" / "BWP085N10.pdf"


@pytest.mark.parametrize("name", ["rds_on", "RDS(on)", "on-resistance", "On resistance"])
def test_a_parameter_is_asked_for_by_key_symbol_or_words(run, name):
    """A person types what stands on the sheet."""
    shown = run("read", SHEET, "--explain", name)

    assert shown.code == 0
    assert shown.out.startswith("BWP085N10.pdf: on-resistance (rds_on)")


def test_the_stages_the_evidence_and_the_reason_of_the_status_are_shown(run):
    """The value that the table prints, and the one that the front promises."""
    table, front = (
        block for block in run("read", SHEET, "--explain", "rds_on").out.split("\n\n") if "8.5 mΩ, vgs" in block or "7.5 mΩ, vgs" in block
    )

    assert "Row                 named on its own line" in table
    assert "+ two readers see the same characters" in table
    assert "! the front of the sheet and its tables do not agree" in table
    assert "It may be used unseen." in table
    assert "- the column is not certain" in front
    assert "A person has to look first." in front
    assert "the table says 8.5 mΩ" in front


def test_a_parameter_that_the_sheet_does_not_give_is_told(run):
    """No silence."""
    shown = run("read", SHEET, "--explain", "rth_jl")

    assert (shown.code, "No such value was read." in shown.out) == (0, True)


def test_a_file_that_is_refused_says_why(run, tmp_path):
    """There is nothing to explain but the refusal."""
    (tmp_path / "notes.pdf").write_bytes(b"no pdf at all")
    shown = run("read", tmp_path / "notes.pdf", "--explain", "rds_on")

    assert (shown.code, "refused (not a pdf)" in shown.out) == (3, True)


def test_an_unknown_parameter_is_wrong_use_and_names_the_nearest(run):
    """A slip costs one more line."""
    shown = run("read", SHEET, "--explain", "rds_onn")

    assert (shown.code, "did you mean rds_on?" in " ".join(shown.err.split())) == (2, True)


def test_text_and_json_are_not_asked_for_together(run):
    """One is for people, the other for programs."""
    assert run("read", SHEET, "--explain", "rds_on", "--json").code == 2
