"""A surge on a case: temperatures at its end, the largest current for a time, and the longest time for a current."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import inf, nan

import numpy as np
from scipy.optimize import brentq

from service.derating.case import BankCase, Case, Corner
from service.derating.quantity import Point
from service.derating.surge_assembly import surge_assembly
from service.derating.surge_unknowns import with_surge_quantities
from service.derating.warming import Surge

# What has run away has no margin at all; as a plain number for root finders.
_LEAST_MARGIN = 0.1


@dataclass(frozen=True, slots=True, kw_only=True)
class SurgeEnd:
    """The end of a surge in one corner; infinite where it ran away.

    Attributes:
        junction_c: Of the hottest switch of the bank under examination. [degC]
        board_c: Of the board; not a number where nothing is shared. [degC]
        current_a: Through that switch. [A]
    """

    junction_c: float
    board_c: float
    current_a: float


class BankSurge:
    """A surge of one length through one bank at one point; built once and asked for many currents.

    Args:
        case: With surge quantities.
        bank: Under examination.
        point: A number for each quantity.
        seconds: How long it lasts. [s]
    """

    def __init__(self, case: Case, bank: BankCase, point: Point, *, seconds: float) -> None:
        self._case, self._bank, self._point = case, bank, point
        # Why both: one low switch takes more current, all high switches warm the board more; the hotter one counts.
        self._courses = {low: self._course(low, seconds) for low in {bank.switches > 1, False}}

    @property
    def limit_c(self) -> float:
        """The junction limit of a surge: the rule set's, or the user's for a surge (else for hours) where it is lower. [degC]."""
        own = self._case.board.junction_surge_limit_c or self._case.board.junction_limit_c
        limit = self._case.rules.junction_limit_c(self._point[self._bank.prefix + "junction_max"])
        return limit if own is None else min(limit, own.least)

    def end(self, surge_a: float) -> SurgeEnd:
        """Highest temperatures up to the end of the surge, of one switch low (mostly the hotter switch) and all high (the hotter board).

        Args:
            surge_a: Current of the surge; one below the claimed continuous current is taken to have flowed before as well. [A]

        Returns:
            The end; infinite where it runs away.
        """
        ends = [self._end(low, surge_a) for low in self._courses]
        hottest = max(ends, key=lambda end: end.junction_c)
        return replace(hottest, board_c=max(end.board_c for end in ends))

    def margin(self, surge_a: float) -> float:
        """Allowed rise over the rise at the end, for junction and board alike; 1 is exactly enough, zero runs away.

        Args:
            surge_a: Current of the surge. [A]

        Returns:
            The smallest ratio of both sharings. [1]
        """
        return min(self._margin(low, surge_a) for low in self._courses)

    def largest_a(self) -> float:
        """Largest current that ends within the limits; zero where the air is too hot for any. [A]."""
        start_a = max(self._bank.claimed_a.most, 1.0)
        found = inf
        # Why in this order: the sharing that is worse at the claim mostly is at the limit too, and then the other need not be searched.
        for low in sorted(self._courses, key=lambda sharing: self._margin(sharing, 2 * start_a)):
            if found == inf or self._margin(low, found) < 1:
                found = min(found, self._largest_a(low, start_a))
        return found

    def _largest_a(self, low: bool, start_a: float) -> float:  # noqa: FBT001 - names one of two sharings
        """The same for one sharing."""
        below, above = 0.0, start_a
        if self._margin(low, below) < 1:
            return 0.0
        while self._margin(low, above) >= 1:
            below, above = above, 2 * above

        def over(square: float) -> float:
            # Why squares and rises: rise is nearly a straight line in the squared current, which a root finder likes.
            amperes: float = square**0.5
            return 1 / max(self._margin(low, amperes), _LEAST_MARGIN) - 1

        return float(np.sqrt(brentq(over, below**2, above**2, rtol=1e-9)))

    def _margin(self, low: bool, surge_a: float) -> float:  # noqa: FBT001 - names one of two sharings
        """The smaller ratio of junction and board for one sharing."""
        end, ambient = self._end(low, surge_a), self._point["ambient"]
        allowed = [(self.limit_c, end.junction_c)]
        if self._case.is_chain and "board_limit" in self._case.quantities:
            allowed.append((self._point["board_limit"], end.board_c))
        return min((limit - ambient) / max(reached - ambient, 1e-9) for limit, reached in allowed)

    def _course(self, low: bool, seconds: float) -> Surge | None:  # noqa: FBT001 - names one of two sharings
        """The course for one sharing of the current; None where nothing has any mass."""
        assembly = surge_assembly(self._case, self._bank, self._point, low_switch=low)
        return None if assembly is None else Surge(assembly, running_a=self._bank.claimed_a.most, seconds=seconds)

    def _end(self, low: bool, surge_a: float) -> SurgeEnd:  # noqa: FBT001 - names one of two sharings
        """The end for one sharing of the current; without any mass it is the settled state."""
        course = self._courses[low]
        if course is None or surge_a <= self._bank.claimed_a.most:
            return self._settled(low, surge_a)
        state = course.end(surge_a)
        board_c = state.sink_c[0] if self._case.is_chain else nan
        return SurgeEnd(junction_c=state.junction_c[0], board_c=board_c, current_a=state.current_a[0])

    def _settled(self, low: bool, current_a: float) -> SurgeEnd:  # noqa: FBT001 - names one of two sharings
        """Where everything settles at a current for hours."""
        rest = self._case.settle(self._bank, self._point, current_a=current_a, low_switch=low)
        return SurgeEnd(junction_c=rest.junctions_c[0], board_c=rest.board_c if self._case.is_chain else nan, current_a=rest.currents_a[0])


def surge_curve(case: Case, bank: BankCase, corner: Corner, *, times_s: Iterable[float]) -> tuple[tuple[float, float], ...]:
    """Largest surge current over time, for a picture.

    Args:
        case: The board under one rule set.
        bank: Under examination.
        corner: Which end.
        times_s: Where to look. [s, ...]

    Returns:
        Pairs of time and current. [s, A]
    """
    cases = ((seconds, with_surge_quantities(case, seconds=seconds)) for seconds in times_s)
    return tuple((seconds, BankSurge(at, bank, at.point(corner), seconds=seconds).largest_a()) for seconds, at in cases)


def surged_banks(case: Case) -> tuple[BankCase, ...]:
    """The banks that a discharge surge passes."""
    return case.conducting(case.discharge)
