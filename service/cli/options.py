"""Options that several commands share."""

from pathlib import Path

import rich_click as click

data_dir = click.option(
    "--data-dir",
    type=click.Path(file_okay=False, path_type=Path),
    envvar="SWITCHBANK_DATA_DIR",
    help="Where parts, sheets and results are kept; this user's data folder where nothing is said.",
    show_envvar=True,
)
as_json = click.option("--json", "as_json", is_flag=True, help="Print JSON, one object a line, instead of text for people.")
