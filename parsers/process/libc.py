"""The C library's calls that Python does not offer, on Linux; elsewhere there are none."""

import ctypes
import os
import platform
import sys

LIBC = ctypes.CDLL(None, use_errno=True) if sys.platform.startswith("linux") else None
MACHINE = platform.machine()

_PR_SET_PDEATHSIG, _PR_SET_DUMPABLE, _PR_SET_NO_NEW_PRIVS = 1, 4, 38
_SIGKILL = 9


class CallError(OSError):
    """The kernel refused a call, or has none such."""


def call(name: str, *arguments: int | ctypes.Array[ctypes.c_char]) -> int:
    """Call the C library.

    Args:
        name: The function.
        arguments: Whole numbers, and buffers for pointers.

    Returns:
        What the function returned.

    Raises:
        CallError: It returned a negative number, or this is not Linux.
    """
    if LIBC is None:
        raise CallError("not on Linux")
    function = getattr(LIBC, name)
    function.restype = ctypes.c_long if name == "syscall" else ctypes.c_int
    result = int(function(*(ctypes.c_long(item) if isinstance(item, int) else item for item in arguments)))
    if result < 0:
        raise CallError(os.strerror(ctypes.get_errno()))
    return result


def take_no_new_privileges() -> None:
    """No program that is started later can gain rights; seccomp and Landlock ask for this first."""
    call("prctl", _PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0)


def die_with_parent() -> None:
    """Be killed when the process that forked this one ends."""
    call("prctl", _PR_SET_PDEATHSIG, _SIGKILL, 0, 0, 0)


def hide_memory() -> None:
    """Nobody may trace this process or read its memory."""
    call("prctl", _PR_SET_DUMPABLE, 0, 0, 0, 0)


def leave_namespaces() -> None:
    """Go where there is no network, no shared memory of others and no user but this one."""
    new_ipc, new_user, new_net = 0x0800_0000, 0x1000_0000, 0x4000_0000
    call("unshare", new_ipc | new_user | new_net)
