"""What a freshly forked child does: shut itself in, read one document, answer, end."""

import importlib
import json
import os
import signal
from collections.abc import Callable
from typing import Any

from parsers.process import jail, wire
from parsers.process.limits import MEBIBYTE, MOST_ANSWER_BYTES, MOST_DOCUMENT_BYTES, Limits

Task = Callable[..., bytes]

MOST_HEADER_BYTES = MEBIBYTE
ANSWER, FAULT = b"A", b"F"


def run_on_pipes() -> None:
    """Do one job that comes on standard input and is answered on standard output."""
    run(os.dup(0), os.dup(1))


def run(hearing: int, speaking: int) -> None:
    """Do one job.

    Args:
        hearing: Where the asker's frames come from.
        speaking: Where the answer goes; every other descriptor has been closed.
    """
    _forget_the_terminal()
    header = json.loads(wire.receive(hearing, most=MOST_HEADER_BYTES))
    task: Task = named(header["task"])
    if "function" in header["arguments"]:
        named(header["arguments"]["function"])
    limits = Limits(**header["limits"])
    isolation = jail.enter(limits) if header["jailed"] else {}
    wire.send(speaking, json.dumps(isolation).encode())
    data = wire.receive(hearing, most=MOST_DOCUMENT_BYTES)
    wire.send(speaking, _answer(task, data, header["arguments"]))


def named(task: str) -> Callable[..., Any]:
    """The function that a job names; it is imported before the child shuts itself in, since its file may be out of sight afterwards.

    Args:
        task: ``module:name``.
    """
    module, _, name = task.partition(":")
    function: Callable[..., Any] = getattr(importlib.import_module(module), name)
    return function


def _answer(task: Task, data: bytes, arguments: dict[str, object]) -> bytes:
    """The task's answer, or the name of the error that it ended with: whatever a broken file raises, the asker hears of it."""
    try:
        content = ANSWER + task(data, **arguments)
    except Exception as error:  # noqa: BLE001  the libraries raise errors of more kinds than can be named
        return FAULT + json.dumps([type(error).__name__, str(error)[:500]]).encode()
    if len(content) > MOST_ANSWER_BYTES:
        return FAULT + json.dumps(["AnswerTooLong", f"{len(content)} bytes"]).encode()
    return content


def _forget_the_terminal() -> None:
    """Nothing that a library prints reaches the terminal or a log."""
    nothing = os.open(os.devnull, os.O_RDWR)
    for descriptor in (0, 1, 2):
        os.dup2(nothing, descriptor)
    os.close(nothing)
    for name in ("SIGCHLD", "SIGTERM", "SIGINT"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), signal.SIG_DFL)
