"""Both shelves, a reader that says what it is told, and invented sheets."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest

import parsers.marking
from datastore.memory import MemoryStore
from datastore.store import SqlStore
from service.facts.change import Change
from service.facts.reading import Conditions, Limit, Reading, Sheet, Status
from service.facts.result import Result, UsedInput
from service.usecases.keep_sheet import keep_sheet, take_in
from service.usecases.ports import MarkingReader, Store

DATA = b"%PDF-1.7 an invented sheet"


@pytest.fixture(params=["memory", "disk"])
def store(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Store]:
    """Each shelf in turn."""
    if request.param == "memory":
        yield MemoryStore()
        return
    disk = SqlStore(tmp_path / "data")
    yield disk
    disk.close()


@pytest.fixture
def markings() -> MarkingReader:
    """The reader of markings."""
    return parsers.marking


@pytest.fixture
def act() -> Callable[..., Change]:
    """Somebody's act."""
    return lambda why="looked at the crop", by="Ada": Change(by=by, at="2026-11-02T09:00:00Z", why=why)


@pytest.fixture
def reading() -> Callable[..., Reading]:
    """Make a reading of an on-resistance."""
    first = Reading(
        id="r-1",
        key="rds_on",
        limit=Limit.MAX,
        value=2.4,
        unit="mohm",
        printed="2.4",
        si=0.0024,
        cond=Conditions(vgs=10.0),
        status=Status.ACCEPTED,
        evidence=("second_reader", "row", "column", "unit", "condition"),
        why="all evidence agrees",
        page=2,
        bbox=(300.0, 200.0, 320.0, 210.0),
        row_bbox=(60.0, 198.0, 540.0, 212.0),
        quote="RDS(on) 2.4",
    )
    return lambda **changed: replace(first, **changed)


@pytest.fixture
def sheet(store: Store, reading: Callable[..., Reading], act: Callable[..., Change]) -> Callable[..., Sheet]:
    """Make a sheet of the file that was taken in."""
    sha256 = take_in("ab75n40.pdf", DATA, store=store, change=act("took the drawer in")).document.sha256
    first = Sheet(reader_version="1", file="ab75n40.pdf", sha256=sha256, part="AB75N40", readings=(reading(),))
    return lambda **changed: replace(first, **changed)


@pytest.fixture
def keep(store: Store, markings: MarkingReader, act: Callable[..., Change]) -> Callable[[Sheet], None]:
    """Keep a sheet."""
    return lambda read: keep_sheet(read, store=store, markings=markings, change=act(f"read by {read.reader_version}"))


@pytest.fixture
def result(act: Callable[..., Change]) -> Callable[..., Result]:
    """Make a result of some inputs."""

    def make(*inputs: UsedInput, name: str = "a") -> Result:
        return Result(
            id=name,
            title=f"board {name}",
            report='{"board": {"claim": {"continuous": "80 A"}}, "findings": []}',
            inputs=inputs,
            parts=("AB75N40",),
            board=None,
            rule_set="maker",
            engine_version="1",
            typed=False,
            look_at=(),
            change=act(f"asked for {name}"),
        )

    return make
