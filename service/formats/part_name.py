"""How a board names a part: a marking that is kept, ``sha256:HEX`` for one very sheet, ``typed:NAME`` for a part in the same file."""

import re
from collections.abc import Mapping
from difflib import get_close_matches

from service.facts.switch import Switch
from service.formats.errors import UnitError

TYPED = "typed:"
SHEET = "sha256:"
ALLOWED = "a marking that is kept, sha256: with 64 hexadecimal digits, or typed:NAME with a table [typed.NAME]"
_MARKING = re.compile(r"[^\x00-\x1f\x7f]{1,60}")


def read_part_name(written: object, key: str, *, typed: tuple[str, ...]) -> str:
    """Read the name of a part.

    Args:
        written: What was written.
        key: Where it stands.
        typed: Names of the parts that the same file describes.

    Returns:
        The name without surrounding blanks.

    Raises:
        UnitError: No name, no SHA-256, or a typed part that the file does not describe; names the nearest one.
    """
    name = written.strip() if isinstance(written, str) else ""
    name = name.lower() if name.lower().startswith(SHEET) else name
    if not _MARKING.fullmatch(name) and not name.startswith(SHEET):
        raise UnitError(key=key, value=written, why="no name of a part", allowed=ALLOWED)
    if name.startswith(SHEET) and not re.fullmatch(r"[0-9a-f]{64}", name.removeprefix(SHEET)):
        raise UnitError(key=key, value=written, why="no SHA-256", allowed=ALLOWED)
    if name.startswith(TYPED) and name.removeprefix(TYPED) not in typed:
        near = get_close_matches(name.removeprefix(TYPED), typed, n=1)
        why = f"no table [typed.{name.removeprefix(TYPED)}]" + (f"; did you mean typed:{near[0]}?" if near else "")
        raise UnitError(key=key, value=written, why=why, allowed=ALLOWED)
    return name


def bank_switch(part: str, typed: Mapping[str, Switch]) -> Switch:
    """The switch of a bank: the typed one, or one without values that a use case fills in."""
    return typed.get(part.removeprefix(TYPED), Switch(marking=part)) if part.startswith(TYPED) else Switch(marking=part)
