"""Landlock: from here on this process sees only the folders that it needs to run, and those only for reading.

Numbers and structures are the Linux kernel's: include/uapi/linux/landlock.h; the calls have the same numbers on every machine.
"""

import ctypes
import os
import struct
import sys
import sysconfig
from collections.abc import Iterable
from functools import cache
from pathlib import Path

from parsers.process.libc import call

_CREATE_RULESET, _ADD_RULE, _RESTRICT_SELF = 444, 445, 446
_ASK_VERSION, _PATH_BENEATH = 1, 1
_READ_FILE, _READ_DIR = 1 << 2, 1 << 3
_FIRST_RIGHTS = (1 << 13) - 1
_LATER_RIGHTS = {2: 1 << 13, 3: 1 << 14, 5: 1 << 15}
"""Rights over files that came with a later version: to re-parent, to truncate, to control devices."""
_NET_VERSION, _BIND_AND_CONNECT = 4, 0b11
_SCOPE_VERSION, _ABSTRACT_SOCKETS_AND_SIGNALS = 6, 0b11

FONTS = ("/usr/share/fonts", "/usr/local/share/fonts", "/usr/share/X11/fonts")
LIBRARIES = ("/usr/lib", "/usr/lib64", "/usr/local/lib", "/lib", "/lib64")
OWN_PACKAGES = ("parsers", "service")


@cache
def needed_folders() -> tuple[str, ...]:
    """Folders that reading needs: Python's own, installed packages, the reader's modules, shared libraries and fonts.

    The fork server looks for them once, after its modules are loaded; its children find the answer.
    """
    installed = [sysconfig.get_path(kind) for kind in ("stdlib", "platstdlib", "purelib", "platlib")]
    own = [str(Path(sys.modules[name].__file__ or "").parent) for name in OWN_PACKAGES if name in sys.modules and sys.modules[name].__file__]
    return tuple(dict.fromkeys(folder for folder in (*installed, *own, *LIBRARIES, *FONTS) if folder and Path(folder).is_dir()))


def read_only(folders: Iterable[str]) -> None:
    """Give up every file outside some folders, every change to files, TCP, and signals to other processes.

    Args:
        folders: What may still be read.

    Raises:
        CallError: The kernel has no Landlock, or refuses.
    """
    version = call("syscall", _CREATE_RULESET, 0, 0, _ASK_VERSION)
    rules = _ruleset(version)
    try:
        for folder in folders:
            _allow(rules, folder)
        call("syscall", _RESTRICT_SELF, rules, 0)
    finally:
        os.close(rules)


def _ruleset(version: int) -> int:
    """A descriptor of a rule set that handles every right the kernel knows."""
    files = _FIRST_RIGHTS
    for since, right in _LATER_RIGHTS.items():
        files |= right if version >= since else 0
    network = _BIND_AND_CONNECT if version >= _NET_VERSION else 0
    scope = _ABSTRACT_SOCKETS_AND_SIGNALS if version >= _SCOPE_VERSION else 0
    wanted = struct.pack("QQQ", files, network, scope)
    return call("syscall", _CREATE_RULESET, ctypes.create_string_buffer(wanted, len(wanted)), len(wanted), 0)


def _allow(rules: int, folder: str) -> None:
    beneath = os.open(folder, os.O_PATH | os.O_CLOEXEC)
    try:
        rule = struct.pack("=Qi", _READ_FILE | _READ_DIR, beneath)
        call("syscall", _ADD_RULE, rules, _PATH_BENEATH, ctypes.create_string_buffer(rule, len(rule)), 0)
    finally:
        os.close(beneath)
