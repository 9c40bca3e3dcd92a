"""What code that has taken over a reading child might try; each attempt gives ``happened`` where nothing stopped it."""

import colorsys
import ctypes
import mmap
import os
import resource
import signal
import socket
import sys
import threading
from pathlib import Path

HAPPENED = b"happened"
colorsys_file = colorsys.__file__


def read_a_file_of_the_system(_: bytes) -> bytes:
    """Look at the list of users."""
    Path("/etc/passwd").read_bytes()
    return HAPPENED


def read_a_file_of_this_user(_: bytes) -> bytes:
    """Look at a file beside the program, as the store is one."""
    Path(__file__).read_bytes()
    return HAPPENED


def list_a_folder(_: bytes) -> bytes:
    """Look around at the top."""
    list(Path("/").iterdir())
    return HAPPENED


def write_a_file(_: bytes) -> bytes:
    """Leave something behind."""
    Path(__file__).with_name("escaped").write_text("here", encoding="utf-8")
    return HAPPENED


def delete_a_file(_: bytes) -> bytes:
    """Remove a file of the program."""
    Path(__file__).with_name("nothing-here").unlink()
    return HAPPENED


def connect_by_tcp(_: bytes) -> bytes:
    """Call out."""
    with socket.socket(socket.AF_INET, socket.SOCK_STREAM):
        return HAPPENED


def send_by_udp(_: bytes) -> bytes:
    """Call out in the other way."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM):
        return HAPPENED


def speak_to_a_local_service(_: bytes) -> bytes:
    """Call a service of this machine."""
    with socket.socket(socket.AF_UNIX, socket.SOCK_STREAM):
        return HAPPENED


def start_a_program(_: bytes) -> bytes:
    """Become a shell."""
    os.execv("/bin/sh", ["sh", "-c", "exit 0"])  # noqa: S606  it is tried, and must not happen
    return HAPPENED


def fork(_: bytes) -> bytes:
    """Become two."""
    if os.fork() == 0:
        os._exit(0)
    return HAPPENED


def signal_the_parent(_: bytes) -> bytes:
    """Ask whether the parent may be signalled."""
    os.kill(os.getppid(), 0)
    return HAPPENED


def signal_everybody(_: bytes) -> bytes:
    """Signal the whole group of processes."""
    os.kill(0, signal.SIGURG)
    return HAPPENED


def look_into_the_parent(_: bytes) -> bytes:
    """Read the parent's environment."""
    Path(f"/proc/{os.getppid()}/environ").read_bytes()
    return HAPPENED


def trace_the_parent(_: bytes) -> bytes:
    """Attach to the parent as a debugger does."""
    attach = 16
    if ctypes.CDLL(None, use_errno=True).ptrace(attach, os.getppid(), 0, 0) < 0:
        raise PermissionError
    return HAPPENED


def raise_the_memory_limit(_: bytes) -> bytes:
    """Ask for more memory than was given."""
    resource.setrlimit(resource.RLIMIT_AS, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
    return HAPPENED


def raise_the_time_limit(_: bytes) -> bytes:
    """Ask for more time than was given, up to what root may."""
    resource.prlimit(os.getpid(), resource.RLIMIT_CPU, (3600, 3600))
    return HAPPENED


def leave_the_jail(_: bytes) -> bytes:
    """Make another namespace, where one is master again."""
    new_user = 0x1000_0000
    if ctypes.CDLL(None, use_errno=True).unshare(new_user) < 0:
        raise PermissionError
    return HAPPENED


def make_memory_with_a_name(_: bytes) -> bytes:
    """Make a file in memory, to run it."""
    os.memfd_create("escape")
    return HAPPENED


def open_many_files(_: bytes) -> bytes:
    """Use up descriptors."""
    opened = [os.open(colorsys_file, os.O_RDONLY) for _ in range(100)]
    return HAPPENED if opened else b""


def take_much_memory(_: bytes) -> bytes:
    """Hold three gibibytes."""
    held = bytearray(3 << 30)
    return HAPPENED if held else b""


def find_secrets_in_the_environment(_: bytes) -> bytes:
    """Look for what the service was started with."""
    return HAPPENED if "SWITCHBANK_TEST_SECRET" in os.environ else b"none"


def start_a_thread(_: bytes) -> bytes:
    """Libraries start threads: this must work."""
    said: list[bytes] = []
    thread = threading.Thread(target=lambda: said.append(b"works"))
    thread.start()
    thread.join()
    return said[0]


def read_a_library_file(_: bytes) -> bytes:
    """Libraries load their tables late: this must work."""
    return b"works" if "def rgb_to_hsv" in Path(colorsys_file).read_text(encoding="utf-8") else b""


def map_memory(_: bytes) -> bytes:
    """Libraries ask for memory: this must work."""
    with mmap.mmap(-1, 1 << 20) as held:
        held[:5] = b"works"
        return held[:5]


def name_its_modules(_: bytes) -> bytes:
    """Whether a module was there when the child was born."""
    return b"works" if "pdfplumber" in sys.modules else b""
