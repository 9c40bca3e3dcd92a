"""The conditions of a printed or typed figure: their names in a file, and what they measure."""

from dataclasses import fields

from service.facts.reading import Conditions
from service.formats import dimensions as d
from service.formats.dimensions import Dimension

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
WORDS = ("t", "ch", "part", "limited_by", "where", "sign", "note")


def attribute(name: str) -> str:
    """The attribute of `Conditions` behind a name; ``is`` is a word of the language."""
    return "is_" if name == "is" else name


def conditions_json(cond: Conditions) -> dict[str, float | str]:
    """Write the conditions that are there, by their names in a file."""
    values = {field.name.rstrip("_"): getattr(cond, field.name) for field in fields(cond)}
    return {name: value for name, value in values.items() if value is not None}
