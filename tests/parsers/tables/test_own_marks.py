"""What a sheet says of itself becomes a flag; the values of a target specification wait for a person."""

import io
from pathlib import Path

import pikepdf
import pytest

from parsers.pipeline import read_datasheet
from parsers.stages.own_marks import marks_of

SHEET = Path(__file__).resolve().parents[3] / "fixtures" / "datasheets" / "single_value" / "BWB029N08.pdf"


@pytest.mark.parametrize(
    ("line", "marks"),
    [
        ("Preliminary datasheet", {"preliminary"}),
        ("TENTATIVE", {"preliminary"}),
        ("暂定规格书", {"preliminary"}),
        ("Target specification", {"preliminary", "target"}),
        ("ADVANCE INFORMATION", {"preliminary", "target"}),
        ("Obsolete Product(s) - Obsolete Product(s)", {"obsolete"}),
        ("NOT RECOMMENDED FOR NEW DESIGNS", {"obsolete"}),
        ("This product has been discontinued", {"obsolete"}),
        ("Product data sheet", set()),
    ],
)
def test_a_line_on_the_front_is_a_mark(line, marks):
    """In the words that sheets use."""
    assert marks_of(["AB75N40\n" + line, "Ratings"]) == marks


def test_a_list_of_what_marks_mean_is_none():
    """Many sheets end with one."""
    legal = "Product status definition\nPreliminary First production\nObsolete Not in production\nTarget data In design"

    assert marks_of(["AB75N40", "Ratings", "Graphs", legal]) == frozenset()


def test_a_sentence_about_marks_is_none():
    """A long line on the front speaks of something else."""
    assert marks_of(["This edition replaces the preliminary data sheet of 2011, whose values were measured on samples"]) == frozenset()


def test_a_footer_of_most_pages_is_a_mark():
    """The front may be a cover."""
    assert marks_of(["AB75N40", *["Preliminary datasheet 2 of 9"] * 8]) == {"preliminary"}


def stamped(line: str) -> bytes:
    """A drawn sheet with a line set above its front page."""
    with pikepdf.open(SHEET) as pdf:
        page = pdf.pages[0]
        font = pikepdf.Dictionary(Type=pikepdf.Name.Font, Subtype=pikepdf.Name.Type1, BaseFont=pikepdf.Name.Helvetica)
        page.add_resource(font, pikepdf.Name.Font, pikepdf.Name("/Mark"))
        page.contents_add(f"q BT /Mark 9 Tf 60 818 Td ({line}) Tj ET Q".encode())
        out = io.BytesIO()
        pdf.save(out, deterministic_id=True)
    return out.getvalue()


def test_a_preliminary_sheet_and_its_values_are_flagged_and_read():
    """The status says whether a value was read right, the flag that the sheet is odd."""
    sheet = read_datasheet(stamped("PRELIMINARY"), "any.pdf")

    assert sheet.flags == ("preliminary",)
    assert all(reading.flags == ("preliminary",) for reading in sheet.readings)
    assert "accepted" in {reading.status for reading in sheet.readings}


def test_the_values_of_a_target_specification_wait_for_a_person():
    """Nobody has measured them yet."""
    sheet = read_datasheet(stamped("TARGET SPECIFICATION - PRELIMINARY - subject to change"), "any.pdf")

    assert sheet.flags == ("preliminary",)
    assert {reading.status for reading in sheet.readings} == {"review"}
    assert all("target specification" in reading.why for reading in sheet.readings)


def test_a_part_that_is_no_longer_made_is_told_of_the_sheet_alone():
    """Its values are as good as they were."""
    sheet = read_datasheet(stamped("OBSOLETE"), "any.pdf")

    assert sheet.flags == ("obsolete",)
    assert {flag for reading in sheet.readings for flag in reading.flags} == set()
