"""One table of a written file, read key by key; every problem is noted and reading goes on, so that a person mends them all at once."""

from collections.abc import Callable, Mapping
from difflib import get_close_matches
from typing import TypeVar

from service.formats.errors import Problem, UnitError

T = TypeVar("T")
SHOWN = 60


class Table:
    """A table while it is read.

    Args:
        content: What was written; something else than a table is a problem.
        at: Where it stands, empty for the whole file.
        problems: Where problems are noted, shared by all tables of a file.
    """

    def __init__(self, content: object, *, at: str, problems: list[Problem]) -> None:
        self._at, self._problems = at, problems
        self._content: Mapping[str, object] = content if isinstance(content, dict) else {}
        self._asked: list[str] = []
        if not isinstance(content, dict):
            self.note("", content, why="not a table", allowed="{key = value, ...}")

    def path(self, name: str) -> str:
        """Name a key in full: ``cooling.ambient``."""
        return ".".join(part for part in (self._at, name) if part) or "the file"

    def note(self, name: str, value: object, *, why: str, allowed: str) -> None:
        """Note a problem with one key."""
        written = "" if value is None else repr(value)
        shown = written if len(written) <= SHOWN else written[:SHOWN] + "..."
        self._problems.append(Problem(key=self.path(name), value=shown, why=why, allowed=allowed))

    def has(self, name: str) -> bool:
        """Whether a key is written; asking makes it a known one."""
        self._asked.append(name)
        return name in self._content

    def raw(self, name: str) -> object:
        """What is written under a key, or None; asking makes it a known one."""
        return self._content.get(name) if self.has(name) else None

    def names(self) -> tuple[str, ...]:
        """Every key that is written, for a table whose keys are names."""
        return tuple(self._content)

    def table(self, name: str) -> "Table":
        """The table under a key; an empty one where nothing is written."""
        return Table(self.raw(name) if self.has(name) else {}, at=self.path(name), problems=self._problems)

    def tables(self, name: str) -> "tuple[Table, ...]":
        """The tables under a key: none, one, or several in a list."""
        written = self.raw(name) if self.has(name) else []
        listed = written if isinstance(written, list) else [written]
        return tuple(Table(content, at=self.path(name), problems=self._problems) for content in listed)

    def parsed(self, name: str, parse: Callable[[object, str], T]) -> T | None:
        """Hand what is written to a parser; None where nothing is written or the parser refuses it."""
        if not self.has(name):
            return None
        try:
            return parse(self._content[name], self.path(name))
        except UnitError as error:
            self.note(name, error.value, why=error.why, allowed=error.allowed)
            return None

    def count(self, name: str, *, least: int = 1, most: int, default: int | None = None) -> int:
        """A bare whole number within limits; a required one has no default."""
        value = self.raw(name) if self.has(name) else default
        if isinstance(value, int) and not isinstance(value, bool) and least <= value <= most:
            return value
        why = "missing" if value is None else "not a count within the limits"
        self.note(name, value, why=why, allowed=f"a whole number from {least} to {most}, without unit")
        return least

    def flag(self, name: str) -> bool | None:
        """True or false, None where nothing is written."""
        value = self.raw(name)
        if value is None or isinstance(value, bool):
            return value
        self.note(name, value, why="neither true nor false", allowed="true, false")
        return None

    def choice(self, name: str, allowed: tuple[str, ...], *, default: str) -> str:
        """One word of a closed list."""
        value = self.raw(name) if self.has(name) else default
        if isinstance(value, str) and value in allowed:
            return value
        self.note(name, value, why="not one of the words that may stand here", allowed=", ".join(allowed))
        return default

    def text(self, name: str) -> str | None:
        """A short text, None where nothing is written."""
        value = self.raw(name)
        if value is None or (isinstance(value, str) and 0 < len(value.strip()) <= 200):
            return value
        self.note(name, value, why="not a text", allowed="1 to 200 characters")
        return None

    def finish(self) -> None:
        """Note every key that nobody asked for, with the nearest one that is known."""
        known = tuple(dict.fromkeys(self._asked))
        for name in self._content:
            if name not in known:
                near = get_close_matches(name, known, n=1, cutoff=0.5)
                hint = f"no such key; did you mean {near[0]}?" if near else "no such key"
                self.note(name, None, why=hint, allowed=", ".join(known))
