"""Both shelves, and invented things to lay on them."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from datastore.memory import MemoryStore
from datastore.store import SqlStore
from service.facts.change import Change
from service.facts.document import Document
from service.facts.kept_reading import KeptReading, Standing
from service.facts.reading import Conditions, Limit, Reading, Sheet, Status
from service.usecases.ports import Store

SHA = "ab" * 32


@pytest.fixture
def disk(tmp_path: Path) -> Iterator[SqlStore]:
    """A store in a folder of its own."""
    store = SqlStore(tmp_path / "data")
    yield store
    store.close()


@pytest.fixture(params=["memory", "disk"])
def store(request: pytest.FixtureRequest) -> Store:
    """Each shelf in turn."""
    return MemoryStore() if request.param == "memory" else request.getfixturevalue("disk")


@pytest.fixture
def change() -> Change:
    """An act of a person."""
    return Change(by="Ada", at="2026-11-02T09:00:00Z", why="took the drawer of sheets in")


@pytest.fixture
def document(change: Change) -> Document:
    """A file that nobody has read yet."""
    return Document(sha256=SHA, name="ab75n40.pdf", size=123_456, taken_in=change)


@pytest.fixture
def reading() -> Reading:
    """A printed on-resistance with everything that may stand beside it."""
    return Reading(
        id="r-1",
        key="rds_on",
        limit=Limit.MAX,
        value=2.4,
        unit="mohm",
        printed="2.4",
        si=0.0024,
        cond=Conditions(vgs=10.0, id=50.0, tj=25.0, note="pulsed"),
        status=Status.ACCEPTED,
        evidence=("second_reader", "row", "column", "unit", "condition"),
        why="both readers, its row, its column, its unit and its condition agree",
        flags=("preliminary",),
        page=2,
        bbox=(300.0, 200.0, 320.0, 210.0),
        row_bbox=(60.0, 198.0, 540.0, 212.0),
        quote="RDS(on) VGS = 10 V, ID = 50 A 2.4 m\u2126 max",
    )


@pytest.fixture
def sheet(reading: Reading) -> Sheet:
    """What a reader saw in that file."""
    return Sheet(
        reader_version="0.1", file="ab75n40.pdf", sha256=SHA, part="AB75N40", polarity="N", pages=8, readings=(reading,), isolation={"rlimits": "set"}
    )


@pytest.fixture
def entry(reading: Reading, change: Change) -> Callable[..., KeptReading]:
    """Make an entry of that reading."""
    first = KeptReading(
        id="r-1", version=1, sha256=SHA, reading=reading, as_read=reading, standing=Standing.ACCEPTED, reader_version="0.1", change=change
    )
    return lambda **changed: replace(first, **changed)
