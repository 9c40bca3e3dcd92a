"""Taking datasheets in: once, whole, and so that a reading that was cut off can be begun again."""

import threading
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from datastore.memory import MemoryStore
from service.facts.change import Change
from service.facts.document import DocumentState
from service.facts.part import Wanted
from service.facts.reading import Refused, Sheet
from service.usecases.keep_sheet import keep_sheet, read_in, take_in
from service.usecases.ports import MarkingReader, Store

DATA = b"%PDF-1.7 another invented sheet"
Act = Callable[..., Change]


class OneSheetReader:
    """Reads the same of every file, or stops dead."""

    version = "1"

    def __init__(self, sheet: Sheet | None) -> None:
        self._sheet = sheet

    def read(self, name: str, data: bytes) -> Sheet:
        """Read, as far as anybody comes."""
        if self._sheet is None:
            raise KeyboardInterrupt
        return replace(self._sheet, file=f"{name}, {len(data)} bytes")


def test_the_same_file_twice_is_one_file_and_a_link_to_what_is_there(store: Store, act: Act) -> None:
    """Whatever it is called the second time."""
    first = take_in("drawer/ab75n40.pdf", DATA, store=store, change=act())
    second = take_in("C:\\sheets\\copy.pdf", DATA, store=store, change=act(by="Ben"))

    assert (first.known, second.known) == (False, True)
    assert first.document == second.document
    assert (first.document.name, first.document.size) == ("ab75n40.pdf", len(DATA))


def test_the_same_file_at_the_same_moment_is_one_file(store: Store, act: Act, tmp_path: Path) -> None:
    """Six bring it at once: one of them first, nobody refused."""
    start, answers = threading.Barrier(6), []

    def bring(number: int) -> None:
        start.wait()
        answers.append(take_in(f"{number}.pdf", DATA, store=store, change=act(by=f"bringer {number}")))

    threads = [threading.Thread(target=bring, args=(number,)) for number in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert sorted(answer.known for answer in answers) == [False] + [True] * 5
    assert len({answer.document for answer in answers}) == 1
    with store.looking() as shelf:
        assert len(shelf.documents.listed()) == 1
    if not isinstance(store, MemoryStore):
        assert len([path for path in (tmp_path / "data" / "files").rglob("*") if path.is_file()]) == 1


@pytest.mark.parametrize("name", ["", "a/b/", "x" * 900])
def test_an_odd_name_does_not_keep_a_file_out(store: Store, act: Act, name: str) -> None:
    """The name is for people; the hash is the identity."""
    assert 0 < len(take_in(name, DATA, store=store, change=act()).document.name) <= 200


def test_a_reading_that_is_cut_off_leaves_a_document_to_read_again(
    store: Store, sheet: Callable[..., Sheet], markings: MarkingReader, act: Act
) -> None:
    """The document was committed before its reading began."""
    sha256 = sheet().sha256
    with pytest.raises(KeyboardInterrupt):
        read_in(sha256, store=store, reader=OneSheetReader(None), markings=markings, change=act())
    with store.looking() as shelf:
        assert shelf.documents.find(sha256).state is DocumentState.WAITING

    read = read_in(sha256, store=store, reader=OneSheetReader(sheet()), markings=markings, change=act())

    assert read.file == "ab75n40.pdf, 26 bytes"
    with store.looking() as shelf:
        assert shelf.documents.find(sha256).state is DocumentState.READ
        assert shelf.documents.sheet(sha256) == read


def test_a_file_that_was_never_taken_in_cannot_be_read(store: Store, markings: MarkingReader, act: Act) -> None:
    """The error names it."""
    with pytest.raises(FileNotFoundError, match="0000"):
        read_in("00" * 32, store=store, reader=OneSheetReader(None), markings=markings, change=act())


def test_every_part_of_a_sheet_is_known_and_no_longer_waits(
    store: Store, sheet: Callable[..., Sheet], keep: Callable[[Sheet], None], act: Act
) -> None:
    """The main part and the further ones that the sheet covers."""
    with store.changing() as shelf:
        for marking in ("ab75n42", "CD1"):
            shelf.wanted.add(Wanted(marking=marking, package="", pins=None, phrase="", change=act()))
    keep(sheet(also=("AB75N42", "AB75N40", "--")))

    with store.looking() as shelf:
        assert [part.key for part in shelf.parts.listed()] == ["AB75N40", "AB75N42"]
        assert [part.key for part in shelf.parts.of_sheet(sheet().sha256)] == ["AB75N40", "AB75N42"]
        assert [wanted.marking for wanted in shelf.wanted.listed()] == ["CD1"]


def test_a_refused_sheet_names_no_part(store: Store, sheet: Callable[..., Sheet], keep: Callable[[Sheet], None]) -> None:
    """Its reason is kept."""
    refused = sheet(readings=(), refused=Refused(kind="not_a_datasheet", seems_to_be="manual", detail="no rating table"))
    keep(refused)

    with store.looking() as shelf:
        assert shelf.parts.listed() == ()
        assert shelf.documents.sheet(refused.sha256) == refused


def test_reading_an_old_revision_again_does_not_bring_it_to_the_front(
    store: Store, sheet: Callable[..., Sheet], keep: Callable[[Sheet], None], markings: MarkingReader, act: Act
) -> None:
    """The sheet taken in last is the one to use first."""
    keep(sheet())
    newer = take_in("rev-b.pdf", DATA, store=store, change=act()).document.sha256
    keep_sheet(sheet(sha256=newer, readings=()), store=store, markings=markings, change=act())
    keep(sheet(reader_version="2"))

    with store.looking() as shelf:
        assert shelf.parts.find("AB75N40").sheets == (newer, sheet().sha256)


def test_a_sheet_is_kept_whole_or_not_at_all(store: Store, sheet: Callable[..., Sheet], act: Act) -> None:
    """A fault in the last step takes the first ones back."""

    class TornMarkings:
        def fold(self, text: str) -> str:
            raise OSError(text)

    with pytest.raises(OSError, match="AB75N40"):
        keep_sheet(sheet(), store=store, markings=TornMarkings(), change=act())

    with store.looking() as shelf:
        assert shelf.documents.find(sheet().sha256).state is DocumentState.WAITING
        assert shelf.readings.of_sheet(sheet().sha256) == ()
