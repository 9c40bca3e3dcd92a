"""JSON as it leaves the program: the same bytes for the same facts, in UTF-8, without numbers that JSON lacks."""

import json
import math
from datetime import date


def json_bytes(written: object, *, indent: int | None = None) -> bytes:
    """Write JSON with one line's end.

    Args:
        written: Plain tables, lists, text and numbers.
        indent: Blanks per level; one line where nothing is said.

    Returns:
        UTF-8, whatever the terminal speaks.
    """
    text = json.dumps(written, ensure_ascii=False, allow_nan=False, indent=indent, default=_day)
    return f"{text}\n".encode("utf-8", errors="replace")


def _day(value: object) -> str:
    """A date of TOML, which JSON lacks, as text."""
    if isinstance(value, date):
        return value.isoformat()
    raise TypeError(f"{value!r} is neither JSON nor a date")


def finite(value: float | None) -> float | None:
    """A number, or None for one that is none or without end."""
    return None if value is None or not math.isfinite(value) else value
