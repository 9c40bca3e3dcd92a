"""Where `judge` takes its board from: a file, or four options."""

import json
import tomllib
from pathlib import Path

from service.cli.failing import Failed

MOST_BYTES = 1_000_000


def board_file(path: Path) -> dict[str, object]:
    """Parse a board file.

    Args:
        path: TOML, or JSON where the name ends in .json.

    Returns:
        Its tables, not yet looked at.

    Raises:
        Failed: Too large, no text in UTF-8, or no TOML or JSON; says where.
    """
    if path.stat().st_size > MOST_BYTES:
        raise Failed(f"{path.name}: larger than {MOST_BYTES} bytes, so it is no board file.")
    kind = "JSON" if path.suffix.lower() == ".json" else "TOML"
    try:
        text = path.read_text(encoding="utf-8")
        written = json.loads(text) if kind == "JSON" else tomllib.loads(text)
    except UnicodeDecodeError as error:
        raise Failed(f"{path.name}: not text in UTF-8 (byte {error.start}); save it as UTF-8.") from error
    except (ValueError, RecursionError) as error:
        raise Failed(f"{path.name}: not {kind}: {error}.") from error
    if not isinstance(written, dict):
        raise Failed(f"{path.name}: a board is a table, not {type(written).__name__}.")
    return written


OPTIONS = {
    "claim.continuous": "--amps",
    "cells.in_series": "--cells",
    "discharge_bank.switches": "--per-bank",
    "discharge_bank.part": "--part",
}


def short_board(*, part: str, per_bank: int, cells: int, amps: str) -> dict[str, object]:
    """A board of the four fields that a first answer needs; everything else is a named default.

    Args:
        part: As a bank names it.
        per_bank: Switches of each bank.
        cells: In series.
        amps: Claimed continuous current, a bare number or with its unit. [A]

    Returns:
        The board's tables.
    """
    return {
        "claim": {"continuous": amps if amps[-1:].isalpha() else f"{amps} A"},
        "cells": {"in_series": cells},
        "discharge_bank": {"part": part, "switches": per_bank},
    }
