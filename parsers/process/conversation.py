"""What parent and child say to each other about one job, whichever way the child was started."""

import json
from dataclasses import asdict

from parsers.process import child, wire
from parsers.process.job import Job, Outcome
from parsers.process.limits import MOST_ANSWER_BYTES
from parsers.process.shape import clean

_MOST_SAID = 64 * 1024


def converse(hearing: int, speaking: int, job: Job) -> Outcome:
    """Hand over a job and hear the answer; a child that dies in between is no error here.

    Args:
        hearing: Where the child's frames come from.
        speaking: Where frames to the child go.
        job: What to do with which document.

    Returns:
        The answer, or the error that the child reports; empty where it said nothing.
    """
    isolation: dict[str, str] = {}
    header = {"task": job.task, "limits": asdict(job.limits), "arguments": dict(job.arguments), "jailed": job.jailed}
    try:
        wire.send(speaking, json.dumps(header).encode())
        isolation = json.loads(wire.receive(hearing, most=_MOST_SAID))
        wire.send(speaking, job.data)
        said = wire.receive(hearing, most=MOST_ANSWER_BYTES + 1)
    except wire.TooLongError as error:
        return Outcome(fault="AnswerTooLong", words=str(error), isolation=isolation)
    except (OSError, wire.FrameError):
        return Outcome(isolation=isolation)
    if said.startswith(child.ANSWER):
        return Outcome(answer=said[1:], isolation=isolation)
    fault, words = _fault(said[1:])
    return Outcome(fault=fault, words=words, isolation=isolation)


def _fault(said: bytes) -> tuple[str, str]:
    """The error that a child reports, as far as it can be understood."""
    try:
        fault, words = (clean(str(item)) for item in json.loads(said))
    except (ValueError, TypeError, RecursionError):
        return "NoError", "the child's answer cannot be understood"
    return fault, words
