"""`switchbank schema NAME`: the published shape of what the program takes and gives."""

from importlib.resources import files

import rich_click as click

NAMES = ("sheet", "board", "report")


@click.command
@click.argument("name", type=click.Choice([*NAMES, *(f"switchbank.{name}/1" for name in NAMES)]), metavar="NAME")
def schema(name: str) -> None:
    """Print the JSON Schema (draft 2020-12) of a sheet, a board or a report.

    NAME is sheet, board or report. Within a version fields are added, never renamed or dropped.
    """
    bare = name.removeprefix("switchbank.").removesuffix("/1")
    click.echo(files("service.api").joinpath("schemas", f"{bare}.json").read_bytes(), nl=False)
