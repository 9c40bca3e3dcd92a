"""`switchbank judge`: what a board's switches can really do."""

from dataclasses import replace
from pathlib import Path
from typing import NamedTuple

import rich_click as click

from service.cli import options
from service.cli.board_source import OPTIONS, board_file, short_board
from service.cli.failing import CouldNot, Failed
from service.cli.report_text import report_text
from service.cli.writing import save_text, write_json
from service.formats.errors import BoardError
from service.usecases.refusals import CannotJudgeError
from service.wiring import judging

RULE_SETS = ("maker", "trade-80", "eee-inst-002")


class Short(NamedTuple):
    """The short form: four fields."""

    part: str | None
    per_bank: int | None
    cells: int | None
    amps: str | None


@click.command
@click.argument("board", required=False, type=click.Path(exists=True, dir_okay=False, readable=True, path_type=Path), metavar="[BOARD.toml]")
@click.option("--part", metavar="MARKING", help="Part of both banks: a kept marking, or sha256:HEX for one very sheet.")
@click.option("--per-bank", type=int, metavar="COUNT", help="Switches of each bank, counted.")
@click.option("--cells", type=int, metavar="COUNT", help="Cells in series, 1 to 32.")
@click.option("--amps", metavar="A", help="Claimed continuous current in ampere, a bare number.")
@click.option("--rules", type=click.Choice(RULE_SETS), help="Rule set to judge by; overrides the file's.")
@click.option(
    "--spread", is_flag=True, help="Draw 100,000 boards within the bands of what nobody knows, and say how many hold and what matters most."
)
@click.option(
    "--save", type=click.Path(dir_okay=False, writable=True, path_type=Path), metavar="FILE", help="Write the board, defaults filled in, as TOML."
)
@options.as_json
@options.data_dir
@click.pass_context
def judge(  # noqa: PLR0913  one argument an option
    ctx: click.Context,
    board: Path | None,
    rules: str | None,
    save: Path | None,
    data_dir: Path | None,
    *,
    as_json: bool,
    spread: bool,
    part: str | None,
    per_bank: int | None,
    cells: int | None,
    amps: str | None,
) -> None:
    """Judge a board: BOARD.toml, or --part, --per-bank, --cells and --amps for a first answer.

    Exit codes: 0 judged, whatever the outcome; 2 wrong use; 3 could not be judged.
    """
    written = _written(board, Short(part=part, per_bank=per_bank, cells=cells, amps=amps))
    if rules:
        written["rules"] = {"set": rules}
    try:
        judged = judging.judge(written, data_dir=data_dir, spread=spread)
    except BoardError as error:
        raise Failed(_told(board, error)) from error
    except CannotJudgeError as error:
        raise CouldNot(f"{error}\n{_instead(written)}") from error
    if save:
        save_text(save, judged.toml)
    if as_json:
        write_json(judged.report)
    else:
        click.echo(report_text(judged.report))
    ctx.exit(0)


def _told(board: Path | None, error: BoardError) -> str:
    """Every problem on a line of its own, by the key of the file or by the option."""
    problems = error.problems if board else tuple(replace(one, key=OPTIONS.get(one.key, one.key)) for one in error.problems)
    return "\n".join((f"{board.name if board else 'The board'} cannot be taken as it is:", *(f"  {one}" for one in problems)))


def _instead(written: dict[str, object]) -> str:
    """What a part would have to be, so that the way to a board that cannot be judged is not closed."""
    part = judging.part_wanted(written)
    if part.on_resistance_ohm is None:
        return "At the claimed current no part would do on such a board: it needs more switches or better cooling."
    milliohm = f"{1000 * part.on_resistance_ohm:g} mohm"
    return (
        f"To stand the voltage and carry the claimed current a part has to be rated for {part.drain_voltage_v:g} V drain to source or more, and"
        f" guaranteed to have {milliohm} or less at 25 degC and the board's gate voltage, with junctions that bear {part.junction_max_c:g} degC."
    )


def _written(board: Path | None, short: Short) -> dict[str, object]:
    """The board's tables, from the file or from the four options, never from both."""
    if board is not None:
        if any(value is not None for value in short):
            raise click.UsageError("Give a board file or the four options, not both.")
        return board_file(board)
    if short.part is None or short.per_bank is None or short.cells is None or short.amps is None:
        missing = [f"--{name.replace('_', '-')}" for name, value in zip(short._fields, short, strict=True) if value is None]
        raise click.UsageError(f"Without a board file {', '.join(missing)} is missing, as in --part AB75N40 --per-bank 6 --cells 8 --amps 80.")
    return short_board(part=short.part, per_bank=short.per_bank, cells=short.cells, amps=short.amps)
