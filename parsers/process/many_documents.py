"""Many documents, as many at a time as there are cores, given in the order in which they were asked for."""

import itertools
import os
import threading
from collections import deque
from collections.abc import Iterable, Iterator
from concurrent.futures import Future
from pathlib import Path
from queue import SimpleQueue

from parsers.process import tasks
from parsers.process.one_document import read_document
from parsers.process.starting import start
from service.facts.reading import Sheet

File = Path | tuple[str, bytes]
_Task = tuple["Future[Sheet]", File, str]
_AHEAD = 256
"""How many files may be taken while one before them still keeps its child busy. [1]"""


def read_documents(files: Iterable[File], *, workers: int | None = None, function: str = tasks.READ_DATASHEET) -> Iterator[Sheet]:
    """Read documents, each in children of its own.

    Args:
        files: Paths, or names with bytes; paths are opened only when a child is free.
        workers: How many documents are read at the same time; all cores where nothing is said.
        function: What reads a document in the child, as ``module:name``.

    Yields:
        One sheet a file, in the order of the files, the same with any number of workers.

    Raises:
        ForkServerError: Children cannot be started.
        OSError: A file cannot be opened.
    """
    start()
    to_do: SimpleQueue[_Task | None] = SimpleQueue()
    number = workers or cores()
    for _ in range(number):
        # Why daemons: a program that is told to stop does not wait for a document that takes its time.
        threading.Thread(target=_work, args=(to_do,), name="reading", daemon=True).start()
    waiting: deque[Future[Sheet]] = deque()
    rest = iter(files)
    try:
        while True:
            for file in itertools.islice(rest, _AHEAD - len(waiting)):
                waiting.append(Future())
                to_do.put((waiting[-1], file, function))
            if not waiting:
                return
            yield waiting.popleft().result()
    finally:
        for future in waiting:
            future.cancel()
        for _ in range(number):
            to_do.put(None)


def cores() -> int:
    """How many cores this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _work(to_do: "SimpleQueue[_Task | None]") -> None:
    """Read one file after another until told that there are no more."""
    while (task := to_do.get()) is not None:
        future, file, function = task
        if not future.set_running_or_notify_cancel():
            continue
        try:
            name, data = (file.name, file.read_bytes()) if isinstance(file, Path) else file
            future.set_result(read_document(name, data, function=function))
        except Exception as error:  # noqa: BLE001  it is raised where the sheet is asked for
            future.set_exception(error)
