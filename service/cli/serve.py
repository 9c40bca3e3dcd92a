"""`switchbank serve`: the pages on this machine."""

import ipaddress
from pathlib import Path

import rich_click as click

from service.cli import options
from service.cli.failing import Failed
from service.wiring import pages


@click.command
@click.option(
    "--host", default="127.0.0.1", show_default=True, help="Address of this very machine; other machines need accounts, which do not exist yet."
)
@click.option("--port", type=click.IntRange(0, 65535), default=8765, show_default=True, help="Port to listen on; 0 takes any that is free.")
@options.data_dir
def serve(host: str, port: int, data_dir: Path | None) -> None:
    """Start the pages on this machine, for a browser on this machine."""
    pages.serve(host=loopback(host), port=port, data_dir=data_dir)


def loopback(host: str) -> str:
    """The address, where it reaches no further than this machine."""
    try:
        near = host == "localhost" or ipaddress.ip_address(host).is_loopback
    except ValueError:
        near = False
    if not near:
        raise Failed(f"--host {host}: the pages have no accounts yet, so they listen on this machine alone: 127.0.0.1, ::1 or localhost.")
    return host
