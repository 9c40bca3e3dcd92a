"""The pictures of a frozen report as tables: whoever cannot see a picture, or wants its numbers, has them beside it."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import ceil
from typing import Any

MOST_ROWS = 14


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveTable:
    """A curve in numbers.

    Attributes:
        kind: Of the curve.
        curve: As the report has it.
        columns: Label and corner of each line.
        rows: A place along the first axis, and where each line stands there; None beyond its end.
    """

    kind: str
    curve: Mapping[str, Any]
    columns: tuple[tuple[str, str], ...]
    rows: tuple[tuple[float, tuple[float | None, ...]], ...]


def curve_tables(report: Mapping[str, Any]) -> dict[str, CurveTable]:
    """Every curve of a report by its kind; none in a report that was frozen before there were any."""
    return {curve["kind"]: curve_table(curve) for curve in report.get("curves") or []}


def curve_table(curve: Mapping[str, Any]) -> CurveTable:
    """One curve in at most so many rows as a person reads, the last one among them."""
    lines = [dict(map(tuple, series["points"])) for series in curve["series"]]
    places = sorted({x for line in lines for x in line})
    every = ceil(len(places) / MOST_ROWS)
    shown = [x for number, x in enumerate(places) if number % every == 0 or x == places[-1]]
    return CurveTable(
        kind=curve["kind"],
        curve=curve,
        columns=tuple((series["label"], series["cond"]["corner"]) for series in curve["series"]),
        rows=tuple((x, tuple(line.get(x) for line in lines)) for x in shown),
    )
