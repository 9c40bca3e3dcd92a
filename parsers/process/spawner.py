"""The way for systems that cannot fork: a new program for each job. It takes longer, and the system's limits are fewer."""

import subprocess
import threading
from dataclasses import replace

from parsers.process import child
from parsers.process.conversation import converse
from parsers.process.job import Job, Outcome
from parsers.process.program import command, environment

_PROGRAM = f"from {child.__name__} import run_on_pipes; run_on_pipes()"


class Spawner:
    """Starts one program for each job; a stand-in for the fork server."""

    def ask(self, job: Job) -> Outcome:
        """Have one job done by a program of its own; several threads may ask at the same time.

        Args:
            job: What to do with which document.

        Returns:
            The answer, or how the program ended without one; what it used is not known.
        """
        overdue = threading.Event()
        with subprocess.Popen(  # noqa: S603  our own module
            command(_PROGRAM), stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, env=environment(), bufsize=0
        ) as process:
            assert process.stdin is not None  # noqa: S101  both are pipes, as asked for
            assert process.stdout is not None  # noqa: S101
            timer = threading.Timer(job.limits.wall_s, _end, (process, overdue))
            timer.start()
            try:
                said = converse(process.stdout.fileno(), process.stdin.fileno(), job)
            finally:
                timer.cancel()
                process.kill()
        killed_by = -process.returncode if process.returncode < 0 else 0
        return replace(said, overdue=overdue.is_set(), signal=0 if said.answer is not None else killed_by)

    def is_alive(self) -> bool:
        """There is nothing that could have died."""
        return True

    def close(self) -> None:
        """There is nothing to end."""


def _end(process: subprocess.Popen[bytes], overdue: threading.Event) -> None:
    overdue.set()
    process.kill()
