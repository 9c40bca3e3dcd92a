"""JSON as it leaves the program: the same bytes for the same facts, in UTF-8, without numbers that JSON lacks."""

import json
import math


def json_bytes(written: object, *, indent: int | None = None) -> bytes:
    """Write JSON with one line's end.

    Args:
        written: Plain tables, lists, text and numbers.
        indent: Blanks per level; one line where nothing is said.

    Returns:
        UTF-8, whatever the terminal speaks.
    """
    return (json.dumps(written, ensure_ascii=False, allow_nan=False, indent=indent) + "\n").encode("utf-8", errors="replace")


def finite(value: float | None) -> float | None:
    """A number, or None for one that is none or without end."""
    return None if value is None or not math.isfinite(value) else value
