"""References are followed, and not for ever."""

from parsers.glyphs.following import followed


def test_what_is_no_reference_is_itself():
    """An object stands for itself."""
    assert followed(7) == 7


def test_a_circle_of_references_leads_nowhere(monkeypatch):
    """Two references at each other must not hang the reader."""
    from pdfminer.pdftypes import PDFObjRef  # noqa: PLC0415  beside its use

    circle = PDFObjRef(None, 1)
    monkeypatch.setattr(PDFObjRef, "resolve", lambda _: circle)

    assert followed(circle) is None
