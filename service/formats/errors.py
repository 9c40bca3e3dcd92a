"""What can be wrong with what was written, as fields and as a sentence."""

from dataclasses import dataclass


class UnitError(ValueError):
    """A text is no quantity of the kind that is asked for.

    Args:
        key: Where it stands: ``claim.continuous``.
        value: What was written.
        why: What is wrong with it.
        allowed: What may stand there.
    """

    def __init__(self, *, key: str, value: object, why: str, allowed: str) -> None:
        super().__init__(f"{key} = {value!r}: {why}; allowed: {allowed}" if key else f"{value!r}: {why}; allowed: {allowed}")
        self.key, self.value, self.why, self.allowed = key, value, why, allowed


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing wrong in a file.

    Attributes:
        key: Where: ``cooling.ambient``.
        value: What was written there, shortened; empty where something is missing.
        why: What is wrong with it.
        allowed: What may stand there.
    """

    key: str
    value: str
    why: str
    allowed: str

    def __str__(self) -> str:
        """One line: where, what, why and what is allowed."""
        written = f" = {self.value}" if self.value else ""
        return f"{self.key}{written}: {self.why}; allowed: {self.allowed}"


class BoardError(ValueError):
    """A board cannot be taken as written; every problem of the file at once.

    Args:
        problems: All of them, in the order of the file.
    """

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__("\n".join(map(str, problems)))
        self.problems = problems
