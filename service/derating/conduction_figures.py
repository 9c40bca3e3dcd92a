"""On-resistance of a switch as a judgement takes it: its row by gate voltage, its ends, its spread and its growth with temperature."""

from dataclasses import dataclass
from math import inf

import numpy as np

from service.derating.figures import Ends, default, drain_voltage, single
from service.derating.formulas.ratio_model import Curve
from service.derating.formulas.resistance_ratio import exponent_through
from service.derating.gate_rows import STANDARD_GATE_V, GateRow, gate_rows, row_at
from service.facts.reading import Limit
from service.facts.sourced import Sourced
from service.facts.switch import RatedValue, Switch

# Largest over typical on five sheets: 1.14 to 1.46.
MAX_OVER_TYP, MAX_OVER_TYP_BOUND = 1.25, 1.5
# Largest over least on the one sheet that prints both (BUK7Y3R5-40H).
WIDEST_SPREAD = 1.75
# Exponents of the power law by voltage class, from six digitised curves.
CLASS_EXPONENTS = ((40.0, 1.7), (80.0, 2.0), (150.0, 2.6))
EXPONENT_BAND = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class GateDrive:
    """Which rows count.

    Attributes:
        volts: The gate voltage at its ends; the worst end is that of the row used there. [V]
        rows: All rows, lowest voltage first.
    """

    volts: Ends
    rows: tuple[GateRow, ...]

    def row(self, gate_v: float) -> GateRow:
        """The row that counts at a gate voltage; the lowest one below all of them, where the voltage itself is a default."""
        return row_at(self.rows, gate_v) or self.rows[0]

    def on_resistance(self) -> Ends:
        """On-resistance at 25 degC, each end at the gate voltage of that end [ohm]."""
        worst = on_resistance(self.row(self.volts.worst))
        return Ends(
            favourable=on_resistance(self.row(self.volts.favourable)).favourable,
            nominal=on_resistance(self.row(self.volts.nominal)).nominal,
            worst=worst.worst,
            sourced=worst.sourced,
        )


def gate_drive(switch: Switch, known: Sourced | None, *, empty_pack_v: float = inf) -> GateDrive | None:
    """The rows for a gate voltage, known or not.

    Args:
        switch: The part.
        known: What the gate gets, where somebody knows; a default counts as unknown.
        empty_pack_v: All that a driver without a charge pump can give when the pack is empty. [V]

    Returns:
        The drive, or None where no row is printed at or below the gate voltage: no bound exists then.
    """
    rows = gate_rows(switch)
    if known is not None:
        volts = Ends(favourable=known.most, nominal=known.value, worst=known.least, sourced=known)
        return GateDrive(volts=volts, rows=rows) if row_at(rows, known.least) else None
    unknown = _unknown_volts(rows, empty_pack_v) if rows else None
    return None if unknown is None else GateDrive(volts=unknown, rows=rows)


def _unknown_volts(rows: tuple[GateRow, ...], empty_pack_v: float) -> Ends | None:
    """10 V, and at the worst end the next lower printed row that an empty pack still drives; None where it drives none."""
    here = row_at(rows, STANDARD_GATE_V) or rows[0]
    lower = [row.gate_v for row in rows if row.gate_v < here.gate_v]
    best = max(STANDARD_GATE_V, here.gate_v)
    # Why not 10 V at the worst end of a single row: its own voltage is all that the sheet promises.
    worst = lower[-1] if lower else best
    name = "10 V, the sheets' standard drive; the worst end takes the next lower printed row"
    if empty_pack_v < worst:
        driven = row_at(rows, empty_pack_v)
        if driven is None:
            return None
        worst, name = driven.gate_v, f"10 V, the sheets' standard drive; an empty pack gives only {empty_pack_v:g} V without a charge pump"
    return Ends(favourable=best, nominal=best, worst=worst, sourced=default(best, "V", name, low=worst, high=best))


def on_resistance(row: GateRow) -> Ends:
    """On-resistance at 25 degC at its ends [ohm]."""
    if row.largest and row.typical:
        typical = min(row.typical.sourced.value, row.largest.sourced.value)
        return Ends(favourable=typical, nominal=typical, worst=row.largest.sourced.value, sourced=row.largest.sourced)
    if row.largest:
        typical = row.largest.sourced.value / MAX_OVER_TYP
        return Ends(favourable=typical, nominal=typical, worst=row.largest.sourced.value, sourced=row.largest.sourced)
    printed = _required(row.typical).sourced.value
    worst = printed * MAX_OVER_TYP_BOUND
    guess = default(printed * MAX_OVER_TYP, "ohm", "1.25 times the printed typical value, at most 1.5 times", low=printed, high=worst)
    return Ends(favourable=printed, nominal=printed, worst=worst, sourced=guess)


def spread(row: GateRow) -> Ends:
    """On-resistance of the highest over that of the lowest switch of a bank [1]."""
    resistance = on_resistance(row)
    if row.least:
        worst = resistance.worst / row.least.sourced.value
        name = "largest over least printed on-resistance"
    else:
        worst = min(resistance.worst / resistance.favourable, WIDEST_SPREAD)
        name = "largest over typical on-resistance, at most 1.75"
    guess = default(worst, "1", name, low=1.0, high=worst)
    return Ends(favourable=1.0, nominal=(1.0 + worst) / 2, worst=worst, sourced=guess)


def printed_curve(switch: Switch) -> Curve | None:
    """The sheet's own curve of on-resistance over temperature, set to 1 at 25 degC, or None where it has fewer than two points."""
    if len(switch.on_resistance_curve) < 2:
        return None
    temperatures, ratios = zip(*sorted(switch.on_resistance_curve), strict=True)
    at_25 = float(np.interp(25.0, temperatures, ratios))
    return Curve(temperatures_c=temperatures, ratios=tuple(ratio / at_25 for ratio in ratios))


def hot_exponent(row: GateRow, rows: tuple[GateRow, ...]) -> Sourced | None:
    """Exponent of the power law through a printed hot value, of this row or else of another, or None where none is printed [1]."""
    for candidate in (row, *rows):
        pairs = [(hot, cold) for hot in candidate.hot for cold in (candidate.largest, candidate.typical) if cold and cold.limit is hot.limit]
        for hot, cold in sorted(pairs, key=lambda pair: pair[0].limit is not Limit.MAX):
            return _through(hot, cold)
    return None


def class_exponent(switch: Switch) -> Ends:
    """Exponent of the power law by voltage class; over all classes where the voltage is not known [1]."""
    rating = drain_voltage(switch)
    if rating is None:
        low, high = CLASS_EXPONENTS[0][1] - EXPONENT_BAND, CLASS_EXPONENTS[-1][1] + EXPONENT_BAND
        guess = default(2.0, "1", "all voltage classes, since the rated voltage is not known", low=low, high=high)
    else:
        centre = next((exponent for volts, exponent in CLASS_EXPONENTS if rating.value <= volts), CLASS_EXPONENTS[-1][1])
        low, high = centre - EXPONENT_BAND, centre + EXPONENT_BAND
        guess = default(centre, "1", f"class of {rating.value:g} V parts, from six published curves", low=low, high=high)
    return Ends(favourable=low, nominal=guess.value, worst=high, sourced=guess)


def exponent(switch: Switch, row: GateRow, rows: tuple[GateRow, ...]) -> Ends:
    """Exponent of the power law: through a printed hot value, else the class default [1]."""
    printed = hot_exponent(row, rows)
    return single(printed) if printed else class_exponent(switch)


def _through(hot: RatedValue, cold: RatedValue) -> Sourced:
    """The exponent through a cold and a hot value; it stands where the hot value is printed."""
    ratio = hot.sourced.value / cold.sourced.value
    value = exponent_through(hot_c=hot.cond.tj or 0.0, hot_ratio=ratio)
    name = f"power law through {cold.sourced.value:g} ohm at 25 degC and {hot.sourced.value:g} ohm at {hot.cond.tj:g} degC"
    return Sourced(value=value, unit="1", known=hot.sourced.known, source=hot.sourced.source, attested=hot.sourced.attested, name=name)


def _required(value: RatedValue | None) -> RatedValue:
    """A row always has a typical or a largest value; this tells the type checker."""
    if value is None:
        raise ValueError("a gate row without typical and largest on-resistance was made; gate_rows() drops such rows")
    return value
