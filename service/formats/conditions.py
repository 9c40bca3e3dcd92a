"""The conditions of a printed or typed figure: their names in a file, and what they measure."""

from dataclasses import fields
from functools import partial

from service.facts.reading import Conditions
from service.formats import dimensions as d
from service.formats.dimensions import Dimension
from service.formats.quantity import read_number
from service.formats.sourced import quantity_text
from service.formats.table import Table

NUMBERS: dict[str, Dimension] = {
    "vgs": d.VOLTAGE,
    "id": d.CURRENT,
    "is": d.CURRENT,
    "vds": d.VOLTAGE,
    "tc": d.TEMPERATURE,
    "ta": d.TEMPERATURE,
    "tsp": d.TEMPERATURE,
    "tj": d.TEMPERATURE,
}
SIGNED = ("tc", "ta", "tsp", "tj")
WORDS = ("t", "ch", "part", "limited_by", "where", "sign", "note")


def attribute(name: str) -> str:
    """The attribute of `Conditions` behind a name; ``is`` is a word of the language."""
    return "is_" if name == "is" else name


def conditions_json(cond: Conditions) -> dict[str, float | str]:
    """Write the conditions that are there, by their names in a file."""
    values = {field.name.rstrip("_"): getattr(cond, field.name) for field in fields(cond)}
    return {name: value for name, value in values.items() if value is not None}


def read_conditions(table: Table) -> Conditions:
    """Read the conditions that stand in a typed figure's table; currents and voltages in magnitude, as on the switch."""
    given: dict[str, float | str | None] = {}
    for name, dimension in NUMBERS.items():
        number = table.parsed(name, partial(read_number, dimension=dimension))
        given[attribute(name)] = number if number is None or name in SIGNED else abs(number)
    given |= {name: table.text(name) for name in WORDS}
    return Conditions(**given)  # type: ignore[arg-type]


def conditions_text(cond: Conditions) -> dict[str, str]:
    """Write conditions as a board file has them: numbers as text with their unit."""
    written = conditions_json(cond)
    return {name: quantity_text(float(value), NUMBERS[name].house) if name in NUMBERS else str(value) for name, value in written.items()}
