"""A document that is no switch's datasheet is refused with what it seems to be; no switch's datasheet is."""

import contextlib
import csv
import time
from pathlib import Path

import pytest

from parsers.errors import DatasheetError, NotADatasheetError, OtherComponentError
from parsers.stages.kind import kind_of, kind_of_text
from parsers.stages.open_document import open_document
from parsers.types import Document, TextLayer

SHEETS = Path(__file__).resolve().parents[3] / "fixtures" / "datasheets"
DRAWN = sorted(path for path in SHEETS.glob("*/*.pdf") if path.parent.name not in {"broken", "strangers"})
RELAY = ["Power relay, 12 A\nCoil voltage 12 V, coil resistance 360 ohm, contact resistance 0.1 ohm, insulation resistance high, crimp terminals"]
ASIDE = ["A note to the packer: two boxes are missing, send the blue ones on Tuesday, and mind the rain on the way to the harbour."]


def seen_as(path: Path) -> str | None:
    """What a document is taken for."""
    try:
        return kind_of(open_document(path.read_bytes()))
    except DatasheetError as refusal:
        return refusal.seems_to_be


@pytest.mark.parametrize("path", DRAWN, ids=lambda path: path.stem)
def test_a_switch_is_never_refused(path: Path):
    """Each drawn sheet with text is known for what it is; a picture of one is left open."""
    assert seen_as(path) == (None if path.parent.name == "image_only" else "mosfet")


def test_a_note_about_switches_is_no_sheet_of_one():
    """Talk of on-resistance makes no datasheet."""
    with pytest.raises(NotADatasheetError, match="application note") as refusal:
        kind_of(open_document((SHEETS / "strangers" / "application_note.pdf").read_bytes()))

    assert (refusal.value.kind, refusal.value.seems_to_be) == ("not_a_datasheet", "application_note")


def test_a_diode_is_another_component():
    """Its own tables give it away."""
    with pytest.raises(OtherComponentError, match="diode") as refusal:
        kind_of(open_document((SHEETS / "strangers" / "diode.pdf").read_bytes()))

    assert (refusal.value.kind, refusal.value.seems_to_be) == ("other_component", "diode_tvs")


def test_a_part_without_a_word_of_its_own_is_some_other_component():
    """A relay is neither a switch of ours nor on the list by name."""
    with pytest.raises(OtherComponentError) as refusal:
        kind_of_text(RELAY)

    assert refusal.value.seems_to_be == "other"


def test_a_long_text_that_speaks_of_no_part_is_no_datasheet():
    """What it is instead nobody can say, and nobody does."""
    words = "blue boxes twelve, red boxes three, rope two rolls, lamp oil nine tins; "
    stores = Document(data=b"", sha256="", pages=1, page_text=(words * 40,), chosen=(), text_layer=TextLayer.GOOD)

    with pytest.raises(NotADatasheetError, match="neither"):
        kind_of(stores)


def test_a_long_text_that_cannot_be_trusted_is_left_open():
    """Letters that are not what they seem may hide a datasheet."""
    coded = Document(data=b"", sha256="", pages=1, page_text=("/G65 /G12 " * 200,), chosen=(), text_layer=TextLayer.GARBLED)

    assert kind_of(coded) is None


@pytest.mark.parametrize("pages", [[""], ["BWB029N08"], ASIDE], ids=["blank", "a number alone", "an aside"])
def test_too_little_said_is_left_open(pages: list[str]):
    """Where nothing speaks for any kind, nobody guesses."""
    assert kind_of_text(pages) is None


@pytest.mark.corpus
def test_real_documents_are_told_apart(shared: Path):
    """Against hand-sorted real documents: nine of ten strangers with text are named rightly, and no switch is turned away."""
    rows = list(csv.DictReader((shared / "corpus" / "manifest.tsv").read_text(encoding="utf-8").splitlines(), delimiter="\t"))
    seen = {(row["seems_to_be"], row["file"]): seen_as(shared / "corpus" / row["folder"] / row["file"]) for row in rows}
    strangers = {name: got for name, got in seen.items() if name[0] != "mosfet"}

    assert [name for name, got in seen.items() if name[0] == "mosfet" and got not in {"mosfet", None}] == []
    assert [name for name, got in strangers.items() if got == "mosfet"] == []
    assert sum(name[0] == got for name, got in strangers.items()) >= 0.9 * len(strangers)


@pytest.mark.parametrize("letters", ["A ", "A", "gnd ", "tr1 ", "u1 q", "- ", "drain-source "], ids=repr)
def test_a_page_of_one_word_over_and_over_costs_no_time(letters: str):
    """Nobody can hold the reader up with a page that was written to do so."""
    begin = time.process_time()
    with contextlib.suppress(DatasheetError):
        kind_of_text([letters * 500_000])

    assert time.process_time() - begin < 5
