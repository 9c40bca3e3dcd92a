"""The program's one way to start children."""

import atexit
import os
import socket
import threading

from parsers.process.fork_server import PRELOADED, ForkServer
from parsers.process.spawner import Spawner

Server = ForkServer | Spawner

_running: Server | None = None
_owner = 0
_starting = threading.Lock()


def start(preload: tuple[str, ...] = PRELOADED) -> Server:
    """Start the program's fork server, or give the one that runs.

    Call it first thing, before the rest of the program is loaded: the server loads its modules meanwhile.

    Args:
        preload: Modules that every child finds loaded.

    Returns:
        The server; it ends with the program. Where the system cannot fork, a stand-in that starts a program for each job.
    """
    global _running, _owner
    with _starting:
        if _running is None or _owner != os.getpid() or not _running.is_alive():
            _running, _owner = ForkServer(preload) if can_fork() else Spawner(), os.getpid()
            atexit.register(_running.close)
        return _running


def can_fork() -> bool:
    """Whether this system forks processes and passes descriptors between them."""
    return hasattr(os, "fork") and hasattr(socket, "send_fds")
