"""The on-resistances of a sheet, sorted by the gate voltage that they hold for."""

from collections.abc import Iterable
from dataclasses import dataclass

from service.facts.reading import Limit
from service.facts.switch import RatedValue, Switch

# Why 10 V: the sheets' standard drive, taken where a row or a board does not say.
STANDARD_GATE_V = 10.0
COLD_UP_TO_C = 30.0
HOT_FROM_C = 75.0


@dataclass(frozen=True, slots=True, kw_only=True)
class GateRow:
    """What a sheet says of the on-resistance at one gate voltage.

    Attributes:
        gate_v: Magnitude of the gate voltage. [V]
        least: Printed minimum at 25 degC.
        typical: Typical value at 25 degC.
        largest: Maximum at 25 degC.
        hot: Values at a high junction temperature, hottest first.
    """

    gate_v: float
    least: RatedValue | None
    typical: RatedValue | None
    largest: RatedValue | None
    hot: tuple[RatedValue, ...]


def gate_rows(switch: Switch) -> tuple[GateRow, ...]:
    """Every gate voltage that has a value at 25 degC, lowest voltage first.

    Args:
        switch: The part.

    Returns:
        One row a gate voltage; where several drain currents are printed, the largest resistance counts.
    """
    values = _of_the_table(switch.of("rds_on"))
    voltages = sorted({_gate_v(value) for value in values})
    rows = (_row(volts, [value for value in values if _gate_v(value) == volts]) for volts in voltages)
    return tuple(row for row in rows if row.typical or row.largest)


def row_at(rows: Iterable[GateRow], gate_v: float) -> GateRow | None:
    """The row of the nearest printed gate voltage that is not above the real one; never interpolated.

    Args:
        rows: Of one part.
        gate_v: What the gate really gets. [V]

    Returns:
        The row, or None where only higher voltages are printed.
    """
    below = [row for row in rows if row.gate_v <= gate_v + 1e-9]
    return max(below, key=lambda row: row.gate_v, default=None)


def _of_the_table(values: tuple[RatedValue, ...]) -> tuple[RatedValue, ...]:
    """Without headline values, unless there is nothing else: a headline rounds and drops its conditions."""
    table = tuple(value for value in values if value.cond.where != "headline")
    return table or values


def _gate_v(value: RatedValue) -> float:
    """The gate voltage of a value, as a magnitude."""
    return STANDARD_GATE_V if value.cond.vgs is None else abs(value.cond.vgs)


def _row(gate_v: float, values: list[RatedValue]) -> GateRow:
    """Sort the values of one gate voltage."""
    cold = [value for value in values if (value.cond.tj or 25.0) <= COLD_UP_TO_C]
    hot = [value for value in values if (value.cond.tj or 25.0) >= HOT_FROM_C]
    return GateRow(
        gate_v=gate_v,
        least=min((v for v in cold if v.limit is Limit.MIN), key=_size, default=None),
        typical=max((v for v in cold if v.limit is Limit.TYP), key=_size, default=None),
        largest=max((v for v in cold if v.limit is Limit.MAX), key=_size, default=None),
        hot=tuple(sorted(hot, key=lambda v: -(v.cond.tj or 0.0))),
    )


def _size(value: RatedValue) -> float:
    """The magnitude of a value."""
    return abs(value.sourced.value)
