"""A board as TOML text, for people to keep and to edit."""

import json
from collections.abc import Mapping
from datetime import date

HEADER = "# A board, to be judged with: switchbank judge FILE\n"


def toml_text(written: Mapping[str, object]) -> str:
    """Write a board's tables, one a line, each typed part as a section.

    Args:
        written: The board as `board_json` writes it.

    Returns:
        TOML that reads back as the same tables.
    """
    typed = written.get("typed")
    lines = [f"{name} = {_value(value)}" for name, value in written.items() if name != "typed"]
    for name, part in typed.items() if isinstance(typed, dict) else ():
        lines += ["", f"[typed.{_key(name)}]", *(f"{_key(key)} = {_value(value)}" for key, value in part.items())]
    return HEADER + "\n".join(lines) + "\n"


def _value(value: object) -> str:
    """Write one value; text as JSON does, whose escapes TOML shares."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{_key(name)} = {_value(inner)}" for name, inner in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(_value, value)) + "]"
    if isinstance(value, date):
        return value.isoformat()
    return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")


def _key(name: str) -> str:
    """Write a key, in quotes where it is more than letters, digits, dash and underscore."""
    return name if name.isascii() and name.replace("-", "").replace("_", "").isalnum() else _value(name)
