"""The parent's handle on the fork server: start it, ask it to have one document read, hear what came of it."""

import atexit
import contextlib
import json
import os
import socket
import struct
import subprocess
import sys
import threading
from dataclasses import asdict, replace

from parsers.process import child, wire, zygote
from parsers.process.job import Job, Outcome
from parsers.process.limits import MOST_ANSWER_BYTES
from parsers.process.shape import clean

PRELOADED = ("pypdfium2", "pdfplumber", "parsers.process.child", "parsers.process.tasks", "parsers.pipeline", "parsers.render")
"""What every child finds loaded; imports would cost more than reading."""
_KEPT_ENVIRONMENT = ("LANG", "LC_ALL", "LD_LIBRARY_PATH", "SYSTEMROOT", "OPENBLAS_CORETYPE", "OPENBLAS_L2_SIZE")
_ENVIRONMENT = {"PYTHONHASHSEED": "0", "PYTHONDONTWRITEBYTECODE": "1", "OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1"}
"""A fixed order of sets, so that the same file gives the same answer; no thread in the process that forks."""
_PROGRAM = f"from {zygote.__name__} import main; main()"
_MOST_SAID = 64 * 1024
_SLACK_S = 30.0
"""How long after the child's own time the parent still believes that the fork server works. [s]"""


class ForkServerError(RuntimeError):
    """The fork server itself cannot be reached; the document is not to blame."""


class ForkServer:
    """A process of its own that has the heavy modules loaded and forks one child for each job.

    It is started as a new program, so the parent may have threads; they are never copied.

    Args:
        preload: Modules that every child finds loaded.
    """

    def __init__(self, preload: tuple[str, ...] = PRELOADED) -> None:
        self._lock = threading.Lock()
        self._control, theirs = socket.socketpair()
        with theirs:
            command = [sys.executable, "-P", "-c", _PROGRAM, str(theirs.fileno()), *preload]
            self._process = subprocess.Popen(  # noqa: S603  our own module
                command, pass_fds=[theirs.fileno()], env=_environment(), stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, start_new_session=True
            )

    @property
    def pid(self) -> int:
        """Process number of the server."""
        return self._process.pid

    def close(self) -> None:
        """End the server and the children that are still at work."""
        self._control.close()
        self._process.wait()

    def is_alive(self) -> bool:
        """Whether the server still runs."""
        return self._process.poll() is None

    def ask(self, job: Job) -> Outcome:
        """Have one job done by a child of its own; several threads may ask at the same time.

        Args:
            job: What to do with which document.

        Returns:
            The answer, or how the child ended without one.

        Raises:
            ForkServerError: The server does not answer.
        """
        with contextlib.ExitStack() as open_ones:
            ours, speaking = (open_ones.enter_context(end) for end in socket.socketpair())
            ending, told = (open_ones.enter_context(end) for end in socket.socketpair())
            self._request(job, speaking, told)
            _bound_waiting(ours, job.limits.wall_s + _SLACK_S)
            said = _converse(ours.fileno(), job)
            ours.close()
            return _ended(ending, said, patience_s=job.limits.wall_s + _SLACK_S)

    def _request(self, job: Job, speaking: socket.socket, told: socket.socket) -> None:
        try:
            with self._lock:
                socket.send_fds(self._control, [zygote.REQUEST.pack(job.limits.wall_s)], [speaking.fileno(), told.fileno()])
        except OSError as error:
            raise ForkServerError("The process that starts the reading children is gone; start the program again.") from error
        finally:
            speaking.close()
            told.close()


def _converse(descriptor: int, job: Job) -> Outcome:
    """Hand over the job and hear the answer; a child that dies in between is no error here."""
    isolation: dict[str, str] = {}
    header = {"task": job.task, "limits": asdict(job.limits), "arguments": dict(job.arguments), "jailed": job.jailed}
    try:
        wire.send(descriptor, json.dumps(header).encode())
        isolation = json.loads(wire.receive(descriptor, most=_MOST_SAID))
        wire.send(descriptor, job.data)
        kind, said = _split(wire.receive(descriptor, most=MOST_ANSWER_BYTES + 1))
    except wire.TooLongError as error:
        return Outcome(fault="AnswerTooLong", words=str(error), isolation=isolation)
    except (OSError, wire.FrameError):
        return Outcome(isolation=isolation)
    if kind == child.ANSWER:
        return Outcome(answer=said, isolation=isolation)
    fault, words = _fault(said)
    return Outcome(fault=fault, words=words, isolation=isolation)


def _bound_waiting(end: socket.socket, patience_s: float) -> None:
    """Let no read or write on a socket wait for longer, should the fork server itself hang."""
    for option in (socket.SO_RCVTIMEO, socket.SO_SNDTIMEO):
        end.setsockopt(socket.SOL_SOCKET, option, struct.pack("ll", int(patience_s), 0))


def _split(content: bytes) -> tuple[bytes, bytes]:
    return content[:1], content[1:]


def _fault(said: bytes) -> tuple[str, str]:
    """The error that a child reports, as far as it can be understood."""
    try:
        fault, words = (clean(str(item)) for item in json.loads(said))
    except (ValueError, TypeError, RecursionError):
        return "NoError", "the child's answer cannot be understood"
    return fault, words


def _ended(ending: socket.socket, said: Outcome, *, patience_s: float) -> Outcome:
    """Add how the child ended; hanging up first tells the server to kill a child that is still at work."""
    ending.settimeout(patience_s)
    content = bytearray()
    with contextlib.suppress(OSError):
        ending.shutdown(socket.SHUT_WR)
        while piece := ending.recv(4096):
            content += piece
    if not content:
        raise ForkServerError("The process that starts the reading children did not say how one ended; start the program again.")
    return replace(said, **json.loads(content))


def _environment() -> dict[str, str]:
    """Nothing of the parent's environment but what programs need to run: no secret reaches a child."""
    kept = {name: os.environ[name] for name in _KEPT_ENVIRONMENT if name in os.environ}
    return kept | _ENVIRONMENT | {"PYTHONPATH": os.pathsep.join(path for path in sys.path if path)}


_running: ForkServer | None = None
_owner = 0
_starting = threading.Lock()


def start(preload: tuple[str, ...] = PRELOADED) -> ForkServer:
    """Start the program's one fork server, or give the one that runs.

    Call it first thing, before the rest of the program is loaded: the server loads its modules meanwhile.

    Args:
        preload: Modules that every child finds loaded.

    Returns:
        The server; it ends with the program.
    """
    global _running, _owner
    with _starting:
        if _running is None or _owner != os.getpid() or not _running.is_alive():
            _running, _owner = ForkServer(preload), os.getpid()
            atexit.register(_running.close)
        return _running
