"""Give up, for good, whatever reading one document does not need.

Every step is tried; one that the system does not have is named with the reason, and the sheet says so.
"""

from collections.abc import Callable

from parsers.process import landlock, libc, rlimits, seccomp
from parsers.process.limits import Limits

ON = "on"
CORE_STEPS = frozenset({"memory", "processor", "no_new_privileges", "landlock", "seccomp"})
"""Without one of these a sheet is flagged ``reduced_isolation``."""


def enter(limits: Limits) -> dict[str, str]:
    """Shut this process in; it must have one thread and all its heavy imports done.

    Args:
        limits: What it may use from here on.

    Returns:
        By step: ``on``, or why it is not.
    """
    return {name: _tried(step) for name, step in _steps(limits).items()}


def is_reduced(isolation: dict[str, str]) -> bool:
    """Whether a step is missing that matters most.

    Args:
        isolation: What ``enter`` achieved.
    """
    return any(isolation.get(step) != ON for step in CORE_STEPS)


def _tried(step: Callable[[], None]) -> str:
    try:
        step()
    except OSError as error:
        return str(error) or type(error).__name__
    return ON


def _steps(limits: Limits) -> dict[str, Callable[[], None]]:
    """The steps in order: what later ones need comes first, and the filter of system calls last."""
    folders = landlock.needed_folders()
    return {
        "namespaces": libc.leave_namespaces,
        "dies_with_parent": libc.die_with_parent,
        "hidden_memory": libc.hide_memory,
        "memory": lambda: rlimits.limit_memory(limits),
        "processor": lambda: rlimits.limit_processor(limits),
        "files": lambda: rlimits.limit_files(limits),
        "no_new_privileges": libc.take_no_new_privileges,
        "landlock": lambda: landlock.read_only(folders),
        "seccomp": seccomp.keep_to_reading,
    }
