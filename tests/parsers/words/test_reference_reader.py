"""The quick way to a page's characters is held to the reference library character by character."""

import io

import pdfplumber
import pytest
from pdfminer.layout import LTChar, LTFigure
from word_sheets import drawn

from parsers.glyphs.source import Source

SHEETS, PAGES = 12, 3


def leaves(container):
    """Characters in the order of drawing, out of whatever forms they lie in."""
    for item in container:
        if isinstance(item, LTFigure):
            yield from leaves(item)
        elif isinstance(item, LTChar):
            yield item


def reference(data):
    """Characters of every page by pdfplumber, with its pages' left edges."""
    with pdfplumber.open(io.BytesIO(data)) as pdf:
        for page in pdf.pages[:PAGES]:
            yield list(leaves(page.layout)), page
            page.close()


def same_text(theirs, ours):
    """Whether a character is the same, or one that the reference cannot read, or one that was repaired on purpose."""
    text = theirs.get_text()
    return text == ours.text or text.startswith("(cid:") or ours.repaired or ours.text in "ABEZHIKMNOPTYXo"


def every_style(canvas):
    """Each operator that places text (ISO 32000-1:2008, 9.3 and 9.4)."""
    text = canvas.beginText(40, 250)
    text.setFont("Times-Roman", 11)
    text.setCharSpace(0.7)
    text.setWordSpace(2)
    text.setHorizScale(90)
    text.setLeading(14)
    text.textLines("Leading and spacing\n(brackets) and \\ backslash\nThird line 0.5 V")
    text.setRise(4)
    text.textOut("raised")
    text.setRise(-2)
    text.textOut("lowered")
    text.setRise(0)
    canvas.drawText(text)
    canvas.saveState()
    canvas.translate(200, 100)
    canvas.scale(1.3, 0.8)
    canvas.rotate(90)
    canvas.drawString(0, 0, "turned and scaled \u00e9\u00fc\u00b1\u00b5")
    canvas.restoreState()
    canvas.setFont("Courier", 7)
    canvas.drawRightString(380, 20, "right 12.5")


def test_every_style_of_text_stands_where_the_reference_puts_it():
    """Text, origin and width agree; the one known difference is spacing after the last character of a string, which the reference leaves out."""
    data = drawn(every_style)
    ((theirs, _),) = reference(data)
    ours = Source(data).draw(1).marks

    assert [char.get_text() for char in theirs] == [mark.text for mark in ours]
    for char, mark in zip(theirs, ours, strict=True):
        assert char.matrix[5] == pytest.approx(300 - mark.y, abs=5)
        assert char.matrix[4] == pytest.approx(mark.x, abs=2.1)
        if mark.turned == 0:
            assert char.x1 - char.x0 == pytest.approx(mark.x1 - mark.x0, abs=1e-6)


@pytest.mark.corpus
def test_real_sheets_give_the_reference_characters(shared):
    """Same number and order of characters on the first pages of sheets spread over the corpus, none that differs."""
    files = sorted((shared / "corpus" / "pdf").glob("*.pdf"))
    checked = 0
    for path in files[:: len(files) // SHEETS]:
        data = path.read_bytes()
        source = Source(data)
        for number, (theirs, _) in enumerate(reference(data), start=1):
            ours = source.draw(number).marks
            assert len(theirs) == len(ours), (path.name, number)
            differ = [(char.get_text(), mark.text) for char, mark in zip(theirs, ours, strict=True) if not same_text(char, mark)]
            assert differ == [], (path.name, number)
            checked += len(ours)

    assert checked > 30_000
