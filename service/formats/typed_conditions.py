"""The conditions of a typed figure: numbers as text with their unit, in magnitude as on the switch; temperatures keep their sign."""

from functools import partial

from service.facts.reading import Conditions
from service.formats import dimensions as d
from service.formats.conditions import NUMBERS, WORDS, attribute, conditions_json
from service.formats.quantity import read_number
from service.formats.sourced import quantity_text
from service.formats.table import Table


def read_conditions(table: Table) -> Conditions:
    """Read the conditions that stand in a typed figure's table."""
    given: dict[str, float | str | None] = {}
    for name, dimension in NUMBERS.items():
        number = table.parsed(name, partial(read_number, dimension=dimension))
        given[attribute(name)] = number if number is None or dimension is d.TEMPERATURE else abs(number)
    given |= {name: table.text(name) for name in WORDS}
    return Conditions(**given)  # type: ignore[arg-type]


def conditions_text(cond: Conditions) -> dict[str, str]:
    """Write conditions as a board file has them."""
    written = conditions_json(cond)
    return {name: quantity_text(float(value), NUMBERS[name].house) if name in NUMBERS else str(value) for name, value in written.items()}
