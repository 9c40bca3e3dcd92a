"""Ask a child and understand its answer; a child that gives none, or nonsense, gives a refusal."""

from collections.abc import Callable
from typing import TypeVar

from parsers.process.job import Job
from parsers.process.refusals import refused_by
from parsers.process.shape import ShapeError
from parsers.process.starting import start
from service.facts.reading import Refused

Understood = TypeVar("Understood")


def answered(job: Job, understand: Callable[[bytes], Understood]) -> tuple[Understood | Refused, dict[str, str]]:
    """Have a job done.

    Args:
        job: What to do with which document.
        understand: Makes something of the answer; raises ShapeError where it cannot.

    Returns:
        What was understood, or the refusal; and what the child's jail achieved.

    Raises:
        ForkServerError: Children cannot be started.
    """
    outcome = start().ask(job)
    if outcome.answer is None:
        return refused_by(outcome, job), outcome.isolation
    try:
        return understand(outcome.answer), outcome.isolation
    except ShapeError as error:
        detail = f"Reading the file gave an answer that makes no sense ({error}). Fetch it again from its maker."
        return Refused(kind="damaged", seems_to_be=None, detail=detail), outcome.isolation
