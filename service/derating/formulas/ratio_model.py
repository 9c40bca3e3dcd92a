"""Models of RDS(on) against junction temperature that a solver may ask for value and slope, for one board or for arrays of boards."""

from bisect import bisect_right
from dataclasses import dataclass
from typing import Protocol, cast

import numpy as np

from service.derating.formulas.elementwise import chosen, is_many
from service.derating.formulas.resistance_ratio import REFERENCE_C, power_law_ratio, power_law_slope_per_k


class RatioModel(Protocol):
    """On-resistance over its value at 25 degC, as a function of junction temperature."""

    def value(self, junction_c: float) -> float:
        """The ratio [1]."""
        ...

    def slope_per_k(self, junction_c: float) -> float:
        """Its growth for a kelvin [1/K]."""
        ...


@dataclass(frozen=True, slots=True)
class PowerLaw:
    """The power law in kelvin, with an exponent of its own below 25 degC.

    Why two: of a band of exponents the larger is the worse above 25 degC and the smaller below it.

    Attributes:
        exponent: At and above 25 degC. [1]
        cold_exponent: Below. [1]
    """

    exponent: float
    cold_exponent: float

    def value(self, junction_c: float) -> float:
        """The ratio [1]."""
        return power_law_ratio(junction_c=junction_c, exponent=self._at(junction_c))

    def slope_per_k(self, junction_c: float) -> float:
        """Its growth for a kelvin [1/K]."""
        return power_law_slope_per_k(junction_c=junction_c, exponent=self._at(junction_c))

    def _at(self, junction_c: float) -> float:
        """The exponent on that side of 25 degC."""
        return chosen(junction_c >= REFERENCE_C, self.exponent, self.cold_exponent)


@dataclass(frozen=True, slots=True)
class Curve:
    """Straight lines between points read off a printed curve; beyond an end its slope is prolonged.

    Attributes:
        temperatures_c: Of the points, rising, at least two. [degC, ...]
        ratios: At the points. [1, ...]
    """

    temperatures_c: tuple[float, ...]
    ratios: tuple[float, ...]

    def value(self, junction_c: float) -> float:
        """The ratio [1]."""
        start = self._start(junction_c)
        slope = self._slope(start)
        ratio, left = (_taken(row, start) for row in (self.ratios, self.temperatures_c))
        return ratio + slope * (junction_c - left)

    def slope_per_k(self, junction_c: float) -> float:
        """Its growth for a kelvin [1/K]."""
        return self._slope(self._start(junction_c))

    @property
    def last_c(self) -> float:
        """Where the printed curve ends and prolonging begins [degC]."""
        return self.temperatures_c[-1]

    def _start(self, junction_c: float) -> int:
        """The point where the line through a temperature begins."""
        last = len(self.ratios) - 2
        if is_many(junction_c):
            return cast("int", np.clip(np.searchsorted(self.temperatures_c, junction_c, side="right") - 1, 0, last))
        return min(max(bisect_right(self.temperatures_c, junction_c) - 1, 0), last)

    def _slope(self, start: int) -> float:
        """Slope of the line that begins at a point."""
        if is_many(start):
            return cast("float", np.take(np.diff(self.ratios) / np.diff(self.temperatures_c), start))
        rise = self.ratios[start + 1] - self.ratios[start]
        return rise / (self.temperatures_c[start + 1] - self.temperatures_c[start])


def _taken(row: tuple[float, ...], start: int) -> float:
    """An entry of a row, or one for each board."""
    return cast("float", np.take(row, start)) if is_many(start) else row[start]
