"""The filter of system calls judges as it should, on machines that are not at hand as well."""

import errno
import re
from pathlib import Path

import pytest

from parsers.process import seccomp, syscalls
from parsers.process.syscalls import MACHINES

ALLOWED, KILLED = "allowed", "killed"
HEADERS = {
    "x86_64": Path("/usr/include/x86_64-linux-gnu/asm/unistd_64.h"),
    "aarch64": Path("/usr/include/asm-generic/unistd.h"),
}
OWN_PID = 4711
# Numbers in the kernel's headers of calls that a child must not have: x86-64, arm64.
FORBIDDEN = {
    "socket": (41, 198), "connect": (42, 203), "sendto": (44, 206), "sendmsg": (46, 211), "execve": (59, 221), "execveat": (322, 281),
    "ptrace": (101, 117), "unlinkat": (263, 35), "renameat2": (316, 276), "mkdirat": (258, 34), "io_uring_setup": (425, 425), "bpf": (321, 280),
    "unshare": (272, 97), "setns": (308, 268), "mount": (165, 40), "memfd_create": (319, 279), "pidfd_open": (434, 434),
    "process_vm_writev": (311, 271), "perf_event_open": (298, 241), "keyctl": (250, 219), "shmget": (29, 194), "prctl": (157, 167),
}  # fmt: skip


def judged(machine: str, number: int, *arguments: int, said_machine: int | None = None) -> str:
    """Run the filter on one call, as the kernel does (Linux, Documentation/networking/filter.rst)."""
    column, name = MACHINES[machine]
    words = {0: number, 4: name if said_machine is None else said_machine}
    for position, argument in enumerate(arguments):
        words[16 + 8 * position], words[20 + 8 * position] = argument & 0xFFFF_FFFF, argument >> 32
    program = seccomp.program(column=column, machine=name, own_pid=OWN_PID)
    line, held = 0, 0
    while True:
        code, yes, no, value = program[line]
        line += 1
        match code:
            case 0x20:
                held = words[value]
            case 0x15:
                line += yes if held == value else no
            case 0x35:
                line += yes if held >= value else no
            case 0x45:
                line += yes if held & value else no
            case 0x06:
                return {0x7FFF0000: ALLOWED, 0x80000000: KILLED}.get(value) or errno.errorcode[value & 0xFFFF]


@pytest.mark.parametrize("machine", HEADERS)
def test_the_numbers_are_the_kernels(machine):
    """Source: the kernel's own headers, where they are installed."""
    if not HEADERS[machine].is_file():
        pytest.skip(f"needs the kernel's header {HEADERS[machine]}")
    text = HEADERS[machine].read_text(encoding="utf-8")
    kernel = {name: int(number) for name, number in re.findall(r"#define __NR(?:3264)?_(\w+)\s+(\d+)", text)}
    kernel.setdefault("newfstatat", kernel.get("fstatat", -1))
    column = MACHINES[machine][0]
    single = {"open": syscalls.OPEN, "openat": syscalls.OPENAT, "clone": syscalls.CLONE, "prlimit64": syscalls.PRLIMIT64}
    ours = syscalls.FREE | syscalls.TO_ITSELF | syscalls.NOT_A_TERMINAL | syscalls.UNKNOWN | single

    assert {name: numbers[column] for name, numbers in ours.items() if numbers[column] is not None} == {
        name: kernel[name] for name, numbers in ours.items() if numbers[column] is not None
    }


@pytest.mark.parametrize("machine", MACHINES)
@pytest.mark.parametrize("name", FORBIDDEN)
def test_a_dangerous_call_is_not_permitted(machine, name):
    """It is on no list, and so is denied."""
    assert judged(machine, FORBIDDEN[name][MACHINES[machine][0]]) == "EPERM"


@pytest.mark.parametrize("machine", MACHINES)
def test_files_are_opened_for_reading_only(machine):
    """Flags of asm-generic/fcntl.h: write 1, read and write 2, create 0x40, truncate 0x200, append 0x400."""
    openat = syscalls.OPENAT[MACHINES[machine][0]]
    close_on_exec = 0x80000

    assert judged(machine, openat, 0, 0, close_on_exec) == ALLOWED
    assert {judged(machine, openat, 0, 0, flag) for flag in (1, 2, 0x40, 0x200, 0x400, 0x410000)} == {"EPERM"}


@pytest.mark.parametrize("machine", MACHINES)
def test_threads_start_and_processes_do_not(machine):
    """The flag CLONE_THREAD of linux/sched.h, 0x10000, tells one from the other."""
    clone = syscalls.CLONE[MACHINES[machine][0]]

    assert judged(machine, clone, 0x3D0F00) == ALLOWED
    assert judged(machine, clone, 0x1200011) == "EPERM"
    assert judged(machine, 435) == "ENOSYS"


@pytest.mark.parametrize("machine", MACHINES)
def test_signals_go_to_the_process_itself_only(machine):
    """abort() works; nobody else is touched."""
    column = MACHINES[machine][0]
    for numbers in syscalls.TO_ITSELF.values():
        assert judged(machine, numbers[column], OWN_PID) == ALLOWED
        assert {judged(machine, numbers[column], other) for other in (0, 1, OWN_PID + 1, 0xFFFF_FFFF_FFFF_FFFF)} == {"EPERM"}


@pytest.mark.parametrize("machine", MACHINES)
def test_limits_are_asked_for_and_never_set(machine):
    """A pointer to new limits, even one with an empty lower half, is refused."""
    prlimit = syscalls.PRLIMIT64[MACHINES[machine][0]]

    assert judged(machine, prlimit, 0, 9, 0) == ALLOWED
    assert judged(machine, prlimit, 0, 9, 0x7FFF_0000_1000) == "EPERM"
    assert judged(machine, prlimit, 0, 9, 0x7FFF_0000_0000) == "EPERM"


def test_calls_of_another_kind_of_machine_end_the_process():
    """32-bit and x32 calls have other numbers, under which everything would pass."""
    i386 = 0x4000_0003

    assert judged("x86_64", 0, said_machine=i386) == KILLED
    assert judged("x86_64", 0x4000_0000 | 59) == KILLED
