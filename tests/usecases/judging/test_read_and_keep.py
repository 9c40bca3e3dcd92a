"""Many files are taken in, read and kept in their order; a file that changes under the reader's hands is read as it was taken in."""

from collections.abc import Iterable, Iterator
from hashlib import sha256
from pathlib import Path

import pytest

from datastore.memory import MemoryStore
from parsers import marking
from service.facts.change import Change
from service.facts.document import DocumentState
from service.facts.reading import Sheet
from service.usecases.read_sheets import read_and_keep

SAID = Change(by="R. Vell", at="2026-11-02T10:00:00+00:00", why="from the drawer")


class NameReader:
    """Takes a file's contents for its part number."""

    version = "1"

    def read(self, name: str, data: bytes) -> Sheet:
        """Read one file."""
        return Sheet(reader_version="1", file=name, sha256=sha256(data).hexdigest(), part=data.decode(), text_layer="good")


def read_many(paths: Iterable[Path]) -> Iterator[Sheet]:
    """Read files one after another, as they are when it is their turn."""
    return (NameReader().read(path.name, path.read_bytes()) for path in paths)


@pytest.fixture
def drawer(tmp_path: Path) -> list[Path]:
    """Two files."""
    paths = [tmp_path / "b.pdf", tmp_path / "a.pdf"]
    for path, part in zip(paths, ("AB75N40", "AB80N50"), strict=True):
        path.write_bytes(part.encode())
    return paths


def kept(paths: list[Path], store: MemoryStore, many=read_many) -> list[Sheet]:
    """Read and keep files."""
    return list(read_and_keep(paths, read_many=many, reader=NameReader(), store=store, markings=marking, change=SAID))


def test_sheets_come_in_the_order_of_the_files_and_are_kept(drawer):
    """Each part can be looked up by then, and each file is there."""
    store = MemoryStore()
    sheets = kept(drawer, store)

    assert [sheet.part for sheet in sheets] == ["AB75N40", "AB80N50"]
    with store.looking() as shelf:
        assert shelf.parts.find("AB75N40").sheets == (sheets[0].sha256,)
        assert {document.state for document in shelf.documents.listed()} == {DocumentState.READ}


def test_a_file_is_kept_before_anybody_reads_it(drawer):
    """A reading that is cut off leaves files that can be read again."""
    store = MemoryStore()

    def cut_off(paths: Iterable[Path]) -> Iterator[Sheet]:
        for _path in paths:
            raise KeyboardInterrupt
        yield from ()

    with pytest.raises(KeyboardInterrupt):
        kept(drawer, store, cut_off)
    with store.looking() as shelf:
        assert [document.state for document in shelf.documents.listed()] == [DocumentState.WAITING]


def test_a_file_that_changes_meanwhile_is_read_as_it_was_taken_in(drawer):
    """What is kept and what was read are the same bytes."""
    store = MemoryStore()

    def overtaken(paths: Iterable[Path]) -> Iterator[Sheet]:
        for path in paths:
            path.write_bytes(b"ANOTHER")
            yield NameReader().read(path.name, path.read_bytes())

    assert [sheet.part for sheet in kept(drawer, store, overtaken)] == ["AB75N40", "AB80N50"]
    with store.looking() as shelf:
        assert shelf.parts.find("ANOTHER") is None
