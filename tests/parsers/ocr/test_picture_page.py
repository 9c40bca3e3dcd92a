"""A page that is a picture is looked at twice; without a reader for pictures the refusal says how to get one."""

import pytest
from pictures import pages_of_pictures, sheet_of_pictures, strip

from parsers.errors import NoTextError
from parsers.ocr import seen
from parsers.ocr.effort import FIRST_PX, SECOND_PX
from parsers.ocr.seen import Seen
from parsers.process import one_document, read_document
from parsers.stages.open_document import open_document
from parsers.stages.picture_text import read_picture_page, read_picture_pages

TABLE = [
    (150, 200, "Absolute Maximum Ratings"),
    (150, 280, "Symbol"),
    (400, 280, "Parameter"),
    (1000, 280, "Max."),
    (1200, 280, "Units"),
    (150, 340, "VDS"),
    (400, 340, "Drain-Source Voltage"),
    (1000, 340, "75"),
    (1200, 340, "V"),
    (150, 400, "VGS"),
    (400, 400, "Gate-Source Voltage"),
    (1000, 400, "20"),
    (1200, 400, "V"),
]
RULES = [(140, 270, 1400, 270), (140, 330, 1400, 330), (140, 460, 1400, 460)]


@pytest.fixture
def _no_reader(monkeypatch):
    """This process has no reader for pictures."""
    monkeypatch.setattr(seen, "_looks", [])


def looking(monkeypatch, see) -> None:
    """Let pages be looked at by a stand-in."""
    monkeypatch.setattr(seen, "_looks", [see])


@pytest.mark.usefixtures("_no_reader")
def test_without_a_reader_the_refusal_says_how_to_install_one():
    """A shrug helps nobody."""
    with pytest.raises(NoTextError, match=r"pip install 'switchbank\[ocr\]'"):
        read_picture_page(open_document(sheet_of_pictures(TABLE)), 1)


def test_a_page_is_looked_at_twice_at_two_scales(monkeypatch):
    """The second look's words stand beside the first's."""
    asked = []

    def see(_page, longer_side):
        asked.append(longer_side)
        return Seen(strips=(strip("47" if longer_side == FIRST_PX else "41"),), rules=())

    looking(monkeypatch, see)
    page = read_picture_page(open_document(sheet_of_pictures(TABLE)), 1)

    assert asked == [FIRST_PX, SECOND_PX]
    assert [(word.text, word.second) for word in page.words] == [("47", "41")]


def test_words_come_in_reading_order(monkeypatch):
    """By line, then from left to right, in whatever order they were seen."""
    strips = (strip("d", top=230.0), strip("c", left=300.0, top=201.0), strip("a"), strip("b", left=200.0, top=199.0))
    looking(monkeypatch, lambda *_: Seen(strips=strips, rules=()))

    assert [word.text for word in read_picture_page(open_document(sheet_of_pictures(TABLE)), 1).words] == ["a", "b", "c", "d"]


def test_reading_ends_after_the_tables(monkeypatch):
    """Graphs would take as long and give nothing."""
    table = "Symbol Parameter Conditions Min. Typ. Max. Units Ratings Drain-Source Voltage 75 V Drain Current 120 A " * 2
    graphs = "Fig. 1 Fig. 2 Fig. 3 Fig. 4 Typical output characteristics, transfer characteristics " * 3
    texts = iter([text for text in (table, table, graphs, table) for _ in range(2)])
    looking(monkeypatch, lambda *_: Seen(strips=(strip(next(texts)),), rules=()))

    assert [page.number for page in read_picture_pages(open_document(pages_of_pictures(4)))] == [1, 2, 3]


def test_a_document_of_pictures_is_read_by_the_real_reader():
    """Numbers come out as they were drawn, from a child of its own kind, both looks agreeing."""
    pytest.importorskip("rapidocr", reason="needs the extra ocr")
    sheet = read_document("picture.pdf", sheet_of_pictures(TABLE, rules=RULES), function="picture_words:read")

    assert sheet.refused is None
    assert {"VDS", "75", "20", "V", "Max."} <= set(sheet.also)
    assert sheet.flags == ()


@pytest.mark.skipif(one_document.pictures_can_be_read(), reason="the extra ocr is installed")
def test_a_document_of_pictures_is_refused_where_nobody_can_read_it():
    """The refusal names the extra."""
    refused = read_document("picture.pdf", sheet_of_pictures(TABLE), function="picture_words:read").refused

    assert refused is not None
    assert refused.kind == "no_text"
    assert "switchbank[ocr]" in refused.detail
