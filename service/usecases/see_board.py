"""See a board: what is known of it as a person wrote it, and the results that judged it."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from service.facts.board import Board
from service.facts.kept_board import KeptBoard
from service.facts.result import Result
from service.formats.board import read_board
from service.usecases.ports import Store


class UnknownBoardError(LookupError):
    """No board has this name."""

    def __init__(self, slug: str) -> None:
        super().__init__(f"There is no board {slug!r}; the list of packs names them all.")


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardView:
    """A saved board.

    Attributes:
        kept: The version that stands.
        document: As written.
        board: The facts, defaults filled in.
        results: The results that judged it, the latest first.
    """

    kept: KeptBoard
    document: Mapping[str, Any]
    board: Board
    results: tuple[Result, ...]


def see_board(store: Store, *, slug: str) -> BoardView:
    """Gather a saved board and its results.

    Raises:
        UnknownBoardError: There is none of this name.
    """
    with store.looking() as shelf:
        kept = shelf.boards.find(slug)
        if kept is None:
            raise UnknownBoardError(slug)
        results = shelf.results.of_board(slug)
    document = json.loads(kept.document)
    return BoardView(kept=kept, document=document, board=read_board(document), results=results)
