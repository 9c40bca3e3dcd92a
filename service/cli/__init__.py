"""The command line, one command a file; a command is loaded when it is called, so that help is there at once."""

import os
import sys
from importlib import import_module
from importlib.metadata import version
from io import TextIOWrapper
from typing import ClassVar, NoReturn

import rich_click as click

from service.cli.failing import Failed
from service.facts.keeping_error import DamagedFileError, MovedOnError, StoreError


class Commands(click.RichGroup):
    """The commands by name, each with the sentence that the overview shows."""

    SENTENCES: ClassVar[dict[str, str]] = {
        "read": "Read datasheets and print what they say, each value with its place.",
        "lookup": "Find the parts that a marking may stand for.",
        "judge": "Judge what a board's switches can really do.",
        "serve": "Start the pages on this machine.",
        "demo": "Start the pages with invented example data.",
        "schema": "Print the JSON Schema of a sheet, a board or a report.",
        "doctor": "Say what this machine gives the program.",
    }

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Name the commands in the order of the work."""
        del ctx
        return list(self.SENTENCES)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Give a command by its sentence alone; `resolve_command` loads the one that is called."""
        del ctx
        sentence = self.SENTENCES.get(cmd_name)
        return click.Command(cmd_name, help=sentence) if sentence else None

    def resolve_command(self, ctx: click.Context, args: list[str]) -> tuple[str | None, click.Command | None, list[str]]:
        """Load the command that is called; a mistyped one is refused with the nearest name."""
        name, named, rest = super().resolve_command(ctx, args)
        if name is None or named is None:
            return name, named, rest
        command: click.Command = getattr(import_module(f"service.cli.{name}"), name)
        return name, command, rest


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(version("switchbank"), prog_name="switchbank")
def switchbank() -> None:
    """Read power-switch datasheets and judge what a battery board can really do.

    The answers are calculations from printed and typed figures, no certification. Work on packs can hurt: local codes and licensed practice
    come first.
    """


def main() -> None:
    """Run the command line; every failure says what, where and what to do, and no stack of the program's own."""
    for stream in (sys.stdout, sys.stderr):
        # Why: a terminal that lacks an ohm sign shows a question mark; it is no reason to stop.
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="replace")
    try:
        sys.exit(switchbank.main(standalone_mode=False))
    except click.Abort:
        sys.exit(130)
    except click.ClickException as wrong:
        wrong.show()
        sys.exit(wrong.exit_code)
    except (StoreError, DamagedFileError, MovedOnError) as error:
        end(str(error))
    except BrokenPipeError:
        # Why: Python writes what is left when it ends, into a pipe that nobody reads any more.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(141)
    except OSError as error:
        end(f"{error.strerror or error}{f': {error.filename}' if error.filename else ''}")


def end(words: str) -> NoReturn:
    """End with words on standard error, and the code of what was asked in vain."""
    Failed(words).show()
    sys.exit(Failed.exit_code)
