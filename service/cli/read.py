"""`switchbank read`: what datasheets say, each value with its place."""

import sys
import time
from collections.abc import Iterator
from pathlib import Path

import rich_click as click
from rich.console import Console
from rich.progress import track

from service.cli import options
from service.cli.explained import asked_key, explained_text
from service.cli.failing import CouldNot, Failed
from service.cli.sheet_text import sheet_text
from service.cli.writing import write_json
from service.facts.reading import Sheet
from service.formats.sheet import sheet_json
from service.wiring import reading


@click.command
@click.argument("files", nargs=-1, required=True, type=click.Path(exists=True, readable=True, path_type=Path), metavar="FILE...")
@options.as_json
@click.option(
    "--explain",
    metavar="KEY",
    callback=asked_key,
    help="Show for each value of one parameter (rds_on, RDS(on), on-resistance ...) how it was read, its evidence, and why its status is what it is.",
)
@click.option("--keep", is_flag=True, help="Keep the sheets, and folders of them, for look-up and judging.")
@click.option("--workers", type=click.IntRange(1, 64), metavar="COUNT", help="Files read at the same time; all cores where nothing is said.")
@click.option("--timings", is_flag=True, help="Print how long it took to standard error.")
@options.data_dir
@click.pass_context
def read(
    ctx: click.Context,
    files: tuple[Path, ...],
    explain: str | None,
    workers: int | None,
    data_dir: Path | None,
    *,
    as_json: bool,
    keep: bool,
    timings: bool,
) -> None:
    """Read datasheets of power MOSFETs from PDF FILEs; of a folder, every PDF in it.

    Same file, same version, same bytes out, whatever the number of workers. Without --keep nothing is kept.

    Exit codes: 0 all read; 1 some refused; 2 wrong use; 3 none read.
    """
    if explain and as_json:
        raise Failed("--explain is text for people and --json is for programs: choose one of them.")
    paths = _pdfs(files)
    began = time.perf_counter()
    refused = 0
    sheets = reading.read_sheets(paths, workers=workers, keep=keep, data_dir=data_dir)
    for sheet in _shown(sheets, total=len(paths)):
        refused += sheet.refused is not None
        if as_json:
            write_json(sheet_json(sheet))
        else:
            click.echo((explained_text(sheet, explain) if explain else sheet_text(sheet)) + "\n")
    if timings:
        took = time.perf_counter() - began
        click.echo(f"{len(paths)} files in {took:.2f} s, {took / len(paths):.3f} s each", err=True)
    ctx.exit(0 if not refused else CouldNot.exit_code if refused == len(paths) else 1)


def _pdfs(given: tuple[Path, ...]) -> list[Path]:
    """The files, and those within folders by name; a pipe or a device has no end that could be waited for."""
    for one in given:
        if not one.is_dir() and not one.is_file():
            raise Failed(f"{one.name} is neither a file nor a folder.")
    paths = [path for one in given for path in (_within(one) if one.is_dir() else [one])]
    if not paths:
        raise Failed(f"No PDF lies in {', '.join(path.name for path in given)}.")
    return paths


def _within(folder: Path) -> list[Path]:
    """The PDFs of a folder and the folders in it."""
    return sorted(path for path in folder.rglob("*") if path.suffix.lower() == ".pdf" and path.is_file())


def _shown(sheets: Iterator[Sheet], *, total: int) -> Iterator[Sheet]:
    """Show progress on standard error, on a terminal alone."""
    console = Console(stderr=True)
    if not console.is_terminal or total == 1 or sys.stdout.isatty():
        return sheets
    return iter(track(sheets, description="Reading", total=total, console=console, transient=True))
