"""Files and sheets on both shelves."""

from dataclasses import replace

from service.facts.document import Document, DocumentState
from service.facts.reading import Refused, Sheet
from service.usecases.ports import Store


def test_a_document_comes_back_as_it_went_in(store: Store, document: Document) -> None:
    """Nothing is lost on the way to the shelf and back."""
    with store.changing() as shelf:
        shelf.documents.add(document)

    with store.looking() as shelf:
        assert shelf.documents.find(document.sha256) == document
        assert shelf.documents.find("00" * 32) is None


def test_the_same_file_twice_is_one_document(store: Store, document: Document) -> None:
    """The first name and the first bringer stay."""
    again = replace(document, name="copy of ab75n40.pdf", taken_in=replace(document.taken_in, by="Ben"))

    for entered in (document, again):
        with store.changing() as shelf:
            assert shelf.documents.add(entered) == document

    with store.looking() as shelf:
        assert shelf.documents.listed() == (document,)


def test_a_document_waits_until_a_sheet_is_kept(store: Store, document: Document, sheet: Sheet) -> None:
    """A reading that was cut off leaves a document that can be read again."""
    with store.changing() as shelf:
        shelf.documents.add(document)
    with store.changing() as shelf:
        assert shelf.documents.find(document.sha256).state is DocumentState.WAITING
        shelf.documents.keep_sheet(sheet)

    with store.looking() as shelf:
        kept = shelf.documents.find(document.sha256)
        assert (kept.state, kept.reader_version) == (DocumentState.READ, "0.1")
        assert shelf.documents.sheet(document.sha256) == sheet


def test_the_latest_sheet_stands(store: Store, document: Document, sheet: Sheet) -> None:
    """A refusal that a newer reader overcomes is no longer the last word."""
    refused = replace(sheet, readings=(), refused=Refused(kind="no_text", seems_to_be=None, detail="the pages are pictures"))
    with store.changing() as shelf:
        shelf.documents.add(document)
        shelf.documents.keep_sheet(refused)
        assert shelf.documents.find(document.sha256).state is DocumentState.REFUSED
        shelf.documents.keep_sheet(replace(sheet, reader_version="0.2"))

    with store.looking() as shelf:
        kept = shelf.documents.find(document.sha256)
        assert (kept.state, kept.reader_version) == (DocumentState.READ, "0.2")


def test_documents_are_listed_the_latest_first(store: Store, document: Document) -> None:
    """The order is that of coming, whatever the clock said."""
    for number, at in enumerate(("2030-01-01T00:00:00Z", "1999-01-01T00:00:00Z")):
        with store.changing() as shelf:
            shelf.documents.add(replace(document, sha256=f"{number:064x}", taken_in=replace(document.taken_in, at=at)))

    with store.looking() as shelf:
        assert [kept.sha256 for kept in shelf.documents.listed()] == [f"{number:064x}" for number in (1, 0)]
