"""Models of RDS(on) against junction temperature that a solver may ask for value and slope, for one board or for arrays of boards."""

from bisect import bisect_right
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
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
        left_c, ratio, slope = self._line(junction_c)
        return ratio + slope * (junction_c - left_c)

    def slope_per_k(self, junction_c: float) -> float:
        """Its growth for a kelvin [1/K]."""
        return self._line(junction_c)[2]

    @property
    def last_c(self) -> float:
        """Where the printed curve ends and prolonging begins [degC]."""
        return self.temperatures_c[-1]

    def _line(self, junction_c: float) -> tuple[float, float, float]:
        """The line through a temperature: where it begins [degC], the ratio there [1], its slope [1/K]."""
        lines, last = _lines(self.temperatures_c, self.ratios), len(self.ratios) - 2
        if is_many(junction_c):
            start = np.clip(np.searchsorted(self.temperatures_c, junction_c, side="right") - 1, 0, last)
            return cast("tuple[float, float, float]", tuple(np.array(lines).T[:, start]))
        return lines[min(max(bisect_right(self.temperatures_c, junction_c) - 1, 0), last)]


@lru_cache(maxsize=64)
def _lines(temperatures_c: tuple[float, ...], ratios: tuple[float, ...]) -> list[tuple[float, float, float]]:
    """Every line of a curve: where it begins [degC], the ratio there [1], its slope [1/K]."""
    ends = pairwise(zip(temperatures_c, ratios, strict=True))
    return [(cold, ratio, (hotter - ratio) / (hot - cold)) for (cold, ratio), (hot, hotter) in ends]
