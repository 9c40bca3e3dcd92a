"""The card of every formula: complete, true to the signature, and of the dimension that it declares."""

from inspect import signature

import pytest

from service.derating.card import Card, card_of, public_formulas
from service.derating.checks import CHECKS
from service.facts.references import REFERENCES, cited
from service.units import ureg

FORMULAS = public_formulas()
# Solvers take a network of objects, and these read numbers off scales of their own: fractions, logarithms, a root search, a gauge number.
NO_DIMENSION = {
    "settle",
    "current_at_junction",
    "current_at_board",
    "ambient_at_junction",
    "ambient_at_board",
    "network_loop_gain",
    "foster_to_ladder",
    "ladder_to_foster",
    "impedance_from_points_kpw",
    "thermal_energy_j",
    "gauge_diameter_m",
    # Air is fitted in figures of its own.
    "convection_wpm2k",
    "grashof",
    "radiation_wpm2k",
}
# These hold a temperature of their own (25 degC, zero in kelvin): kelvins count as plain numbers there, all else keeps its dimension.
OWN_SCALE = {
    "fold_temperature_c",
    "linear_fixed_point_c",
    "quadratic_fixed_point_c",
    "exponent_through",
    "linear_ratio",
    "power_law_ratio",
    "power_law_slope_per_k",
    "quadratic_ratio",
    "cold_rating_v",
}
KELVIN = {
    "degC": "kelvin",
    "K": "kelvin",
    "K/W": "kelvin/watt",
    "W/K": "watt/kelvin",
    "1/K": "1/kelvin",
    "1/K**2": "1/kelvin**2",
    "J/K": "joule/kelvin",
    "1": "dimensionless",
    "W/m**2/K": "watt/m**2/kelvin",
    "W/m/K": "watt/m/kelvin",
}
WITHOUT_KELVIN = {name: unit.replace("kelvin**2", "1").replace("kelvin", "1") for name, unit in KELVIN.items()} | {
    "degC": "dimensionless",
    "K": "dimensionless",
    "1/K": "dimensionless",
    "1/K**2": "dimensionless",
}
NUMBERS = (0.7, 0.9, 1.1, 1.3, 1.7, 1.9, 2.3, 2.9)
LARGE = {"supply_v": 50.0, "limit_c": 200.0, "junction_max_c": 200.0, "breakdown_v": 200.0}
EACH = pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.__name__)


def units(card: Card):
    """How this formula's kelvins count."""
    return WITHOUT_KELVIN if card.name in OWN_SCALE else KELVIN


def quantity(value, unit, names):
    """A number with a unit of the cards."""
    return ureg.Quantity(value, names.get(unit, unit))


def argument(name, unit, place, names):
    """Something to put in: a number, several, or a function of one."""
    value = LARGE.get(name, NUMBERS[place % len(NUMBERS)])
    if unit.endswith(", ..."):
        return [quantity(value * (k + 1), unit.removesuffix(", ..."), names) for k in range(3)]
    if " -> " in unit:
        return lambda _: quantity(2.0, unit.split(" -> ")[1], names)
    return quantity(value, unit, names)


@EACH
def test_a_card_is_complete(formula):
    """Every argument in order, what comes out, where it is valid and what it rests on."""
    card = card_of(formula)

    assert list(card.arguments) == list(signature(formula).parameters)
    assert card.summary.endswith(".")
    assert card.valid
    assert card.source


@EACH
def test_a_card_cites_a_known_source_or_says_that_it_is_our_own(formula):
    """The first word is a key of the references, or "own"."""
    source = card_of(formula).source

    assert source.startswith("own") or cited(source.split(maxsplit=1)[0]), source


@pytest.mark.parametrize("formula", [one for one in FORMULAS if one.__name__ not in NO_DIMENSION], ids=lambda formula: formula.__name__)
def test_a_formula_has_the_dimension_that_its_card_declares(formula):
    """Quantities of the declared units go in, and the declared unit comes out."""
    card = card_of(formula)
    names = units(card)
    given = {name: argument(name, unit, place, names) for place, (name, unit) in enumerate(card.arguments.items())}
    found = formula(**given)

    for value, unit in zip(found if len(card.results) > 1 else (found,), card.results, strict=True):
        first = value[0] if unit.endswith(", ...") else value
        expected = quantity(1.0, unit.removesuffix(", ..."), names)
        assert ureg.Quantity(first).dimensionality == expected.dimensionality


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.name)
def test_a_check_cites_known_sources_or_says_that_it_is_our_own(check):
    """And says what it asks and how it answers."""
    assert check.question.endswith("?")
    assert len(check.method) > 40
    assert cited(check.source) or check.source.startswith("own, ")
    assert check.needs


def test_exceptions_are_formulas_that_exist():
    """A name that is gone leaves the lists."""
    assert {formula.__name__ for formula in FORMULAS} >= NO_DIMENSION | OWN_SCALE


def test_every_source_says_how_it_was_seen():
    """A closed list; what is recalled alone is marked so."""
    assert {reference.seen for reference in REFERENCES.values()} <= {"whole", "rendering", "excerpt", "recalled"}
    assert all(reference.title for reference in REFERENCES.values())


def test_a_card_with_a_missing_argument_is_noticed():
    """The card is read, not guessed."""

    def lame(*, current_a, resistance_ohm):  # noqa: D417 - the very fault
        """Heat.

        Args:
            current_a: Through it. [A]

        Returns:
            Heat. [W]

        Valid always.

        Source: own.
        """
        return current_a * resistance_ohm

    assert list(card_of(lame).arguments) == ["current_a"]
