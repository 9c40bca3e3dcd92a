"""The one place that joins the store, the readers, the use cases and the pages."""

# ruff: noqa: PLC0415  a command loads what it needs and nothing else: `--help` must not wait for a database, nor `read` for the engine

import getpass
import logging
import os
import secrets
import tomllib
from collections.abc import Callable, Iterable, Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing, contextmanager
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from service.facts.change import Change
from service.facts.reading import Box, Sheet

if TYPE_CHECKING:
    from datastore.store import SqlStore
    from service.derating.wanted import Wanted
    from service.usecases.look_up_marking import Candidate
    from service.usecases.ports import MarkingReader, Store
    from service.usecases.read_sheets import ReadMany
    from service.usecases.set_up_example import Example
    from service.web.desk import Desk

log = logging.getLogger("switchbank")


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A judgement as it leaves the program.

    Attributes:
        report: As switchbank.report/1.
        toml: The board as a file, defaults filled in.
    """

    report: dict[str, object]
    toml: str


class JailedReader:
    """Reads a datasheet in a child that can do nothing else."""

    @property
    def version(self) -> str:
        """Version of the reader."""
        from parsers.version import READER_VERSION

        return READER_VERSION

    def read(self, name: str, data: bytes) -> Sheet:
        """Read one file; what cannot be read gives a refused sheet."""
        from parsers.process import read_document

        return read_document(name, data)


# Why this large: no page is larger (ISO 32000-1, annex C: 14,400 units), and a piece is cut off at the page's edge. [pt]
WHOLE_PAGE = (0.0, 0.0, 14_400.0, 14_400.0)


class JailedCropper:
    """Draws a piece of a page in a child that can do nothing else."""

    def crop(self, data: bytes, *, page: int, box: Box | None, mark: Box | None = None) -> bytes:
        """Draw the box, or the whole page, as PNG."""
        from parsers.process import render_crop

        return render_crop(data, page, box or WHOLE_PAGE, mark)


def judge(written: Mapping[str, object], *, data_dir: Path | None, spread: bool = False) -> Judged:
    """Judge a board as written.

    Args:
        written: Tables of TOML or JSON.
        data_dir: Where its parts are kept.
        spread: Whether many boards are drawn within the bands of what is open.

    Returns:
        The report, and the board to keep.

    Raises:
        BoardError: The board cannot be taken as written.
        CannotJudgeError: A part is not known well enough.
    """
    from service.formats.board import read_board
    from service.formats.board_json import board_json
    from service.formats.report import report_json
    from service.formats.toml_text import toml_text
    from service.usecases.draw_judgement import drawn_boards_json
    from service.usecases.judge_board import judge_board

    board = read_board(written)
    with _store_to_look_at(data_dir) as store:
        judgement = judge_board(board, store=store)
    more = drawn_boards_json(judgement.report.board) if spread else {}
    return Judged(report={**report_json(judgement.report), **more}, toml=toml_text(board_json(judgement.report.board)))


def read_sheets(paths: Iterable[Path], *, workers: int | None, keep: bool, data_dir: Path | None) -> Iterator[Sheet]:
    """Read files, each in a process of its own.

    Args:
        paths: Files.
        workers: How many at a time; all cores where nothing is said.
        keep: Whether they are kept.
        data_dir: Where.

    Returns:
        Their sheets in the order of the files.
    """
    from parsers import process

    # Why first: reading children are forked from a server that must start before any thread, and before the store is open.
    process.start()
    read_many = partial(process.read_documents, workers=workers)
    return _read_and_keep(paths, read_many, data_dir) if keep else read_many(paths)


def _read_and_keep(paths: Iterable[Path], read_many: "ReadMany", data_dir: Path | None) -> Iterator[Sheet]:
    """Read and keep; the store is open while sheets are asked for."""
    from service.usecases.read_sheets import read_and_keep

    with closing(open_store(data_dir)) as store:
        yield from read_and_keep(
            paths,
            read_many=read_many,
            reader=JailedReader(),
            store=store,
            markings=_markings(),
            change=change("brought on the command line"),
        )


def part_wanted(written: Mapping[str, object]) -> "Wanted":
    """What a part would have to be on a board whose part nobody knows."""
    from service.derating.wanted import wanted
    from service.formats.board import read_board

    return wanted(read_board(written))


def lookup(marking: str, *, data_dir: Path | None) -> tuple["Candidate", ...]:
    """Find the kept parts that a marking may stand for, the likeliest first."""
    from service.usecases.look_up_marking import look_up_marking

    with _store_to_look_at(data_dir) as store:
        return look_up_marking(marking, store=store, markings=_markings())


def search_phrase(marking: str) -> str:
    """Word a search for the datasheet of a part that is not kept."""
    from service.usecases.wait_for_sheet import search_phrase

    return search_phrase(marking, markings=_markings())


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
        markings=_markings(),
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

    folder = data_dir or _folder(None).with_name("switchbank-demo")
    mark = folder / "example-data"
    if (folder / DATABASE).exists() and not mark.exists():
        raise StoreError(f"{folder} holds data of your own; the example needs a folder of its own, so name another one with --data-dir.")
    process.start()
    say = partial(print, flush=True)
    with closing(open_store(folder)) as store:
        mark.touch()
        set_up_example(_example(), store=store, reader=JailedReader(), markings=_markings(), change=change("the invented example"), told=say)
    serve(host=host, port=port, data_dir=folder, example_data=True)


def examine(data_dir: Path | None) -> Iterator[tuple[str, str]]:
    """Name what this machine gives: versions, the data folder, how well reading children are locked in.

    Args:
        data_dir: The data folder.

    Yields:
        What, and how it stands.
    """
    import platform
    import shutil
    from importlib.metadata import version
    from importlib.util import find_spec

    from datastore.store import DATABASE
    from parsers import process
    from parsers.version import READER_VERSION
    from service.derating.version import ENGINE_VERSION

    folder = _folder(data_dir)
    ground = next(path for path in (folder, *folder.parents) if path.exists())
    yield "switchbank", f"{version('switchbank')}, reader {READER_VERSION}, engine {ENGINE_VERSION}"
    yield "Python", f"{platform.python_version()} on {platform.system()} {platform.machine()}"
    yield (
        "data folder",
        f"{folder} ({'in use' if (folder / DATABASE).exists() else 'not made yet'}, {shutil.disk_usage(ground).free / 1e9:.0f} GB free)",
    )
    yield "scanned sheets", "can be read" if find_spec("rapidocr") else "cannot be read: the extra 'ocr' is not installed"
    yield "reports as PDF", "can be made" if find_spec("weasyprint") else "are printed from the browser: the extra 'pdf' is not installed"
    process.start()
    sheet = process.read_document("nothing.pdf", b"%PDF-1.4\n%%EOF\n")
    yield from ((f"reading child, {step.replace('_', ' ')}", state) for step, state in sheet.isolation.items())


def open_store(data_dir: Path | None) -> "SqlStore":
    """The store in a data folder, this user's where none is named."""
    from datastore.store import SqlStore

    return SqlStore(_folder(data_dir))


def change(why: str) -> Change:
    """Who does something now, and why."""
    return Change(by=who(), at=now().isoformat(timespec="seconds"), why=why)


def now() -> datetime:
    """What time it is."""
    return datetime.now(UTC)


def who() -> str:
    """The name of this machine's user."""
    try:
        return getpass.getuser()
    except OSError:
        return "somebody on this machine"


def _folder(data_dir: Path | None) -> Path:
    """The data folder."""
    from datastore.store import default_folder

    return data_dir or default_folder()


@contextmanager
def _store_to_look_at(data_dir: Path | None) -> "Iterator[Store]":
    """The store where there is one; an empty one otherwise, so that looking leaves nothing behind."""
    from datastore.memory import MemoryStore
    from datastore.store import DATABASE

    if not (_folder(data_dir) / DATABASE).exists():
        yield MemoryStore()
        return
    with closing(open_store(data_dir)) as store:
        yield store


def _example() -> "Example":
    """The example: beside the program where it is installed, in the fixtures of a checkout otherwise."""
    from service.usecases.set_up_example import Example

    here = Path(__file__).parent
    root = next(folder for folder in (here / "example", here.parent / "fixtures") if (folder / "packs").is_dir())
    scenario = tomllib.loads((root / "packs" / "scenario.toml").read_text(encoding="utf-8"))
    return Example(
        sheets=tuple((Path(name).name, (root / name).read_bytes()) for name in scenario["sheets"]),
        boards=tuple((board["title"], tomllib.loads((root / board["file"]).read_text(encoding="utf-8"))) for board in scenario["boards"]),
    )


def _markings() -> "MarkingReader":
    """What is known of the confusions of eye and OCR."""
    from parsers import marking

    return marking


def _reading_behind_the_pages(store: "Store", reader: JailedReader) -> Callable[[str], None]:
    """A queue of kept files to read, as many at a time as there are cores; what fails is logged and can be read again."""
    from service.usecases.keep_sheet import read_in

    pool = ThreadPoolExecutor(max_workers=os.cpu_count() or 1, thread_name_prefix="reading")
    markings = _markings()

    def read(sha256: str) -> None:
        try:
            read_in(sha256, store=store, reader=reader, markings=markings, change=replace(change("read"), by="Switchbank"))
        except Exception:
            log.exception("Reading the kept file %s failed; it waits and is taken up again at the next start.", sha256)

    def read_later(sha256: str) -> None:
        pool.submit(read, sha256)

    return read_later


def _secret_key(data_dir: Path | None) -> str:
    """What signs forms and sessions: made once for a data folder, and readable by its owner alone."""
    path = _folder(data_dir) / "secret-key"
    try:
        descriptor = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    except FileExistsError:
        return path.read_text(encoding="ascii")
    with os.fdopen(descriptor, "w", encoding="ascii") as file:
        file.write(key := secrets.token_hex(32))
    return key
