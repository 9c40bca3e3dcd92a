"""The parent's handle on the fork server: start it, ask it to have one document read, hear what came of it."""

import contextlib
import json
import socket
import struct
import subprocess
import threading
from dataclasses import replace

from parsers.process import zygote
from parsers.process.conversation import converse
from parsers.process.job import Job, Outcome
from parsers.process.program import command, environment

PRELOADED = ("pypdfium2", "pdfplumber", "parsers.process.child", "parsers.process.tasks", "parsers.pipeline", "parsers.render")
"""What every child finds loaded; imports would cost more than reading."""
_PROGRAM = f"from {zygote.__name__} import main; main()"
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
            self._process = subprocess.Popen(  # noqa: S603  our own module
                command(_PROGRAM, str(theirs.fileno()), *preload),
                pass_fds=[theirs.fileno()],
                env=environment(),
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                start_new_session=True,
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
            said = converse(ours.fileno(), ours.fileno(), job)
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


def _bound_waiting(end: socket.socket, patience_s: float) -> None:
    """Let no read or write on a socket wait for longer, should the fork server itself hang."""
    for option in (socket.SO_RCVTIMEO, socket.SO_SNDTIMEO):
        end.setsockopt(socket.SOL_SOCKET, option, struct.pack("ll", int(patience_s), 0))


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
