"""Choices that work on a plain number and, entry by entry, on an array of boards.

Why here: formulas are written once for both; only choices and bounds need to know which they got. Types say float, as everywhere.
"""

from typing import Any, cast

import numpy as np


def is_many(value: object) -> bool:
    """Whether a value is an array, one entry a board."""
    return isinstance(value, np.ndarray)


def everywhere(condition: Any) -> bool:  # noqa: ANN401 - a truth value or an array of them
    """Whether a condition is true on every board.

    Args:
        condition: True or false, or an array of either.

    Returns:
        One truth value.
    """
    return bool(np.all(condition)) if is_many(condition) else bool(condition)


def chosen(condition: Any, yes: float, no: float) -> float:  # noqa: ANN401 - a truth value or an array of them
    """One value where a condition is true, the other where it is not.

    Args:
        condition: True or false, or an array of either.
        yes: Taken where it is true.
        no: Taken where it is not.

    Returns:
        The chosen value.
    """
    if is_many(condition):
        return cast("float", np.where(condition, yes, no))
    return yes if condition else no


def bounded(value: float, *, low: float, high: float) -> float:
    """A value kept between two bounds; what is not a number goes to the upper one.

    Args:
        value: Any.
        low: Lower bound.
        high: Upper bound.

    Returns:
        The bounded value.
    """
    if is_many(value):
        return cast("float", np.clip(np.nan_to_num(value, nan=high), low, high))
    return min(max(value, low), high) if value == value else high  # noqa: PLR0124 - only a number that is none differs from itself


def lesser(one: float, two: float) -> float:
    """The smaller of two values.

    Args:
        one: Any.
        two: Any.

    Returns:
        The smaller, entry by entry for arrays.
    """
    return cast("float", np.minimum(one, two)) if is_many(one) or is_many(two) else min(one, two)


def greater(one: float, two: float) -> float:
    """The larger of two values.

    Args:
        one: Any.
        two: Any.

    Returns:
        The larger, entry by entry for arrays.
    """
    return cast("float", np.maximum(one, two)) if is_many(one) or is_many(two) else max(one, two)
