"""A file that contradicts itself, or that says other things in an earlier revision, is read and waits for a look."""

import io
import re

import pikepdf
import pytest
from word_sheets import doubts, drawn, page_of, with_page, word

from parsers.glyphs.doubts import PAGE_BOX, REBUILT, REVISED, STRAY
from parsers.glyphs.reader import doubts_of_picture


def line(value):
    """A sheet of one value."""

    def draw(canvas):
        canvas.drawString(40, 250, "Sound")
        canvas.drawString(90, 250, f"{value} V")

    return plain(drawn(draw))


def plain(data):
    """The same file without compression, so that its parts can be found and spoiled."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        for page in pdf.pages:
            page.obj.Contents = pdf.make_stream(page.obj.Contents.read_bytes())
        buffer = io.BytesIO()
        pdf.save(buffer, compress_streams=False, object_stream_mode=pikepdf.ObjectStreamMode.disable, deterministic_id=True)
    return buffer.getvalue()


def content_of(data):
    """Number and bytes of the object that holds the page's content."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        number = pdf.pages[0].obj.Contents.objgen[0]
    start = data.index(b"%d 0 obj" % number)
    return number, data[start : data.index(b"endobj", start) + 7]


def updated(data, *objects):
    """The file with further objects appended as an incremental update (ISO 32000-1:2008, 7.5.6)."""
    before = int(re.findall(rb"startxref\s+(\d+)", data)[-1])
    with pikepdf.open(io.BytesIO(data)) as pdf:
        root, size = pdf.Root.objgen[0], len(pdf.objects) + 1
    table, body = b"xref\n", data
    for number, text in objects:
        table += b"%d 1\n%010d 00000 n \n" % (number, len(body))
        body += text
    return body + table + b"trailer\n<< /Size %d /Root %d 0 R /Prev %d >>\nstartxref\n%d\n%%%%EOF\n" % (size, root, before, len(body))


def test_a_sound_file_carries_no_sign():
    """The control."""
    assert not doubts(word(page_of(line("40")), "40"))


def moved_entry(data):
    """An entry in the table, that of an object which no page needs, points to where no object is."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        offset = data.index(b"%d 0 obj" % pdf.trailer.Info.objgen[0])
    return data.replace(b"%010d 00000 n" % offset, b"%010d 00000 n" % (offset + 3))


@pytest.mark.parametrize(
    "spoil",
    [
        lambda data: data[: data.rindex(b"startxref")],
        lambda data: re.sub(rb"startxref\s+\d+", b"startxref\n-1", data),
        lambda data: re.sub(rb"startxref\s+\d+", b"startxref\n99999999999999999999", data),
        lambda data: re.sub(rb"startxref\s+\d+", b"startxref\n17", data),
        moved_entry,
    ],
    ids=["cut", "negative", "huge", "elsewhere", "entry"],
)
def test_a_damaged_table_of_objects_is_a_sign_of_doubt(spoil):
    """What lenient readers put together by searching may be another page than the maker's."""
    assert REBUILT in doubts(word(page_of(spoil(line("40"))), "40"))


def test_an_object_that_no_table_names_is_a_sign_of_doubt():
    """A reader that searches for objects shows the last one of a number: 80 where the table leads to 40."""
    data = line("40")
    _, text = content_of(data)
    end = data.rindex(b"xref\n0")
    stray = data[:end] + text.replace(b"40 V", b"80 V") + data[end:]
    start = int(re.findall(rb"startxref\s+(\d+)", data)[-1])
    stray = stray.replace(b"startxref\n%d" % start, b"startxref\n%d" % (start + len(text)))

    assert STRAY in doubts(word(page_of(stray), "40"))


def test_an_object_that_an_update_replaces_is_no_stray():
    """Both are named, each by the table of its own revision."""
    data = line("40")
    assert not doubts(word(page_of(updated(data, content_of(data))), "40"))


def test_a_figure_that_an_update_changes_is_in_doubt_and_no_other():
    """The page shows 80 where the revision before it shows 40."""
    data = line("40 of 7")
    number, text = content_of(data)
    page = page_of(updated(data, (number, text.replace(b"40 of 7", b"80 of 7"))))

    assert doubts(word(page, "80")) == {REVISED}
    assert not doubts(word(page, "7"))


def test_a_figure_stays_in_doubt_when_a_third_revision_changes_nothing():
    """Every revision that the file holds counts, not the last but one alone."""
    data = line("40")
    number, text = content_of(data)
    second = updated(data, (number, text.replace(b"40 V", b"80 V")))
    third = updated(second, (number, text.replace(b"40 V", b"80 V")))

    assert REVISED in doubts(word(page_of(third), "80"))


def test_a_page_that_an_update_puts_in_place_of_another_is_compared_with_it():
    """The new page is an object of its own; the one that it replaces had the same number."""
    data, other = line("40"), line("80")
    with pikepdf.open(io.BytesIO(data)) as pdf:
        pages, fonts, free = pdf.Root.Pages.objgen[0], pdf.pages[0].obj.Resources.Font.F1.objgen[0], len(pdf.objects) + 1
    content = content_of(other)[1].replace(b"%d 0 obj" % content_of(other)[0], b"%d 0 obj" % free)
    drawing = b"/Contents %d 0 R /Resources << /Font << /F1 %d 0 R >> >>" % (free, fonts)
    new = b"%d 0 obj\n<< /Type /Page /Parent %d 0 R /MediaBox [0 0 400 300] %s >>\nendobj\n" % (free + 1, pages, drawing)
    tree = b"%d 0 obj\n<< /Type /Pages /Kids [%d 0 R] /Count 1 >>\nendobj\n" % (pages, free + 1)

    assert REVISED in doubts(word(page_of(updated(data, (free, content), (free + 1, new), (pages, tree))), "80"))


def test_a_page_without_text_has_the_signs_of_its_file():
    """They count for what is read by looking at the page as well."""
    data = line("40")
    number, text = content_of(data)

    assert doubts_of_picture(data, 1) == frozenset()
    assert doubts_of_picture(updated(data, (number, text.replace(b"40 V", b"80 V"))), 1) == {REVISED}
    assert doubts_of_picture(data[: data.rindex(b"startxref")], 1) == {REBUILT}


@pytest.mark.parametrize(
    "entries",
    [
        {"MediaBox": [0, 0, 612]},
        {"Rotate": 45},
        {"Rotate": pikepdf.Name.Left},
        {"CropBox": [10, 10, 10, 300]},
    ],
)
def test_a_page_whose_size_or_turn_is_not_valid_is_in_doubt(entries):
    """Viewers make something up for it, each its own (ISO 32000-1:2008, table 30)."""
    assert PAGE_BOX in doubts(word(page_of(with_page(line("40"), **entries)), "40"))


@pytest.mark.parametrize("entries", [{"MediaBox": [400, 300, 0, 0]}, {"Rotate": -90}, {"Rotate": 450}, {"CropBox": [0, 0, 400, 290]}])
def test_a_page_whose_size_or_turn_is_unusual_is_not(entries):
    """Corners may be swapped, and turns go round."""
    assert not doubts(word(page_of(with_page(line("40"), **entries)), "40"))
