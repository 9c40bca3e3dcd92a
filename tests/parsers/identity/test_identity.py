"""A sheet says who it is about, whoever its maker is."""

import json
from pathlib import Path

import pytest

from parsers.stages.identity import Identity, identify
from parsers.stages.open_document import open_document
from parsers.stages.words import read_page
from parsers.types import TextLayer

FIXTURES = Path(__file__).resolve().parents[3] / "fixtures"
READINGS = [path for path in sorted((FIXTURES / "readings").glob("*/*.jsonl")) if path.parent.name != "image_only"]


def seen_in(pdf: Path) -> Identity:
    """What a sheet says of itself, its chosen pages read in full."""
    document = open_document(pdf.read_bytes())
    return identify(document, [read_page(document, number) for number in document.chosen])


@pytest.mark.parametrize("path", READINGS, ids=lambda path: path.stem)
def test_an_invented_maker_is_no_obstacle(path: Path):
    """Part, polarity, maker, case and edition of every drawn sheet come out as they were given to the generator."""
    about = json.loads(path.read_text(encoding="utf-8").splitlines()[0])
    seen = seen_in(FIXTURES / "datasheets" / path.parent.name / about["file"])

    assert {name: getattr(seen, name) for name in ("part", "polarity", "manufacturer", "package", "revision")} == {
        name: about[name] for name in ("part", "polarity", "manufacturer", "package", "revision")
    }
    assert set(about["also"]) <= set(seen.also)


def test_a_picture_says_nothing_of_itself():
    """Without words nothing is guessed."""
    assert seen_in(FIXTURES / "datasheets" / "image_only" / "OVE027N08.pdf") == Identity(
        part=None, also=(), manufacturer=None, polarity=None, package=None, revision=None
    )


def test_the_front_page_is_looked_at_even_when_nobody_chose_it():
    """The size of the letters tells the part number from the others."""
    document = open_document((FIXTURES / "datasheets" / "two_parts" / "BWK040N06.pdf").read_bytes())

    assert identify(document, []).part == "BWK040N06"


@pytest.mark.corpus
def test_real_sheets_are_known(shared: Path):
    """Against labels typed by eye: the main part number and the polarity of every sheet that has a text layer."""
    labels = [json.loads(line) for line in (shared / "corpus" / "labels.jsonl").read_text(encoding="utf-8").splitlines()]
    wrong = []
    for label in labels:
        document = open_document((shared / "corpus" / "pdf" / label["file"]).read_bytes())
        if document.text_layer is TextLayer.NONE or label["text_layer"] == "none":
            continue
        seen = identify(document, [])
        known = {bare(part) for part in [label["part"], *label["also"]]}
        if bare(seen.part) not in known or seen.polarity != label["polarity"]:
            wrong.append((label["file"], seen.part, seen.polarity))

    assert wrong == []


def bare(part: str | None) -> str:
    """A part number without dashes and without the ending that says lead-free."""
    letters = "".join(filter(str.isalnum, str(part).upper()))
    return letters.removesuffix("PBF").removesuffix("TR")
