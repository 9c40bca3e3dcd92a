"""The one pint registry: conversion factors between units that we name ourselves, and dimensions for tests.

Text from outside never comes here: pint evaluates what it parses, and ``9**9**9`` keeps it busy for ever.
"""

from decimal import Decimal
from functools import cache

import pint

ureg: pint.UnitRegistry[float] = pint.UnitRegistry()


@cache
def factor(unit: str, *, to: str) -> Decimal:
    """How many of one unit make one of another.

    Args:
        unit: Name of the unit, from our own tables.
        to: Name of the unit to convert to, of the same dimension.

    Returns:
        The factor, as a decimal so that 3.2 mohm becomes 0.0032 ohm to the last digit.

    Raises:
        pint.DimensionalityError: The two units measure different things.
    """
    return Decimal(repr(float(ureg.convert(1.0, unit, to))))
