"""Units on the card of a formula fit its arithmetic: each is handed quantities with units and must answer in the unit that it declares."""

from inspect import signature

import pytest

from service.derating.card import card_of, public_formulas
from service.units import ureg

# Temperatures in a card are points on a scale or differences; the registry must be told which.
AS_DIFFERENCE = {"K": "delta_degC", "K/W": "delta_degC/W", "1": "dimensionless", "1/K": "1/delta_degC", "J/K": "J/delta_degC"}
SUBJECTS = {
    "avalanche",
    "bench_test",
    "body_diode",
    "conductor",
    "inductance",
    "interruption",
    "plate",
    "safe_area",
    "shunt",
    "transient",
}
# These hold numbers of fixed units inside (absolute temperature, millimetres) or search for a root; units cannot pass through them.
OPAQUE = {"convection_wpm2k", "gauge_diameter_m", "grashof", "radiation_wpm2k", "thermal_energy_j"}
FORMULAS = [formula for formula in public_formulas() if formula.__module__.split(".")[-1] in SUBJECTS and formula.__name__ not in OPAQUE]


def quantity(unit, size):
    """A number with the unit that a card names."""
    if "->" in unit:
        return lambda time: quantity("K/W", 1.0) * (time / quantity("s", 1.0))
    if unit.endswith(", ..."):
        return tuple(quantity(unit.removesuffix(", ..."), size * by) for by in (0.25, 0.75))
    return ureg.Quantity(size, AS_DIFFERENCE.get(unit, unit))


def sizes(arguments):
    """Sizes at which every formula is defined: all small, no two alike."""
    return {name: 0.5 - 0.02 * place for place, name in enumerate(arguments)}


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.__name__)
def test_a_formula_has_the_dimension_that_its_card_declares(formula):
    """A forgotten square or a term of another unit fails here."""
    card = card_of(formula)
    size = sizes(card.arguments)
    answer = formula(**{name: quantity(unit, size[name]) for name, unit in card.arguments.items()})
    (declared,) = card.results

    assert list(card.arguments) == list(signature(formula).parameters)
    assert ureg.Quantity(answer).is_compatible_with(AS_DIFFERENCE.get(declared, declared))


def test_what_is_opaque_exists():
    """An exception for a formula that is gone would hide the next one of that name."""
    assert {formula.__name__ for formula in public_formulas()} >= OPAQUE
