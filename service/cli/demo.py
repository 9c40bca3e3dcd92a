"""`switchbank demo`: the pages with invented example data."""

from pathlib import Path

import rich_click as click

from service.cli.serve import loopback
from service.wiring import example


@click.command
@click.option("--host", default="127.0.0.1", show_default=True, help="Address of this very machine.")
@click.option("--port", type=click.IntRange(0, 65535), default=8765, show_default=True, help="Port to listen on; 0 takes any that is free.")
@click.option("--data-dir", type=click.Path(file_okay=False, path_type=Path), help="Folder of the example; never your own data folder.")
def demo(host: str, port: int, data_dir: Path | None) -> None:
    """Start the pages with invented example data, in a data folder of its own.

    The packs, makers and parts are invented; every figure shown was read and judged by this program from the example's datasheets.
    """
    example.demo(host=loopback(host), port=port, data_dir=data_dir)
