"""A part without a sheet, as typed into a board file: keys, limits and conditions are named as in a reading."""

from functools import partial
from itertools import pairwise

from service.facts.reading import Limit
from service.facts.sourced import Sourced
from service.facts.switch import RatedValue, Switch
from service.formats import dimensions as d
from service.formats.errors import UnitError
from service.formats.keys import DIMENSIONS
from service.formats.quantity import read_number
from service.formats.sourced import quantity_text, read_sourced, sourced_json, sourced_text
from service.formats.table import Table
from service.formats.typed_conditions import conditions_text, read_conditions

POLARITIES = ("N", "P", "N+N", "P+P", "N+P")
# Why: no power switch is rated for less; a smaller figure is another row of the sheet (storage, ambient), or a slip.
LEAST_JUNCTION_C = 85.0
Pairs = tuple[tuple[float, float], ...]


def read_typed_part(table: Table, *, name: str) -> Switch:
    """Read one ``[typed.NAME]`` table; problems are noted in it.

    Args:
        table: What was written.
        name: Under which name.

    Returns:
        The switch, every value marked as typed.
    """
    switch = Switch(
        marking=table.text("marking") or name,
        polarity=table.choice("polarity", POLARITIES, default="N"),
        package=table.text("package"),
        values=tuple(value for key in DIMENSIONS for figure in table.tables(key) for value in _rated(figure, key)),
        on_resistance_curve=table.parsed("rds_on_vs_tj", _resistance_curve) or (),
        transient_foster=table.parsed("zth_foster", _foster) or (),
        transient_points=table.parsed("zth", _transient) or (),
        typed=True,
    )
    table.finish()
    return switch


def typed_part_json(switch: Switch) -> dict[str, object]:
    """Write a typed part as its table in a board file."""
    written: dict[str, object] = {"marking": switch.marking, "polarity": switch.polarity}
    if switch.package:
        written["package"] = switch.package
    for key in dict.fromkeys(value.key for value in switch.values):
        written[key] = [{value.limit.value: sourced_json(value.sourced), **conditions_text(value.cond)} for value in switch.of(key)]
    if switch.on_resistance_curve:
        written["rds_on_vs_tj"] = [list(point) for point in switch.on_resistance_curve]
    if switch.transient_foster:
        written["zth_foster"] = [[quantity_text(r, "K/W"), quantity_text(tau, "s")] for r, tau in switch.transient_foster]
    if switch.transient_points:
        written["zth"] = [[quantity_text(t, "s"), quantity_text(z, "K/W")] for t, z in switch.transient_points]
    return written


def _rated(table: Table, key: str) -> tuple[RatedValue, ...]:
    """The figures of one table: any of min, typ and max, under the same conditions."""
    read = {limit: table.parsed(limit.value, partial(_magnitude, dimension=DIMENSIONS[key])) for limit in Limit}
    cond = read_conditions(table)
    if not any(table.has(limit.value) for limit in Limit):
        table.note("", None, why="no value", allowed="at least one of min, typ, max")
    table.finish()
    values = tuple(RatedValue(key=key, limit=limit, sourced=fact, cond=cond) for limit, fact in read.items() if fact is not None)
    if not all(lower.sourced.value <= upper.sourced.value for lower, upper in pairwise(values)):
        shown = " ".join(f"{value.limit} {sourced_text(value.sourced)}" for value in values)
        table.note("", shown, why="out of order", allowed="min <= typ <= max, in magnitude")
    return values


def _magnitude(written: object, at: str, *, dimension: d.Dimension) -> Sourced:
    """A figure without its sign: a P-channel part's signs stay on its sheet."""
    bare = written.lstrip().removeprefix("-").removeprefix("\u2212") if isinstance(written, str) else written
    fact = read_sourced(bare, at, dimension=dimension)
    if dimension is d.TEMPERATURE and fact.least < LEAST_JUNCTION_C:
        raise UnitError(key=at, value=written, why="no junction limit of a power switch", allowed=f"at least {LEAST_JUNCTION_C:g} degC")
    return fact


def _pairs(written: object, at: str, *, example: str) -> list[list[object]]:
    """A list of pairs, at least two of them for a curve."""
    if isinstance(written, list) and 0 < len(written) <= 500 and all(isinstance(pair, list) and len(pair) == 2 for pair in written):
        return written
    raise UnitError(key=at, value=written, why="not a list of pairs", allowed=example)


def _resistance_curve(written: object, at: str) -> Pairs:
    """On-resistance over its value at 25 degC: bare degrees Celsius and a bare ratio."""
    example = "[[25, 1.0], [100, 1.5], ...], in degrees Celsius and as a ratio above 0, temperatures rising"
    pairs = _pairs(written, at, example=example)
    numbers = tuple(tuple(float(n) for n in pair if isinstance(n, int | float) and not isinstance(n, bool)) for pair in pairs)
    curve = tuple((pair[0], pair[1]) for pair in numbers if len(pair) == 2)
    right = len(curve) == len(pairs) >= 2 and _rising(curve) and all(-100 <= t <= 500 and 0 < ratio < 100 for t, ratio in curve)
    if not right:
        raise UnitError(key=at, value=written, why="no curve of resistance over temperature", allowed=example)
    return curve


def _foster(written: object, at: str) -> Pairs:
    """Foster pairs: a resistance and its time constant."""
    pairs = _pairs(written, at, example='[["0.1 K/W", "0.3 ms"], ...]')
    return tuple((_positive(r, d.THERMAL_RESISTANCE, at), _positive(tau, d.TIME, at)) for r, tau in pairs)


def _transient(written: object, at: str) -> Pairs:
    """Points of the single-pulse impedance, rising in time."""
    example = '[["1 ms", "0.2 K/W"], ...], times rising'
    points = tuple((_positive(t, d.TIME, at), _positive(z, d.THERMAL_RESISTANCE, at)) for t, z in _pairs(written, at, example=example))
    if not _rising(points):
        raise UnitError(key=at, value=written, why="times do not rise", allowed=example)
    return points


def _positive(written: object, dimension: d.Dimension, at: str) -> float:
    """One number above nought."""
    number = read_number(written, at, dimension=dimension)
    if number <= 0:
        raise UnitError(key=at, value=written, why="too small", allowed=f"a {dimension.name} above 0 {dimension.house}")
    return number


def _rising(pairs: Pairs) -> bool:
    """Whether the first of each pair rises."""
    return all(before[0] < after[0] for before, after in pairwise(pairs))
