"""System calls by name, with their numbers on x86-64 and arm64.

Numbers: the Linux kernel's asm/unistd_64.h (x86-64) and asm-generic/unistd.h (arm64); None where a machine has no such call.
"""

MACHINES = {"x86_64": (0, 0xC000_003E), "aarch64": (1, 0xC000_00B7)}
"""By machine: the column in the tables below, and the name that the kernel gives the machine's calls (linux/audit.h)."""

Numbers = tuple[int | None, int | None]

FREE: dict[str, Numbers] = {
    # what is open already; opening is judged apart
    "read": (0, 63), "write": (1, 64), "close": (3, 57), "lseek": (8, 62), "pread64": (17, 67), "readv": (19, 65), "writev": (20, 66),
    "dup": (32, 23), "dup2": (33, None), "dup3": (292, 24), "fcntl": (72, 25), "fadvise64": (221, 223), "readahead": (187, 213),
    "poll": (7, None), "ppoll": (271, 73), "select": (23, None), "pselect6": (270, 72),
    # looking at files
    "stat": (4, None), "fstat": (5, 80), "lstat": (6, None), "newfstatat": (262, 79), "statx": (332, 291), "access": (21, None),
    "faccessat": (269, 48), "faccessat2": (439, 439), "readlink": (89, None), "readlinkat": (267, 78), "getdents64": (217, 61), "getcwd": (79, 17),
    # memory
    "mmap": (9, 222), "mprotect": (10, 226), "munmap": (11, 215), "brk": (12, 214), "mremap": (25, 216), "madvise": (28, 233),
    # own signals and threads
    "rt_sigaction": (13, 134), "rt_sigprocmask": (14, 135), "rt_sigreturn": (15, 139), "rt_sigpending": (127, 136), "sigaltstack": (131, 132),
    "restart_syscall": (219, 128), "futex": (202, 98), "set_robust_list": (273, 99), "get_robust_list": (274, 100), "rseq": (334, 293),
    "membarrier": (324, 283), "set_tid_address": (218, 96), "arch_prctl": (158, None), "sched_yield": (24, 124), "sched_getaffinity": (204, 123),
    "sched_getparam": (143, 121), "sched_getscheduler": (145, 120), "sched_get_priority_max": (146, 125), "sched_get_priority_min": (147, 126),
    "getcpu": (309, 168), "exit": (60, 93), "exit_group": (231, 94),
    # clocks, chance, and who and where one is
    "clock_gettime": (228, 113), "clock_getres": (229, 114), "clock_nanosleep": (230, 115), "nanosleep": (35, 101), "gettimeofday": (96, 169),
    "time": (201, None), "times": (100, 153), "getrandom": (318, 278), "getrusage": (98, 165), "getrlimit": (97, 163), "getpid": (39, 172),
    "gettid": (186, 178), "getppid": (110, 173), "getuid": (102, 174), "geteuid": (107, 175), "getgid": (104, 176), "getegid": (108, 177),
    "getpgrp": (111, None), "uname": (63, 160), "sysinfo": (99, 179),
}  # fmt: skip
"""Calls that do no harm: they stay."""

OPEN: Numbers = (2, None)
OPENAT: Numbers = (257, 56)
CLONE: Numbers = (56, 220)
PRLIMIT64: Numbers = (302, 261)
TO_ITSELF: dict[str, Numbers] = {"kill": (62, 129), "tgkill": (234, 131)}
"""Signals: allowed to the process itself, as abort() sends one."""
NOT_A_TERMINAL: dict[str, Numbers] = {"ioctl": (16, 29)}
UNKNOWN: dict[str, Numbers] = {"clone3": (435, 435), "openat2": (437, 437)}
"""Their arguments lie in memory that a filter cannot read; told that they do not exist, the C library takes the older calls."""
