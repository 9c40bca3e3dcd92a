"""Readings as a reader would give them, for the tests of judging."""

from dataclasses import replace

import pytest

from service.facts.change import Change
from service.facts.kept_reading import KeptReading, Standing
from service.facts.reading import Conditions, Limit, Reading, Status

SHEET = "ab" * 32
SAID = Change(by="reader", at="2026-11-02T10:00:00+00:00", why="read")


@pytest.fixture
def reading():
    """Makes one reading."""

    def make(key: str, value: float, unit: str = "", *, limit: Limit = Limit.MAX, status: Status = Status.ACCEPTED, **cond: object) -> Reading:
        name = "-".join(map(str, (key, limit.value, value, *cond.values())))
        return Reading(
            id=name,
            key=key,
            limit=limit,
            value=value,
            unit=unit,
            printed=f"{value:g}",
            si=value,
            cond=Conditions(**cond),
            status=status,
            evidence=(),
            why="",
            page=2,
            bbox=(100.0, 200.0, 120.0, 210.0),
            row_bbox=(40.0, 198.0, 560.0, 212.0),
            quote=f"{key} {value:g}",
        )

    return make


@pytest.fixture
def kept():
    """Makes a kept reading of one that was read."""

    def make(reading: Reading, standing: Standing = Standing.ACCEPTED) -> KeptReading:
        return KeptReading(
            id=f"kept-{reading.id}",
            version=1,
            sha256=SHEET,
            reading=replace(reading),
            as_read=reading,
            standing=standing,
            reader_version="1",
            change=SAID,
        )

    return make
