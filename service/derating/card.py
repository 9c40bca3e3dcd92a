"""The card of a formula as data: its docstring read back, for tests and for "show the working"."""

import inspect
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from importlib import import_module
from pkgutil import iter_modules
from types import ModuleType

from service.derating import formulas
from service.facts.references import cited

SECTION = re.compile(r"^(Args|Returns|Valid|Source)\b:?\s*(.*)$")
ARGUMENT = re.compile(r"^(\w+): (.*)$")
UNIT = re.compile(r"\[([^\]]+)\]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """What a formula says of itself.

    Attributes:
        name: Of the function.
        summary: What it gives, in a sentence.
        arguments: Unit of each argument, in order; None where none is named.
        results: Units of what it gives.
        valid: Where it may be used.
        source: Key, equation or page, or "own" with its reason.
        references: Keys of the sources that it cites.
    """

    name: str
    summary: str
    arguments: dict[str, str | None]
    results: tuple[str, ...]
    valid: str
    source: str
    references: tuple[str, ...]


def card_of(formula: Callable[..., object]) -> Card:
    """Read the card of a formula.

    Args:
        formula: Any public function with a card.

    Returns:
        Its card; what is not said is empty.
    """
    lines = (inspect.getdoc(formula) or "").splitlines()
    parts = _sections(lines)
    source = " ".join(parts["Source"])
    return Card(
        name=formula.__name__,
        summary=lines[0] if lines else "",
        arguments={name: _unit(text) for name, text in _arguments(parts["Args"])},
        results=tuple(UNIT.findall(" ".join(parts["Returns"]))),
        valid=" ".join(parts["Valid"]),
        source=source,
        references=cited(source),
    )


def formula_modules() -> tuple[ModuleType, ...]:
    """Every file of formulas, in alphabetical order."""
    return tuple(import_module(f"{formulas.__name__}.{found.name}") for found in iter_modules(formulas.__path__))


def public_formulas() -> tuple[Callable[..., object], ...]:
    """Every public formula: a function with a card that names its source, in the file that defines it."""
    found = []
    for module in formula_modules():
        for name, member in inspect.getmembers(module, inspect.isfunction):
            if member.__module__ == module.__name__ and not name.startswith("_") and "Source:" in (member.__doc__ or ""):
                found.append(member)
    return tuple(found)


def _sections(lines: list[str]) -> dict[str, list[str]]:
    """The lines of each section; the heading's own line belongs to it."""
    parts: dict[str, list[str]] = {name: [] for name in ("Args", "Returns", "Valid", "Source")}
    current: list[str] = []
    for line in lines[1:]:
        heading = SECTION.match(line)
        if heading:
            current = parts[heading[1]]
            line = heading[2]  # noqa: PLW2901 - the rest of the heading's line is its first content
        if line.strip():
            current.append(line.strip())
    return parts


def _arguments(lines: list[str]) -> Iterator[tuple[str, str]]:
    """Name and text of each argument; a line without a name goes on with the last one."""
    name, text = "", ""
    for line in lines:
        start = ARGUMENT.match(line)
        if start and name:
            yield name, text
        name, text = (start[1], start[2]) if start else (name, f"{text} {line}")
    if name:
        yield name, text


def _unit(text: str) -> str | None:
    """The unit that an argument's text ends with."""
    found = UNIT.findall(text)
    return found[-1] if found else None
