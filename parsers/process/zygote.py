"""The fork server's own process: it has the heavy modules loaded, one thread, and never opens a document.

It is asked over one socket. Each request is the time that a child may take by the clock, with two sockets: one for the child to
speak to the asker, one on which the asker hears how the child ended; the asker closes the second when it wants no answer any more.
"""

import contextlib
import gc
import importlib
import json
import os
import selectors
import signal
import socket
import struct
import sys
import time
from dataclasses import dataclass

from parsers.process import child, landlock

REQUEST = struct.Struct("!I")
"""Time that a child may take by the clock. [s]"""


@dataclass(slots=True)
class _Child:
    ending: socket.socket
    due: float
    overdue: bool = False


def main() -> None:
    """Load the modules that are named on the command line and serve until the asker goes away."""
    control = socket.socket(fileno=int(sys.argv[1]))
    for module in sys.argv[2:]:
        # Why an error is let pass: a child that needs the module meets the same error and reports it.
        with contextlib.suppress(ImportError):
            importlib.import_module(module)
    landlock.needed_folders()
    # Why: what is loaded now stays for ever, and a collection in a child would only copy its pages.
    gc.collect()
    gc.freeze()
    Zygote(control).serve()


class Zygote:
    """Forks a child for each request, kills those whose time is up, and tells how each ended.

    Args:
        control: Where requests come from.
    """

    def __init__(self, control: socket.socket) -> None:
        self._control = control
        self._children: dict[int, _Child] = {}
        self._wake, wake = os.pipe2(os.O_NONBLOCK | os.O_CLOEXEC) if hasattr(os, "pipe2") else _quiet_pipe()
        signal.signal(signal.SIGCHLD, lambda *_: None)
        signal.set_wakeup_fd(wake, warn_on_full_buffer=False)
        self._selector = selectors.DefaultSelector()
        self._selector.register(control, selectors.EVENT_READ)
        self._selector.register(self._wake, selectors.EVENT_READ)

    def serve(self) -> None:
        """Work until the asker's socket closes; the children that are left then are killed."""
        while True:
            for key, _ in self._selector.select(self._patience_s()):
                if key.fileobj is self._control:
                    if not self._fork():
                        return self._kill(*self._children)
                elif key.fileobj == self._wake:
                    os.read(self._wake, 4096)
                else:
                    self._selector.unregister(key.fileobj)
                    self._kill(key.data)
            self._kill(*self._overdue())
            self._bury()

    def _fork(self) -> bool:
        """Fork one child; false when the asker is gone."""
        request, descriptors, _, _ = socket.recv_fds(self._control, REQUEST.size, 2)
        if len(request) < REQUEST.size or len(descriptors) != 2:
            return False
        speaking, ending = descriptors
        try:
            pid = os.fork()
        except OSError:
            # Why no answer: the asker sees both sockets closed and knows that the fault is not the document's.
            os.close(speaking)
            os.close(ending)
            return True
        if pid == 0:
            _become_child(speaking)
        os.close(speaking)
        heard = socket.socket(fileno=ending)
        self._children[pid] = _Child(ending=heard, due=time.monotonic() + REQUEST.unpack(request)[0])
        self._selector.register(heard, selectors.EVENT_READ, pid)
        return True

    def _patience_s(self) -> float | None:
        """Time until the next child is overdue."""
        due = [child.due for child in self._children.values() if not child.overdue]
        return max(0.0, min(due) - time.monotonic()) if due else None

    def _overdue(self) -> list[int]:
        now = time.monotonic()
        late = [pid for pid, child in self._children.items() if child.due <= now and not child.overdue]
        for pid in late:
            self._children[pid].overdue = True
        return late

    def _kill(self, *pids: int) -> None:
        for pid in pids:
            os.kill(pid, signal.SIGKILL)

    def _bury(self) -> None:
        """Tell the askers of all children that have ended."""
        while self._children:
            pid, status, used = os.wait4(-1, os.WNOHANG)
            if not pid:
                return
            child = self._children.pop(pid)
            with contextlib.suppress(KeyError):
                self._selector.unregister(child.ending)
            told = {
                "signal": os.WTERMSIG(status) if os.WIFSIGNALED(status) else 0,
                "overdue": child.overdue,
                "processor_s": used.ru_utime + used.ru_stime,
                "peak_bytes": used.ru_maxrss * (1 if sys.platform == "darwin" else 1024),
            }
            with contextlib.suppress(OSError):
                child.ending.sendall(json.dumps(told).encode())
            child.ending.close()


def _quiet_pipe() -> tuple[int, int]:
    read, write = os.pipe()
    os.set_blocking(read, False)
    os.set_blocking(write, False)
    return read, write


def _become_child(speaking: int) -> None:
    """Keep one socket, close all others, do the job and end without cleaning up what belongs to the parent."""
    code = 1
    try:
        signal.set_wakeup_fd(-1)
        kept = os.dup2(speaking, 3) if speaking != 3 else 3
        os.closerange(4, os.sysconf("SC_OPEN_MAX"))
        child.run(kept, kept)
        code = 0
    finally:
        os._exit(code)


if __name__ == "__main__":
    main()
