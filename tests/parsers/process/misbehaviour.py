"""What reading a hostile file may do to the child: stand-ins for the reader, named by the tests."""

import os
import signal
import time
from pathlib import Path

from parsers.errors import DamagedError
from service.facts.reading import Sheet


def read(data: bytes, name: str) -> Sheet:
    """Read in an ordinary way: a file says in its last line how the child is to behave."""
    behave = data.rpartition(b"%")[2].decode()
    if behave in BEHAVIOURS:
        BEHAVIOURS[behave]()
    return Sheet(reader_version="child", file="child", sha256="child", part=f"PART OF {name}", pages=99)


def _hold_ever_more() -> None:
    held = []
    while True:
        held.append(bytearray(b"x") * (1 << 20))


def _turn_for_ever() -> None:
    while True:
        pass


def _sleep() -> None:
    time.sleep(3600)


def _recurse() -> None:
    _recurse()


def _raise() -> None:
    raise RuntimeError("\u202ereversed\x00")


def _open_a_door() -> None:
    Path("/etc/passwd").read_bytes()


BEHAVIOURS = {
    "memory": _hold_ever_more,
    "processor": _turn_for_ever,
    "sleep": _sleep,
    "recursion": _recurse,
    "error": _raise,
    "escape": _open_a_door,
    "abort": os.abort,
    "crash": lambda: os.kill(os.getpid(), signal.SIGSEGV),
    "leave": lambda: os._exit(0),
}


def draw(data: bytes, page: int, bbox: tuple[float, ...], mark: tuple[float, ...] | None) -> bytes:
    """Draw nothing: a picture's first bytes and what was asked; of a second page not even a picture."""
    said = f"{len(data)} {page} {bbox} {mark}".encode()
    return said if page == 2 else b"\x89PNG\r\n\x1a\n" + said


def refuse_to_draw(_: bytes, page: int, *__: object, **___: object) -> bytes:
    """Find that the document has no such page."""
    raise DamagedError(f"The document has no page {page}.")


def answer_too_much(_: bytes) -> bytes:
    """Give more than is taken."""
    return b"x" * (9 << 20)


def say_what_was_given(data: bytes, *, times: int) -> bytes:
    """Give back the document."""
    return data * times


def count_threads(_: bytes) -> bytes:
    """How many threads the child has, as the kernel counts them."""
    return str(len(list(Path("/proc/self/task").iterdir()))).encode()


def take_over_the_answer(_: bytes) -> bytes:
    """Speak past the code that frames answers, as code that has taken over the child would: announce four gigabytes."""
    os.write(3, b"\xff\xff\xff\xff" + b"x" * 1000)
    time.sleep(3600)
    return b""


def wait_a_moment(_: bytes) -> bytes:
    """Take half a second."""
    time.sleep(0.5)
    return b"done"


def sleep_without_a_word(_: bytes) -> bytes:
    """Hang."""
    time.sleep(3600)
    return b""
