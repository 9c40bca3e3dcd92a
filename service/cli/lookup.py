"""`switchbank lookup`: which kept part a marking may stand for."""

from pathlib import Path
from typing import TYPE_CHECKING

import rich_click as click

from service.cli import options
from service.cli.writing import columns, write_json
from service.wiring import looking_up

if TYPE_CHECKING:
    from service.usecases.look_up_marking import Candidate

NOTHING_FOUND = 1


@click.command
@click.argument("marking")
@options.as_json
@options.data_dir
@click.pass_context
def lookup(ctx: click.Context, marking: str, data_dir: Path | None, *, as_json: bool) -> None:
    """Find the kept parts that MARKING, as read off a package, may stand for; put ? for a character in doubt.

    Exit codes: 0 found; 1 nothing comes near; 2 wrong use.
    """
    found = looking_up.lookup(marking, data_dir=data_dir)
    if as_json:
        for candidate in found:
            write_json(_json(candidate))
    elif found:
        click.echo(columns([_line(candidate) for candidate in found], indent=""))
    else:
        click.echo(_nothing(marking))
    ctx.exit(0 if found else NOTHING_FOUND)


def _json(candidate: "Candidate") -> dict[str, object]:
    """One part as JSON."""
    return {
        "part": candidate.part.marking,
        "key": candidate.part.key,
        "name": candidate.hit.name.text,
        "cost": candidate.hit.cost,
        "reason": candidate.hit.reason,
        "sheets": list(candidate.part.sheets),
        "typed": candidate.part.typed is not None,
        "boards": [board.title for board in candidate.boards],
        "results": [result.id for result in candidate.results],
    }


def _line(candidate: "Candidate") -> tuple[str, ...]:
    """One part: its number, why it may be meant, what is known of it, where it was met."""
    sheets = len(candidate.part.sheets)
    known = f"{sheets} {'sheet' if sheets == 1 else 'sheets'}" if sheets else "typed, no sheet" if candidate.part.typed else "by name alone"
    met = f"seen on {', '.join(board.title for board in candidate.boards)}" if candidate.boards else ""
    return (candidate.part.marking, candidate.hit.reason, known, met)


def _nothing(marking: str) -> str:
    """What to do where nothing comes near."""
    return (
        f"Nothing that is kept comes near {marking!r}.\n"
        "  - Take its datasheet in: switchbank read --keep FILE\n"
        "  - or type the part into a board file as [typed.NAME]: the result stays provisional\n"
        f"  - To search for the datasheet: {looking_up.search_phrase(marking)}"
    )
