"""What a page does not show is no word of it, and what it shows badly carries a sign of doubt on the very characters."""

import io

import pikepdf
import pytest
from word_sheets import doubts, drawn, page_of, texts, with_page, word

from parsers.glyphs.agreement import agrees


def line(canvas):
    """A line that every case shows beside its own."""
    canvas.drawString(40, 250, "Sound 12 V")


def test_a_sound_number_carries_no_doubt():
    """The control: nothing is wrong with it and both readers agree."""
    found = word(page_of(drawn(line)), "12")

    assert not doubts(found)
    assert agrees(found)


def invisible(canvas):
    """Text rendering mode 3 (ISO 32000-1:2008, table 106)."""
    text = canvas.beginText(40, 150)
    text.setTextRenderMode(3)
    text.textOut("80")
    canvas.drawText(text)


def under_a_white_box(canvas):
    """A leftover that was painted over."""
    canvas.drawString(40, 150, "80")
    canvas.setFillGray(1)
    canvas.rect(30, 140, 60, 30, stroke=0, fill=1)


def clipped(canvas):
    """Nothing of it lies within the clipping path."""
    path = canvas.beginPath()
    path.rect(200, 100, 50, 50)
    canvas.clipPath(path, stroke=0, fill=0)
    canvas.drawString(40, 150, "80")


def off_the_page(canvas):
    """Drawn beyond the edge."""
    canvas.drawString(500, 150, "80")


@pytest.mark.parametrize("hide", [invisible, under_a_white_box, clipped, off_the_page])
def test_text_that_leaves_no_ink_is_no_word(hide):
    """It extracts, but no viewer shows it."""

    def draw(canvas):
        line(canvas)
        hide(canvas)

    assert texts(page_of(drawn(draw))) == ["Sound", "12", "V"]


def test_text_outside_the_crop_box_is_no_word():
    """The page as shown ends at the crop box."""

    def draw(canvas):
        line(canvas)
        canvas.drawString(40, 40, "80")

    assert texts(page_of(with_page(drawn(draw), CropBox=[0, 100, 400, 300]))) == ["Sound", "12", "V"]


def test_text_on_a_layer_that_is_off_is_no_word():
    """An optional-content group in the OFF list of the default configuration (ISO 32000-1:2008, 8.11.4.3)."""
    with pikepdf.open(io.BytesIO(drawn(line))) as pdf:
        group = pdf.make_indirect(pikepdf.Dictionary(Type=pikepdf.Name.OCG, Name="old"))
        pdf.Root.OCProperties = pikepdf.Dictionary(OCGs=[group], D=pikepdf.Dictionary(OFF=[group], Order=[]))
        page = pdf.pages[0]
        page.obj.Resources.Properties = pikepdf.Dictionary(Old=group)
        page.contents_add(b"/OC /Old BDC BT /F1 10 Tf 40 150 Td (80) Tj ET EMC")
        buffer = io.BytesIO()
        pdf.save(buffer)

    assert texts(page_of(buffer.getvalue())) == ["Sound", "12", "V"]


def test_what_was_painted_over_and_drawn_anew_is_read_anew():
    """46 shown over a covered 80 is 46, and the second reader is not misled either."""

    def draw(canvas):
        canvas.drawString(40, 150, "80 V")
        canvas.setFillGray(1)
        canvas.rect(30, 140, 60, 30, stroke=0, fill=1)
        canvas.setFillGray(0)
        canvas.drawString(40, 150, "46 V")

    page = page_of(drawn(draw))
    assert texts(page) == ["46", "V"]
    assert agrees(word(page, "46"))
    assert page.hidden == 2


def pale(canvas):
    """White on white."""
    canvas.setFillGray(0.95)
    canvas.drawString(40, 150, "80")


def tiny(canvas):
    """A speck on the paper."""
    canvas.setFont("Helvetica", 1)
    canvas.drawString(40, 150, "80")


def crossed(canvas):
    """Struck out by hand, so to say."""
    canvas.drawString(40, 150, "80")
    canvas.line(36, 153.5, 56, 153.5)


def split(canvas):
    """An upright line through a figure."""
    canvas.drawString(40, 150, "80")
    canvas.line(42.8, 140, 42.8, 165)


@pytest.mark.parametrize(("spoil", "sign"), [(pale, "pale"), (tiny, "pale"), (crossed, "crossed"), (split, "crossed")])
def test_a_badly_shown_number_says_why(spoil, sign):
    """The sign sits on the number and on nothing else of the page."""

    def draw(canvas):
        line(canvas)
        spoil(canvas)

    page = page_of(drawn(draw))
    assert sign in doubts(word(page, "80"))
    assert not doubts(word(page, "12"))


def test_white_text_on_a_dark_heading_is_sound():
    """Contrast counts, not colour."""

    def draw(canvas):
        canvas.setFillGray(0.1)
        canvas.rect(30, 140, 100, 30, stroke=0, fill=1)
        canvas.setFillGray(1)
        canvas.drawString(40, 150, "80")

    assert not doubts(word(page_of(drawn(draw)), "80"))


def test_a_line_under_or_beside_a_number_is_no_doubt():
    """The rules of a table touch no figure."""

    def draw(canvas):
        canvas.drawString(40, 150, "80")
        canvas.line(30, 146, 90, 146)
        canvas.line(38, 140, 38, 170)

    assert not doubts(word(page_of(drawn(draw)), "80"))


def test_numbers_printed_over_each_other_are_in_doubt():
    """Neither can be told from the other."""

    def draw(canvas):
        canvas.drawString(40, 150, "80")
        canvas.drawString(41, 150.5, "46")

    assert all("overlapped" in doubts(found) for found in page_of(drawn(draw)).words)


def test_a_note_stuck_over_a_number_puts_it_in_doubt():
    """An annotation that shows something of its own, as another viewer may or may not draw it."""
    with pikepdf.open(io.BytesIO(drawn(line))) as pdf:
        look = pdf.make_stream(b"1 g 0 0 30 20 re f", Type=pikepdf.Name.XObject, Subtype=pikepdf.Name.Form, BBox=[0, 0, 30, 20])
        note = pikepdf.Dictionary(Type=pikepdf.Name.Annot, Subtype=pikepdf.Name.FreeText, Rect=[70, 245, 95, 265], F=4, AP=pikepdf.Dictionary(N=look))
        pdf.pages[0].obj.Annots = pikepdf.Array([pdf.make_indirect(note)])
        buffer = io.BytesIO()
        pdf.save(buffer)
    page = page_of(buffer.getvalue())

    assert "annotated" in doubts(word(page, "12"))
    assert not doubts(word(page, "Sound"))


def test_a_number_set_wide_is_in_doubt():
    """8 and 0 closer than columns stand may be 80."""

    def draw(canvas):
        canvas.drawString(40, 150, "8")
        canvas.drawString(40 + 5.56 + 3.5, 150, "0")

    page = page_of(drawn(draw))
    assert "uneven_gap" in doubts(word(page, "8"))
    assert "uneven_gap" in doubts(word(page, "0"))


def test_a_minus_that_stands_apart_puts_its_number_in_doubt():
    """It may be a dash."""

    def draw(canvas):
        canvas.drawString(40, 150, "-")
        canvas.drawString(40 + 3.33 + 5, 150, "30")

    assert "sign_apart" in doubts(word(page_of(drawn(draw)), "30"))


def test_what_counts_is_what_the_page_shows_not_what_it_says_of_itself():
    """A replacement text of 80 over a shown 40 (ISO 32000-1:2008, 14.9.4) is seen through by the first reader; the second one may not agree."""
    with pikepdf.open(io.BytesIO(drawn(line))) as pdf:
        pdf.pages[0].contents_add(b"/Span << /ActualText (80) >> BDC BT /F1 10 Tf 40 150 Td (40) Tj ET EMC")
        buffer = io.BytesIO()
        pdf.save(buffer)

    assert "40" in texts(page_of(buffer.getvalue()))
    assert "80" not in texts(page_of(buffer.getvalue()))


def with_map(data, codes):
    """The same PDF with a map to text in its font (ISO 32000-1:2008, 9.10.3)."""
    lines = "".join(f"<{ord(code):02X}> <{ord(text):04X}>\n" for code, text in codes.items())
    with pikepdf.open(io.BytesIO(data)) as pdf:
        font = pdf.pages[0].obj.Resources.Font.F1
        font.ToUnicode = pdf.make_stream(f"1 begincodespacerange <00> <FF> endcodespacerange {len(codes)} beginbfchar\n{lines}endbfchar".encode())
        buffer = io.BytesIO()
        pdf.save(buffer)
    return buffer.getvalue()


def test_a_map_to_text_that_contradicts_the_names_of_the_glyphs_is_doubted():
    """The page shows 40 by the names of its glyphs, and both readers say 80 by the map."""
    found = word(page_of(with_map(drawn(lambda canvas: canvas.drawString(40, 150, "40")), {"4": "8", "0": "0"})), "80")

    assert doubts(found) == {"two_texts"}
    assert not found.glyphs[1].doubt


@pytest.mark.parametrize("codes", [{"4": "4", "0": "0"}, {"4": "\uff14", "0": "\uff10"}])
def test_a_map_to_text_that_says_the_same_is_not(codes):
    """A wide figure is the same figure."""
    page = page_of(with_map(drawn(lambda canvas: canvas.drawString(40, 150, "40")), codes))

    assert not any("two_texts" in doubts(found) for found in page.words)


EIGHTY = b"BT /F1 10 Tf 40 150 Td (80) Tj ET"


def with_content(data, content):
    """The same page with more content, and with a setting of next to no opacity at hand."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        page = pdf.pages[0]
        page.obj.Resources.ExtGState = pikepdf.Dictionary(Faint=pikepdf.Dictionary(ca=0.08))
        page.contents_add(content)
        buffer = io.BytesIO()
        pdf.save(buffer)
    return buffer.getvalue()


@pytest.mark.parametrize(
    "content",
    [
        b"q 1 G 1 Tr " + EIGHTY + b" Q",
        b"q 1 Tz " + EIGHTY + b" Q",
        b"q /Faint gs " + EIGHTY + b" Q",
        EIGHTY + b" q 1 g 30 150 m 30 175 70 175 70 150 c 70 130 30 130 30 150 c f Q",
        EIGHTY + b" q 1 g " + b" ".join(b"30 %d 40 2 re f" % up for up in range(144, 164, 2)) + b" Q",
    ],
    ids=["white outline", "no width", "no opacity", "under a curve", "under strips"],
)
def test_a_figure_that_leaves_no_ink_is_in_doubt_however_it_is_hidden(content):
    """What a viewer draws tells, whatever the way of hiding; and nothing is said against the figure that it shows."""
    page = page_of(with_content(drawn(line), content))

    assert "inkless" in doubts(word(page, "80"))
    assert not doubts(word(page, "12"))


def test_a_shape_that_may_cover_a_figure_puts_it_in_doubt():
    """A value under a rounded patch, and another one drawn on top as lines."""
    page = page_of(with_content(drawn(line), EIGHTY + b" q 1 g 30 150 m 30 175 70 175 70 150 c 70 130 30 130 30 150 c f Q 1 w 42 150 m 48 158 l S"))

    assert "covered" in doubts(word(page, "80"))


@pytest.mark.parametrize(("look", "doubted"), [(b"BT /F1 9 Tf 1 1 Td (46) Tj ET", True), (b"/Mix gs 1 1 0 rg 0 0 30 20 re f", False)])
def test_a_marker_over_a_number_counts_where_it_writes(look, doubted):
    """A highlight is harmless as long as its look is nothing but a coloured area."""
    with pikepdf.open(io.BytesIO(drawn(line))) as pdf:
        resources = pikepdf.Dictionary(
            Font=pdf.pages[0].obj.Resources.Font, ExtGState=pikepdf.Dictionary(Mix=pikepdf.Dictionary(BM=pikepdf.Name.Multiply))
        )
        form = pdf.make_stream(look, Type=pikepdf.Name.XObject, Subtype=pikepdf.Name.Form, BBox=[0, 0, 30, 20], Resources=resources)
        note = pikepdf.Dictionary(Subtype=pikepdf.Name.Highlight, Rect=[70, 245, 95, 265], F=4, AP=pikepdf.Dictionary(N=form))
        pdf.pages[0].obj.Annots = pikepdf.Array([pdf.make_indirect(note)])
        buffer = io.BytesIO()
        pdf.save(buffer)

    assert ("annotated" in doubts(word(page_of(buffer.getvalue()), "12"))) == doubted
