"""How a command writes: text for people, or bytes that are the same on every machine."""

from pathlib import Path

import rich_click as click

from service.cli.failing import Failed
from service.formats.json_text import json_bytes


def write_json(written: object) -> None:
    """Write one JSON object on one line of standard output, in UTF-8 whatever the terminal speaks."""
    click.echo(json_bytes(written), nl=False)


def save_text(path: Path, text: str) -> None:
    """Write a file whole or not at all.

    Args:
        path: Where; what stands there is replaced.
        text: What.

    Raises:
        Failed: It cannot be written there.
    """
    half = path.with_name(f".{path.name}.part")
    try:
        half.write_text(text, encoding="utf-8", newline="\n")
        half.replace(path)
    except OSError as error:
        half.unlink(missing_ok=True)
        raise Failed(f"{path.name} cannot be written: {error.strerror}; nothing was saved.") from error


def columns(rows: list[tuple[str, ...]], *, indent: str = "  ") -> str:
    """Align rows of text; the last column is as long as it likes.

    Args:
        rows: Cells, the same number in each row.
        indent: What stands before each row.

    Returns:
        One line a row.
    """
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    lines = ("  ".join([*(cell.ljust(width) for cell, width in zip(row[:-1], widths, strict=False)), row[-1]]) for row in rows)
    return "\n".join(indent + line.rstrip() for line in lines)
