"""What a child is asked, and what came of it."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from parsers.process.limits import Limits


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """One question to one child.

    Attributes:
        task: The function, as ``module:name``; it takes the document's bytes and the arguments, and gives bytes.
        data: The document.
        limits: What the child may use.
        arguments: Further arguments: text, numbers, lists of them. A ``function`` among them, as ``module:name``, is imported in time.
        jailed: Whether the child gives up what it does not need; never false for a document from outside.
    """

    task: str
    data: bytes
    limits: Limits
    arguments: Mapping[str, object] = field(default_factory=dict)
    jailed: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What came of a job.

    Attributes:
        answer: What the task gave; None where it gave nothing.
        fault: Name of the error that ended the task, or of what was wrong with the answer; empty where there was none.
        words: What the error said; it comes from the child and is not to be trusted.
        isolation: What the jail achieved, step by step.
        signal: The signal that ended the child; 0 where none did.
        overdue: Whether the child was killed because its time by the clock was up.
        processor_s: Processor time that it used. [s]
        peak_bytes: The most memory that it held. [byte]
    """

    answer: bytes | None = None
    fault: str = ""
    words: str = ""
    isolation: dict[str, str] = field(default_factory=dict)
    signal: int = 0
    overdue: bool = False
    processor_s: float = 0.0
    peak_bytes: int = 0
