"""Figures of both ends, side by side."""

from collections.abc import Callable

from service.derating.case import Case, Corner
from service.derating.quantity import Point
from service.facts.finding import BothEnds


def both_ends(case: Case, unit: str, figure: Callable[[Point], float | None]) -> BothEnds:
    """One figure at the favourable and at the worst end.

    Args:
        case: The board under one rule set.
        unit: Of the figure.
        figure: From a point to the figure; None where it has none.

    Returns:
        Both figures; an infinite one (nothing settles) is None.
    """
    ends = (figure(case.point(corner)) for corner in (Corner.FAVOURABLE, Corner.WORST))
    favourable, worst = (None if end is None or not abs(end) < float("inf") else float(end) for end in ends)
    return BothEnds(favourable=favourable, worst=worst, unit=unit)
