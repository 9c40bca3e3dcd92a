"""The limits that every Unix keeps: memory, processor time, files."""

import importlib
from importlib.util import find_spec
from typing import Any

from parsers.process.limits import Limits

# Why not imported plainly: Windows has no such module.
resource: Any = importlib.import_module("resource") if find_spec("resource") else None


def limit(name: str, most: int, *, grace: int = 0) -> None:
    """Set one limit for good.

    Args:
        name: The system's name for it.
        most: The most that may be used.
        grace: By how much the end without warning lies above the first signal.

    Raises:
        OSError: The system has no such limit, or refuses.
    """
    if resource is None or not hasattr(resource, name):
        raise OSError("this system has no such limit")
    kind = getattr(resource, name)
    _, hard = resource.getrlimit(kind)
    if hard != resource.RLIM_INFINITY:
        most = min(most, hard - grace)
    try:
        resource.setrlimit(kind, (most, most + grace))
    except ValueError as error:
        raise OSError(str(error)) from error


def limit_memory(limits: Limits) -> None:
    """Address space."""
    limit("RLIMIT_AS", limits.memory_bytes)


def limit_processor(limits: Limits) -> None:
    """Processor time: a signal that ends the process, and a second later one that cannot be caught."""
    limit("RLIMIT_CPU", limits.processor_s, grace=1)


def limit_files(limits: Limits) -> None:
    """Open files, nothing written to any, no picture of the memory left behind."""
    limit("RLIMIT_NOFILE", limits.open_files)
    limit("RLIMIT_FSIZE", 0)
    limit("RLIMIT_CORE", 0)
