"""How a program of children is started: by the same Python, with the same modules in reach, and nothing else of the parent's environment."""

import os
import sys

_KEPT = ("LANG", "LC_ALL", "LD_LIBRARY_PATH", "SYSTEMROOT", "OPENBLAS_CORETYPE", "OPENBLAS_L2_SIZE")
_SET = {"PYTHONHASHSEED": "0", "PYTHONDONTWRITEBYTECODE": "1", "OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1"}
"""A fixed order of sets, so that the same file gives the same answer; no thread in the process that forks."""


def command(program: str, *arguments: str) -> list[str]:
    """What to run.

    Args:
        program: A line of Python.
        arguments: Its arguments.

    Returns:
        The command line; the folder where the parent was started is not searched for modules.
    """
    return [sys.executable, "-P", "-c", program, *arguments]


def environment() -> dict[str, str]:
    """Nothing of the parent's environment but what programs need to run: no secret reaches a child."""
    kept = {name: os.environ[name] for name in _KEPT if name in os.environ}
    return kept | _SET | {"PYTHONPATH": os.pathsep.join(path for path in sys.path if path)}
