"""Judge a board by the parts that are kept."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from service.wiring.ground import store_to_look_at

if TYPE_CHECKING:
    from service.derating.wanted import Wanted


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A judgement as it leaves the program.

    Attributes:
        report: As switchbank.report/1.
        toml: The board as a file, defaults filled in.
    """

    report: dict[str, object]
    toml: str


def judge(written: Mapping[str, object], *, data_dir: Path | None, spread: bool = False) -> Judged:
    """Judge a board as written.

    Args:
        written: Tables of TOML or JSON.
        data_dir: Where its parts are kept.
        spread: Whether many boards are drawn within the bands of what is open.

    Returns:
        The report, and the board to keep.

    Raises:
        BoardError: The board cannot be taken as written.
        CannotJudgeError: A part is not known well enough.
    """
    from service.formats.board import read_board
    from service.formats.board_json import board_json
    from service.formats.report import report_json
    from service.formats.toml_text import toml_text
    from service.usecases.draw_judgement import drawn_boards_json
    from service.usecases.judge_board import judge_board

    board = read_board(written)
    with store_to_look_at(data_dir) as store:
        judgement = judge_board(board, store=store)
    more = drawn_boards_json(judgement.report.board) if spread else {}
    return Judged(report={**report_json(judgement.report), **more}, toml=toml_text(board_json(judgement.report.board)))


def part_wanted(written: Mapping[str, object]) -> "Wanted":
    """What a part would have to be on a board whose part nobody knows."""
    from service.derating.wanted import wanted
    from service.formats.board import read_board

    return wanted(read_board(written))
