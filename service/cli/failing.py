"""How a command ends when it cannot do what was asked."""

import sys
from typing import IO, Any

import rich_click as click


class Failed(click.ClickException):
    """Wrong use, told in words without the usage line: what, where, how much and what to do."""

    exit_code = 2

    def show(self, file: IO[Any] | None = None) -> None:
        """Print the words to standard error, as they are."""
        click.echo(f"switchbank: {self.message}", file=file or sys.stderr)


class CouldNot(Failed):
    """Used rightly, but what was asked cannot be answered."""

    exit_code = 3
