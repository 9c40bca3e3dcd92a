"""What the own text device declines the reference library reads; nobody knows then what a viewer shows, so all of it waits for a look."""

import io
from pathlib import Path

import pikepdf
import pytest
from word_sheets import doubts, drawn, page_of, texts, word

from parsers.glyphs import reference
from parsers.glyphs.doubts import INCOMPLETE, UNWEIGHED
from parsers.glyphs.source import Source
from parsers.pipeline import read_datasheet

SHEETS = Path(__file__).resolve().parents[3] / "fixtures" / "datasheets"
TWENTY = 20


def line(canvas):
    """A line that stays whatever is spoiled."""
    canvas.drawString(40, 250, "Sound 12 V")


def added(data, content, **resources):
    """The same page with more content and more resources."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        for kind, entries in resources.items():
            pdf.pages[0].obj.Resources[f"/{kind}"] = pikepdf.Dictionary({**pdf.pages[0].obj.Resources.get(f"/{kind}", {}), **entries})
        pdf.pages[0].contents_add(content)
        return saved(pdf)


def saved(pdf):
    """Its bytes."""
    buffer = io.BytesIO()
    pdf.save(buffer, deterministic_id=True)
    return buffer.getvalue()


def wrapped(data):
    """The same pages, each drawn by a form in a form in a form, twenty deep."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        for page in pdf.pages:
            page.contents_coalesce()
            inner = pdf.make_stream(page.obj.Contents.read_bytes())
            for _ in range(TWENTY):
                inner.Type, inner.Subtype, inner.BBox = pikepdf.Name.XObject, pikepdf.Name.Form, page.mediabox
                inner.Resources = inner.get("/Resources", page.obj.Resources)
                outer = pdf.make_stream(b"/Inner Do")
                outer.Resources = pikepdf.Dictionary(XObject=pikepdf.Dictionary(Inner=inner))
                inner = outer
            page.obj.Contents, page.obj.Resources = inner, inner.Resources
        return saved(pdf)


def test_a_sheet_that_is_declined_ends_with_the_same_values_for_a_look():
    """Forms deeper than any page needs: the own device stops, the reference does not."""
    plain = next((SHEETS / "min_typ_max").glob("*.pdf")).read_bytes()
    before, after = read_datasheet(plain, "plain.pdf"), read_datasheet(wrapped(plain), "deep.pdf")

    assert [(one.key, one.limit, one.value, one.unit, one.cond, one.page) for one in after.readings] == [
        (one.key, one.limit, one.value, one.unit, one.cond, one.page) for one in before.readings
    ]
    assert {one.status for one in before.readings} == {"accepted"}
    assert {one.status for one in after.readings} == {"review"}
    assert all("reference library" in one.why for one in after.readings)


def broken_font(data):
    """A string in a font that nobody can read."""
    return added(data, b"BT /Bad 10 Tf 40 100 Td (80) Tj ET", Font={"/Bad": pikepdf.Dictionary(Type=pikepdf.Name.Font, Subtype=pikepdf.Name.Type0)})


@pytest.mark.parametrize(
    "content",
    [b"40 w 12 frobnicate", b"(no operand of it) re f", b"[ (open) 3 Tj ET", b"(and open", b"<41 Tj ET", b"BI /W 1 /H 1 /BPC 8 /CS /G ID xx xx"],
)
def test_content_that_makes_no_sense_is_declined(content):
    """Operators that are not the standard's, wrong operands, arrays, strings and pictures without an end (ISO 32000-1:2008, 7.8.2)."""
    page = page_of(added(drawn(line), content))

    assert texts(page)[:3] == ["Sound", "12", "V"]
    assert doubts(word(page, "12")) == {UNWEIGHED}


def test_rubbish_after_the_last_operator_is_no_loss():
    """Padding of a cipher or a filter that was left in; nothing is drawn by it."""
    assert not doubts(word(page_of(added(drawn(line), b"\x01\x02 0.45")), "12"))


def test_what_both_decline_is_read_as_far_as_it_goes():
    """The reference gives up on a font that cannot be read; the own device goes on without it, and says that something is missing."""
    page = page_of(broken_font(drawn(line)))

    assert texts(page) == ["Sound", "12", "V"]
    assert doubts(word(page, "12")) == {INCOMPLETE}


def test_text_that_only_the_second_reader_sees_is_missing(monkeypatch):
    """Where the own device draws far fewer characters than the second reader sees, it has lost some."""
    draw = Source.draw

    def forgetful(source, number):
        page = draw(source, number)
        del page.marks[5:]
        return page

    monkeypatch.setattr(Source, "draw", forgetful)
    page = page_of(drawn(line))

    assert texts(page) == ["Sound", "12", "V"]
    assert doubts(word(page, "12")) == {UNWEIGHED}


@pytest.mark.parametrize("family", ["min_typ_max", "rotated_page", "cropped_page", "chinese", "half_ruled"])
def test_the_reference_draws_what_the_own_device_draws(family):
    """Same characters in the same places, same turns and sizes, as many lines: whoever reads on need not know which way a page was read."""
    data = next((SHEETS / family).glob("*.pdf")).read_bytes()
    ours, theirs = Source(data).draw(1), reference.drawn_page(data, 1)

    assert (theirs.width, theirs.height, len(theirs.marks)) == (ours.width, ours.height, len(ours.marks))
    for mark, other in zip(ours.marks, theirs.marks, strict=True):
        assert (other.text, other.turned) == (mark.text, mark.turned)
        assert (other.x, other.y, other.size) == pytest.approx((mark.x, mark.y, mark.size), abs=0.01)
        assert (other.x0, other.top, other.x1, other.bottom) == pytest.approx((mark.x0, mark.top, mark.x1, mark.bottom), abs=0.01)
    assert len(theirs.rules) == len(ours.rules)
