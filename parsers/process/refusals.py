"""How a child ended without an answer, said to the person who handed in the document."""

import signal

from parsers.process.job import Job, Outcome
from parsers.process.limits import MEBIBYTE
from service.facts.reading import Refused

_NEAR = 0.7
"""A child that crashed while it held this share of its memory is taken to have run out of it. [1]"""


def refused_by(outcome: Outcome, job: Job) -> Refused:  # noqa: PLR0911  one answer for each way to end
    """Why a document is refused whose child gave no answer.

    Args:
        outcome: How the child ended.
        job: What it was asked.

    Returns:
        The refusal: what happened, how much was used of how much, and what to do.
    """
    limits = job.limits
    # Why in this order: a child that ran out of time or memory often ends with another sign as well.
    memory = f"{limits.memory_bytes // MEBIBYTE} MiB of memory"
    if outcome.overdue:
        return _refusal("too_slow", f"Reading did not end within {limits.wall_s} s by the clock. {_SPLIT}")
    if outcome.signal and (outcome.signal == _XCPU or outcome.processor_s >= limits.processor_s):
        return _refusal("too_slow", f"Reading used up its {limits.processor_s} s of processor time. {_SPLIT}")
    if outcome.fault == "MemoryError" or outcome.peak_bytes > _NEAR * limits.memory_bytes:
        return _refusal("too_large", f"The file unpacks to more than the {memory} that one document may use. {_SPLIT}")
    if outcome.fault == "AnswerTooLong":
        return _refusal("too_large", f"The file gives more readings than one datasheet can hold ({outcome.words}). {_SPLIT}")
    if outcome.fault:
        return _refusal("damaged", f"The file's structure cannot be followed ({outcome.fault}). {_FETCH}")
    if outcome.signal:
        return _refusal("damaged", f"The file stopped the library that draws PDF pages ({_named(outcome.signal)}). {_FETCH}")
    return _refusal("damaged", f"Reading the file ended without an answer. {_FETCH}")


_XCPU = getattr(signal, "SIGXCPU", 24)
_SPLIT = "Cut out the datasheet's own pages, or print the file to a new PDF, and read that."
_FETCH = "Fetch it again from its maker, or print it to a new PDF, and read that."


def _refusal(kind: str, detail: str) -> Refused:
    return Refused(kind=kind, seems_to_be=None, detail=detail)


def _named(number: int) -> str:
    try:
        return signal.Signals(number).name
    except ValueError:
        return f"signal {number}"
