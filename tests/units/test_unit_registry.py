"""The registry converts what our own tables name, and nothing else."""

from decimal import Decimal

import pint
import pytest

from service.formats import dimensions
from service.formats.dimensions import Dimension
from service.units import factor, ureg

DIMENSIONS = [value for value in vars(dimensions).values() if isinstance(value, Dimension)]

# SI prefixes, International System of Units (BIPM SI Brochure, 9th edition, table 7).
SI_PREFIXES = {"k": "1e3", "m": "1e-3", "u": "1e-6", "\u03bc": "1e-6", "n": "1e-9", "p": "1e-12"}


def test_factors_are_exact_decimals():
    """A thousandth is a thousandth, not the nearest binary fraction."""
    assert factor("milliohm", to="ohm") == Decimal("0.001")


def test_two_dimensions_do_not_convert():
    """Volts never become amperes."""
    with pytest.raises(pint.DimensionalityError):
        factor("volt", to="ampere")


@pytest.mark.parametrize("dimension", DIMENSIONS, ids=lambda dimension: dimension.name)
def test_every_spelling_means_a_unit_of_its_dimension(dimension):
    """No spelling of the table leads to another kind of quantity."""
    house = ureg.Quantity(1, "delta_degC" if dimension.house == "degC" else dimension.spellings[dimension.house])

    for unit in dimension.spellings.values():
        assert ureg.Quantity(1, "delta_degC" if unit == "degC" else unit).is_compatible_with(house)


@pytest.mark.parametrize(("symbol", "dimension"), [("A", dimensions.CURRENT), ("V", dimensions.VOLTAGE), ("F", dimensions.CAPACITANCE)])
def test_prefixes_are_those_of_the_si(symbol, dimension):
    """Each prefix stands for the power of ten that the SI Brochure gives it."""
    for prefix, power in SI_PREFIXES.items():
        if prefix + symbol in dimension.spellings:
            assert factor(dimension.spellings[prefix + symbol], to=dimension.spellings[symbol]) == Decimal(power)
