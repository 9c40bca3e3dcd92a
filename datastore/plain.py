"""Frozen dataclasses to JSON text and back, exactly; the way in which figures lie in a column."""

import json
from dataclasses import asdict, fields, is_dataclass
from enum import Enum
from types import NoneType, UnionType
from typing import Any, TypeVar, Union, get_args, get_origin, get_type_hints

Record = TypeVar("Record")


def to_text(record: object) -> str:
    """Write a record as JSON; not-a-number and infinity are refused.

    Args:
        record: An instance of a frozen dataclass of service.facts.

    Returns:
        Compact JSON, its fields in the order of the class.

    Raises:
        ValueError: A number in it is not finite.
        TypeError: It is not a dataclass.
    """
    return json.dumps(asdict(record), ensure_ascii=False, allow_nan=False, separators=(",", ":"))  # type: ignore[call-overload]


def from_text(kind: type[Record], text: str) -> Record:
    """Read a record back.

    Args:
        kind: Its class.
        text: What `to_text` wrote, by this or an earlier version of the class: missing fields take their defaults.

    Returns:
        The record.
    """
    record: Record = _shape(kind, json.loads(text))
    return record


def _shape(kind: Any, value: Any) -> Any:  # noqa: ANN401 - JSON goes in, and any of our types comes out
    """Give a JSON value the shape of a type hint."""
    origin, arguments = get_origin(kind), get_args(kind)
    if origin in {Union, UnionType}:
        return None if value is None else _shape(next(a for a in arguments if a is not NoneType), value)
    if origin is tuple:
        kinds = [arguments[0]] * len(value) if arguments[-1] is Ellipsis else arguments
        return tuple(_shape(k, v) for k, v in zip(kinds, value, strict=True))
    if origin is dict:
        return {key: _shape(arguments[1], v) for key, v in value.items()}
    if is_dataclass(kind):
        hints = get_type_hints(kind)
        return kind(**{f.name: _shape(hints[f.name], value[f.name]) for f in fields(kind) if f.name in value})  # type: ignore[operator]
    return kind(value) if isinstance(kind, type) and issubclass(kind, Enum) else value
