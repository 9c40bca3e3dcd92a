"""`switchbank doctor`: what this machine gives the program, to be pasted into a question."""

from pathlib import Path

import rich_click as click

from service.cli import options
from service.cli.writing import columns
from service.wiring import machine


@click.command
@options.data_dir
def doctor(data_dir: Path | None) -> None:
    """Say what this machine gives: versions, the data folder, and how well reading children are locked in.

    Nothing is changed and nothing is sent.
    """
    click.echo(columns(list(machine.examine(data_dir)), indent=""))
