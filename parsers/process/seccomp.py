"""A seccomp filter: the kernel answers "not permitted" to every system call that reading a document does not need.

The program is classic BPF, put together here and handed to the kernel through ctypes; numbers are those of linux/seccomp.h,
linux/bpf_common.h, asm-generic/fcntl.h and linux/sched.h.
"""

import ctypes
import errno
import os
import struct

from parsers.process import syscalls
from parsers.process.libc import MACHINE, CallError, call

Instruction = tuple[int, int, int, int]

_LOAD, _IF_EQUAL, _IF_AT_LEAST, _IF_ANY_BIT, _RETURN = 0x20, 0x15, 0x35, 0x45, 0x06
_ALLOW, _KILL, _ERRNO = 0x7FFF_0000, 0x8000_0000, 0x0005_0000
_AT_NUMBER, _AT_MACHINE, _AT_ARGUMENTS = 0, 4, 16
_X32_CALLS = 0x4000_0000
_OPENED_FOR_WRITING = 0x3 | 0x40 | 0x200 | 0x400 | 0x40_0000
"""O_WRONLY and O_RDWR, O_CREAT, O_TRUNC, O_APPEND, the bit of O_TMPFILE."""
_CLONE_THREAD = 0x1_0000
_PR_SET_SECCOMP, _FILTER = 22, 2


def keep_to_reading() -> None:
    """Give up every system call but the harmless ones; threads stay, processes and files opened for writing do not.

    Raises:
        CallError: The kernel refuses, or this machine's calls are not known here.
    """
    if MACHINE not in syscalls.MACHINES:
        raise CallError(f"system calls of {MACHINE} are not known here")
    column, machine = syscalls.MACHINES[MACHINE]
    code = b"".join(struct.pack("HBBI", *instruction) for instruction in program(column=column, machine=machine, own_pid=os.getpid()))
    instructions = ctypes.create_string_buffer(code, len(code))
    described = struct.pack("HxxxxxxQ", len(code) // 8, ctypes.addressof(instructions))
    call("prctl", _PR_SET_SECCOMP, _FILTER, ctypes.create_string_buffer(described, len(described)), 0, 0)


def program(*, column: int, machine: int, own_pid: int) -> list[Instruction]:
    """The filter's instructions.

    Args:
        column: Which column of the tables of numbers.
        machine: The kernel's name for the machine's calls; calls of another kind kill the process.
        own_pid: The process that may be sent signals.

    Returns:
        Instructions in order.
    """
    told_denied, told_no_terminal, told_unknown = (_ERRNO | number for number in (errno.EPERM, errno.ENOTTY, errno.ENOSYS))
    lines: list[Instruction] = [(_LOAD, 0, 0, _AT_MACHINE), (_IF_EQUAL, 1, 0, machine), (_RETURN, 0, 0, _KILL), (_LOAD, 0, 0, _AT_NUMBER)]
    lines += [(_IF_AT_LEAST, 0, 1, _X32_CALLS), (_RETURN, 0, 0, _KILL)]
    for table, told in ((syscalls.FREE, _ALLOW), (syscalls.NOT_A_TERMINAL, told_no_terminal), (syscalls.UNKNOWN, told_unknown)):
        for numbers in table.values():
            lines += _when(numbers[column], [(_RETURN, 0, 0, told)])
    for position, numbers in ((1, syscalls.OPEN), (2, syscalls.OPENAT)):
        lines += _when(numbers[column], [_low_half(position), (_IF_ANY_BIT, 0, 1, _OPENED_FOR_WRITING), (_RETURN, 0, 0, told_denied)])
    lines += _when(syscalls.CLONE[column], [_low_half(0), (_IF_ANY_BIT, 1, 0, _CLONE_THREAD), (_RETURN, 0, 0, told_denied)])
    for numbers in syscalls.TO_ITSELF.values():
        lines += _when(numbers[column], [_low_half(0), (_IF_EQUAL, 1, 0, own_pid), (_RETURN, 0, 0, told_denied)])
    new_limit = 2
    asks_only = [_low_half(new_limit), (_IF_EQUAL, 0, 2, 0), _high_half(new_limit), (_IF_EQUAL, 1, 0, 0), (_RETURN, 0, 0, told_denied)]
    lines += _when(syscalls.PRLIMIT64[column], asks_only)
    return [*lines, (_RETURN, 0, 0, told_denied)]


def _when(number: int | None, then: list[Instruction]) -> list[Instruction]:
    """Judge one call; what passes its judgement is allowed."""
    if number is None:
        return []
    block = [*then, (_RETURN, 0, 0, _ALLOW)] if len(then) > 1 else then
    return [(_IF_EQUAL, 0, len(block), number), *block]


def _low_half(argument: int) -> Instruction:
    return (_LOAD, 0, 0, _AT_ARGUMENTS + 8 * argument)


def _high_half(argument: int) -> Instruction:
    return (_LOAD, 0, 0, _AT_ARGUMENTS + 8 * argument + 4)
