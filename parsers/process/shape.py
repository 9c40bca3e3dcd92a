"""Hold data from outside to the shape of our frozen dataclasses, field by field."""

import math
import types
import typing
import unicodedata
from collections.abc import Mapping
from dataclasses import MISSING, fields, is_dataclass
from enum import StrEnum
from functools import cache
from typing import Any, TypeVar

Shape = TypeVar("Shape")

MOST_TEXT = 500
"""Longer text is cut. [1]"""
MOST_ITEMS = 20_000
"""More items of one list are not taken. [1]"""
FARTHEST_PT = 20_000.0
"""No box reaches further: 14,400 points are the most that ISO 32000 asks of a page. [pt]"""
LARGEST = 1e12
"""No printed figure is larger. [1]"""
_FORBIDDEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn"})
"""Unicode's categories of control and direction characters, halves of characters, private and unassigned ones."""


class ShapeError(ValueError):
    """Data does not have the shape that it should; says where."""


def shaped(kind: type[Shape], content: object) -> Shape:
    """Make a dataclass out of plain data.

    Args:
        kind: A dataclass of text, numbers, enumerations, tuples, mappings and other such dataclasses.
        content: What a JSON reader gives.

    Returns:
        The dataclass; numbers are finite, boxes near a page, text clean and short.

    Raises:
        ShapeError: A field is missing, unknown, of another type or out of range.
    """
    made: Shape = _value(kind, content, kind.__name__)
    return made


def clean(text: str) -> str:
    """Text without control and direction characters, cut to the longest that is taken.

    Args:
        text: Any text.
    """
    if not text.isprintable():
        text = "".join(mark for mark in text.translate({9: " ", 10: " ", 13: " "}) if unicodedata.category(mark) not in _FORBIDDEN)
    return text if len(text) <= MOST_TEXT else text[: MOST_TEXT - 1] + "…"


def _value(kind: Any, content: object, where: str) -> Any:  # noqa: ANN401, PLR0911  any field's type and value; one answer for each kind of type
    origin, inner = typing.get_origin(kind), typing.get_args(kind)
    if origin in (types.UnionType, typing.Union):
        return None if content is None and types.NoneType in inner else _value(inner[0], content, where)
    if origin is tuple:
        return _items(inner, content, where)
    if origin is typing.Literal:
        return _known(content, inner, where)
    if origin is not None and issubclass(origin, Mapping):
        return _mapping(inner, content, where)
    if is_dataclass(kind) and isinstance(kind, type):
        return _fields(kind, content, where)
    if issubclass(kind, StrEnum):
        return kind(_known(content, tuple(kind), where))
    return _plain(kind, content, where)


def _fields(kind: type, content: object, where: str) -> object:
    hints, needed = _hints(kind)
    if not isinstance(content, dict):
        raise ShapeError(f"{where}: no object")
    if unknown := content.keys() - hints.keys():
        raise ShapeError(f"{where}: {len(unknown)} unknown fields")
    if missing := needed - content.keys():
        raise ShapeError(f"{where}: without {', '.join(sorted(missing))}")
    return kind(**{name: _value(hints[name], value, f"{where}.{name}") for name, value in content.items()})


@cache
def _hints(kind: type) -> tuple[dict[str, Any], frozenset[str]]:
    """A dataclass's fields with their types, and those that have no default."""
    listed = fields(kind)
    needed = frozenset(item.name for item in listed if item.default is MISSING and item.default_factory is MISSING)
    hints = typing.get_type_hints(kind)
    return {item.name: hints[item.name] for item in listed}, needed


def _items(inner: tuple[Any, ...], content: object, where: str) -> tuple[Any, ...]:
    if not isinstance(content, list) or len(content) > MOST_ITEMS:
        raise ShapeError(f"{where}: no list, or too long a one")
    if inner[-1] is Ellipsis:
        return tuple(_value(inner[0], item, where) for item in content)
    if len(content) != len(inner):
        raise ShapeError(f"{where}: {len(content)} items, not {len(inner)}")
    made = tuple(_value(kind, item, where) for kind, item in zip(inner, content, strict=True))
    if inner == (float,) * 4 and any(abs(place) > FARTHEST_PT for place in made):
        raise ShapeError(f"{where}: a box beyond every page")
    return made


def _mapping(inner: tuple[Any, ...], content: object, where: str) -> dict[Any, Any]:
    if not isinstance(content, dict) or len(content) > MOST_ITEMS:
        raise ShapeError(f"{where}: no object, or too large a one")
    return {_value(inner[0], key, where): _value(inner[1], value, where) for key, value in content.items()}


def _known(content: object, known: tuple[Any, ...], where: str) -> Any:  # noqa: ANN401  one of the known ones
    if content not in known:
        raise ShapeError(f"{where}: none of the {len(known)} that it may be")
    return content


def _plain(kind: Any, content: object, where: str) -> str | int | float | bool:  # noqa: ANN401  a plain type
    if kind is bool and isinstance(content, bool):
        return content
    if kind is str and isinstance(content, str):
        return clean(content)
    if kind in (int, float) and isinstance(content, int | float) and not isinstance(content, bool):
        if not math.isfinite(content) or abs(content) > LARGEST or (kind is int and not isinstance(content, int)):
            raise ShapeError(f"{where}: a number out of range")
        return float(content) if kind is float else content
    raise ShapeError(f"{where}: another type than {kind.__name__}")
