"""Judge a board as a person describes it, and keep the board and the result; again when inputs moved on, or with one figure measured."""

import json
import re
from collections.abc import Mapping
from typing import Any

from service.facts.change import Change
from service.facts.kept_board import KeptBoard
from service.facts.part import part_key
from service.facts.result import InputKind, Result, UsedInput
from service.formats.board import read_board
from service.formats.json_text import json_bytes
from service.formats.toml_text import toml_text
from service.usecases.judge_board import judge_board, keep_result
from service.usecases.out_of_date import mark_results_of_board
from service.usecases.ports import Store
from service.usecases.refusals import CannotJudgeError

Document = Mapping[str, Any]
LONGEST_SLUG = 60


def judge_and_keep(document: Document, *, title: str, store: Store, change: Change, slug: str | None = None) -> Result:
    """Judge a board document and keep both it and the result; nothing is kept of one that cannot be judged.

    Args:
        document: The board (schema switchbank.board/1) as written, without defaults.
        title: What people call it.
        store: Where it is kept.
        change: Who asks, when and why.
        slug: The saved board that this is a new version of; a new board where nothing is said.

    Returns:
        The frozen result.

    Raises:
        BoardError: The document has problems; all of them at once.
        CannotJudgeError: A part is not known well enough.
    """
    judgement = judge_board(read_board(document), store=store)
    board = save_board(document, title=title, parts=judgement.parts, store=store, change=change, slug=slug)
    used = UsedInput(kind=InputKind.BOARD, id=board.slug, version=board.version, name=board.title)
    return keep_result(judgement, title=title, board=used, store=store, change=change)


def judge_again(result_id: str, *, store: Store, change: Change) -> Result:
    """Judge the board of a result with what is known now.

    Raises:
        CannotJudgeError: The result is unknown, or its board was not saved.
    """
    result, board = board_of(result_id, store)
    return judge_and_keep(json.loads(board.document), title=result.title, store=store, change=change, slug=board.slug)


def judge_with_measurement(result_id: str, *, key: str, fact: Mapping[str, str] | bool, store: Store, change: Change) -> Result:
    """Judge the board of a result again with one figure measured; the result before it stays.

    Args:
        result_id: The result.
        key: Key of the board document: ``cooling.junction_to_air``.
        fact: The quantity as a table of the board document (value, known, by, on, with), or a yes/no fact.
        store: Where things are kept.
        change: Who measured, when and why.

    Raises:
        BoardError: The measurement cannot be taken as written.
        CannotJudgeError: The result is unknown, or its board was not saved.
    """
    result, board = board_of(result_id, store)
    document = json.loads(board.document)
    table, name = key.split(".")
    document.setdefault(table, {})[name] = fact
    return judge_and_keep(document, title=result.title, store=store, change=change, slug=board.slug)


def save_board(document: Document, *, title: str, parts: tuple[str, ...], store: Store, change: Change, slug: str | None = None) -> KeptBoard:
    """Keep a board document as the next version of its board; the same document again stays the same version."""
    written = json_bytes(document).decode()
    with store.changing() as shelf:
        before = shelf.boards.find(slug) if slug else None
        if before and before.document == written:
            return before
        name = before.slug if before else _free_slug(title, taken=frozenset(board.slug for board in shelf.boards.listed()))
        board = KeptBoard(
            slug=name,
            version=before.version + 1 if before else 1,
            title=title,
            text=toml_text(document),
            document=written,
            parts=parts,
            change=change,
        )
        shelf.boards.save(board)
        mark_results_of_board(shelf, board)
    return board


def short_title(document: Document) -> str:
    """What a board is called when nobody named it: its part, its counts and its claim."""
    bank, cells, claim = (document.get(name) or {} for name in ("discharge_bank", "cells", "claim"))
    return f"{cells.get('in_series', '?')}S, {bank.get('switches', '?')} × {bank.get('part', '?')}, {claim.get('continuous', '?')}"


def board_of(result_id: str, store: Store) -> tuple[Result, KeptBoard]:
    """A result and its saved board.

    Raises:
        CannotJudgeError: The result is unknown, or its board was not saved.
    """
    with store.looking() as shelf:
        result = shelf.results.find(result_id)
        board = shelf.boards.find(result.board) if result and result.board else None
    if result is None or board is None:
        raise CannotJudgeError(f"The board of result {result_id} was not saved; describe it again on the bench.")
    return result, board


def _free_slug(title: str, *, taken: frozenset[str]) -> str:
    """A short name that no board has yet."""
    stem = re.sub(r"[^a-z0-9]+", "-", title.lower()).strip("-")[:LONGEST_SLUG].strip("-") or part_key(title).lower() or "board"
    return next(name for number in range(1, len(taken) + 2) if (name := stem if number == 1 else f"{stem}-{number}") not in taken)
