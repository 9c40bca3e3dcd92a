"""Set the invented example up in a data folder of its own, and show it."""

import tomllib
from contextlib import closing
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

import service
from service.wiring.ground import change, folder_of, markings, open_store
from service.wiring.jailed import JailedReader
from service.wiring.pages import serve

if TYPE_CHECKING:
    from service.usecases.set_up_example import Example


def demo(*, host: str, port: int, data_dir: Path | None) -> None:
    """Serve the pages with the invented example, set up in a data folder of its own.

    Args:
        host: Address of this machine.
        port: Port; 0 takes one that is free.
        data_dir: Folder of the example; one beside this user's data folder where none is named.

    Raises:
        StoreError: The folder holds somebody's own data.
    """
    from datastore.store import DATABASE
    from parsers import process
    from service.facts.keeping_error import StoreError
    from service.usecases.set_up_example import set_up_example

    folder = data_dir or folder_of(None).with_name("switchbank-demo")
    mark = folder / "example-data"
    if (folder / DATABASE).exists() and not mark.exists():
        raise StoreError(f"{folder} holds data of your own; the example needs a folder of its own, so name another one with --data-dir.")
    process.start()
    say = partial(print, flush=True)
    with closing(open_store(folder)) as store:
        mark.touch()
        set_up_example(_example(), store=store, reader=JailedReader(), markings=markings(), change=change("the invented example"), told=say)
    serve(host=host, port=port, data_dir=folder, example_data=True)


def _example() -> "Example":
    """The example: beside the program where it is installed, in the fixtures of a checkout otherwise."""
    from service.usecases.set_up_example import Example

    here = Path(service.__file__).parent
    root = next(folder for folder in (here / "example", here.parent / "fixtures") if (folder / "packs").is_dir())
    scenario = tomllib.loads((root / "packs" / "scenario.toml").read_text(encoding="utf-8"))
    return Example(
        sheets=tuple((Path(name).name, (root / name).read_bytes()) for name in scenario["sheets"]),
        boards=tuple((board["title"], tomllib.loads((root / board["file"]).read_text(encoding="utf-8"))) for board in scenario["boards"]),
    )
