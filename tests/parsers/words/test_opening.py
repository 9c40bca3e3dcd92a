"""Files that cannot be read say so in words of ours, and those that can are triaged page by page."""

import io

import pikepdf
import pytest
from PIL import Image
from reportlab.lib.utils import ImageReader
from word_sheets import drawn, page_of, texts

from parsers.errors import DamagedError, EncryptedError, NotAPdfError, TooLargeError
from parsers.glyphs.reader import Reader
from parsers.stages.open_document import open_document
from parsers.types import TextLayer

TABLE = (
    "Absolute Maximum Ratings", "Parameter Symbol Min. Typ. Max. Unit Conditions", "Drain-source voltage VDSS 47 V", "Drain current ID 31 A",
    "Gate-source voltage VGSS 20 V", "Power dissipation PD 52 W", "Junction temperature TJ 175 °C",
)  # fmt: skip
GRAPHS = 3 * ("Fig. 1 Output characteristics", "Fig. 2 Transfer characteristics", "Figure 3 Gate charge", "Drain current ID against VDS", "0 2 4 V")


def page_of_lines(*lines):
    """A page of lines, one under the other."""

    def draw(canvas):
        for index, text in enumerate(lines):
            canvas.drawString(20, 280 - 14 * index, text)

    return drawn(draw)


def joined(*sheets):
    """Pages of several PDFs in one."""
    pdf = pikepdf.new()
    for sheet in sheets:
        pdf.pages.extend(pikepdf.open(io.BytesIO(sheet)).pages)
    buffer = io.BytesIO()
    pdf.save(buffer)
    return buffer.getvalue()


def locked(data, *, user):
    """The same PDF under lock."""
    buffer = io.BytesIO()
    with pikepdf.open(io.BytesIO(data)) as pdf:
        pdf.save(buffer, encryption=pikepdf.Encryption(owner="owner", user=user, R=6))
    return buffer.getvalue()


@pytest.mark.parametrize("data", [b"", b"<html>%PDF-1.4", b"\n%PDF-1.4 and the rest"])
def test_what_does_not_begin_as_a_pdf_is_none(data):
    """Lenient readers search for the header; a type check does not."""
    with pytest.raises(NotAPdfError, match="%PDF-"):
        open_document(data)


def test_a_truncated_file_is_damaged():
    """It begins well and ends in the middle."""
    with pytest.raises(DamagedError, match="fetch it again"):
        open_document(page_of_lines(*TABLE)[:200])


def test_a_file_without_pages_is_damaged_not_empty():
    """Zero pages is a failure."""
    buffer = io.BytesIO()
    pikepdf.new().save(buffer)
    with pytest.raises(DamagedError):
        open_document(buffer.getvalue())


def test_only_a_password_that_is_really_needed_stops_reading():
    """An empty user password opens for everybody."""
    with pytest.raises(EncryptedError, match="password"):
        open_document(locked(page_of_lines(*TABLE), user="secret"))

    assert "47" in texts(page_of(locked(page_of_lines(*TABLE), user="")))


def test_a_page_that_draws_without_end_is_refused():
    """200,000 objects are more than any table has."""
    with pikepdf.open(io.BytesIO(page_of_lines(*TABLE))) as pdf:
        pdf.pages[0].contents_add(b"0 0 m 9 9 l S\n" * 110_000)
        buffer = io.BytesIO()
        pdf.save(buffer, compress_streams=True)

    with pytest.raises(TooLargeError, match="200000"):
        page_of(buffer.getvalue())


def test_forms_that_draw_each_other_end():
    """A circle of forms is drawn once round."""
    with pikepdf.open(io.BytesIO(page_of_lines("Sound 12 V"))) as pdf:
        form = pdf.make_stream(b"/Me Do", Type=pikepdf.Name.XObject, Subtype=pikepdf.Name.Form, BBox=[0, 0, 100, 100])
        form.Resources = pikepdf.Dictionary(XObject=pikepdf.Dictionary(Me=form))
        pdf.pages[0].obj.Resources.XObject = pikepdf.Dictionary(Me=form)
        pdf.pages[0].contents_add(b"/Me Do")
        buffer = io.BytesIO()
        pdf.save(buffer)

    assert texts(Reader(buffer.getvalue()).page(1)) == ["Sound", "12", "V"]


def test_pages_of_tables_are_chosen_and_pages_of_graphs_are_not():
    """The first page is always read, for its headline."""
    cover, graphs, table = page_of_lines("Invented maker", "A switch", *("more words " * 6,) * 6), page_of_lines(*GRAPHS), page_of_lines(*TABLE)
    document = open_document(joined(cover, graphs, table, graphs))

    assert document.chosen == (1, 3)
    assert document.pages == len(document.page_text) == 4


def test_pages_of_pictures_are_chosen_where_no_page_has_a_table():
    """Their values can only be read from the picture."""
    empty = page_of_lines("Page")
    assert open_document(joined(empty, empty)).chosen == (1, 2)


def picture(canvas):
    """A grey bitmap over most of the page."""
    canvas.drawImage(ImageReader(Image.new("L", (40, 30), 200)), 10, 10, 380, 260)


@pytest.mark.parametrize(
    ("data", "layer"),
    [
        (page_of_lines(*TABLE), TextLayer.GOOD),
        (drawn(picture), TextLayer.NONE),
        (drawn(lambda canvas: (picture(canvas), canvas.drawString(20, 5, "A footer that says nothing of any value, rev 3"))), TextLayer.NONE),
    ],
)
def test_the_text_layer_is_what_the_values_are_printed_in(data, layer):
    """Text, or a picture with a line of text beside it."""
    assert open_document(data).text_layer is layer


def test_leftovers_of_another_sheet_under_white_boxes_make_the_text_garbled():
    """Whoever copies the text gets numbers that nobody can see."""

    def draw(canvas):
        for index, text in enumerate(TABLE):
            canvas.drawString(20, 280 - 14 * index, text.replace("47", "80"))
        canvas.setFillGray(1)
        canvas.rect(0, 180, 400, 120, stroke=0, fill=1)
        canvas.setFillGray(0)
        for index, text in enumerate(TABLE):
            canvas.drawString(24, 276 - 14 * index, text)

    document = open_document(drawn(draw))
    assert document.text_layer is TextLayer.GARBLED
    assert "47" in texts(page_of(drawn(draw)))
    assert "80" not in texts(page_of(drawn(draw)))
