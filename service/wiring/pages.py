"""Serve the pages, and read behind them what was dropped on them."""

import logging
import os
import secrets
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from service.wiring.ground import change, folder_of, markings, now, open_store, who
from service.wiring.jailed import JailedCropper, JailedReader

if TYPE_CHECKING:
    from service.usecases.ports import Store
    from service.web.desk import Desk

log = logging.getLogger("switchbank")


def lay_desk(data_dir: Path | None, *, example_data: bool = False) -> "Desk":
    """Lay out what the pages work with, and take up the readings that were cut off or that a newer reader may do better.

    Args:
        data_dir: The data folder; this user's where none is named.
        example_data: Whether it holds the invented example.
    """
    from parsers import process
    from service.web.desk import Desk

    process.start()
    store, reader = open_store(data_dir), JailedReader()
    desk = Desk(
        store=store,
        cropper=JailedCropper(),
        markings=markings(),
        clock=now,
        who=who,
        read_later=_reading_behind_the_pages(store, reader),
        example_data=example_data,
    )
    with store.looking() as shelf:
        documents = shelf.documents.listed()
    for document in documents:
        if document.reader_version != reader.version:
            desk.read_later(document.sha256)
    return desk


def serve(*, host: str, port: int, data_dir: Path | None, example_data: bool = False) -> None:
    """Serve the pages until the program is stopped.

    Args:
        host: Address of this machine.
        port: Port; 0 takes one that is free.
        data_dir: The data folder.
        example_data: Whether it holds the invented example.
    """
    import waitress  # type: ignore[import-untyped]

    from service.web.app import create_app

    app = create_app(lay_desk(data_dir, example_data=example_data), secret_key=_secret_key(data_dir))
    server = waitress.create_server(app, host=host, port=port, threads=8, ident=None)
    shown = f"[{host}]" if ":" in host else host
    print(f"Switchbank is on http://{shown}:{server.effective_port} (stop it with Ctrl+C)", flush=True)  # noqa: T201  where to look
    server.run()


def _reading_behind_the_pages(store: "Store", reader: JailedReader) -> Callable[[str], None]:
    """A queue of kept files to read, as many at a time as there are cores; what fails is logged and can be read again."""
    from service.usecases.keep_sheet import read_in

    pool = ThreadPoolExecutor(max_workers=os.cpu_count() or 1, thread_name_prefix="reading")

    def read(sha256: str) -> None:
        try:
            read_in(sha256, store=store, reader=reader, markings=markings(), change=replace(change("read"), by="Switchbank"))
        except Exception:
            log.exception("Reading the kept file %s failed; it waits and is taken up again at the next start.", sha256)

    def read_later(sha256: str) -> None:
        pool.submit(read, sha256)

    return read_later


def _secret_key(data_dir: Path | None) -> str:
    """What signs forms and sessions: made once for a data folder, and readable by its owner alone."""
    path = folder_of(data_dir) / "secret-key"
    try:
        descriptor = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    except FileExistsError:
        return path.read_text(encoding="ascii")
    with os.fdopen(descriptor, "w", encoding="ascii") as file:
        file.write(key := secrets.token_hex(32))
    return key
