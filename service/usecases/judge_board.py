"""Judge a board: find its parts, run every check, and say what a person has yet to look at; keep the result when asked."""

import hashlib
import json
from dataclasses import dataclass, replace

from service.derating.assess import assess
from service.facts.board import Bank, Board
from service.facts.change import Change
from service.facts.finding import Provisional, Report
from service.facts.part import Part, part_key
from service.facts.result import InputKind, Result, UsedInput
from service.facts.switch import Switch
from service.formats.json_text import json_bytes
from service.formats.part_name import SHEET, TYPED
from service.formats.report import report_json
from service.usecases.draw_judgement import pictures_json
from service.usecases.freeze_result import freeze_result
from service.usecases.ports import Shelf, Store
from service.usecases.refusals import CannotJudgeError
from service.usecases.switch_from_readings import Described, Offered, offered_by_store, switch_from_readings


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgement:
    """A report with what it was made from.

    Attributes:
        report: All findings.
        inputs: What was used of the store, by identity and version.
        parts: Keys of the parts that it speaks of.
    """

    report: Report
    inputs: tuple[UsedInput, ...]
    parts: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """A bank's switch with what it came from."""

    switch: Switch
    offered: tuple[Offered, ...] = ()
    typed: tuple[UsedInput, ...] = ()


def judge_board(board: Board, *, store: Store) -> Judgement:
    """Judge a board.

    Args:
        board: As read; parts that it does not type are looked up.
        store: Where parts and sheets are kept; looked at in one moment.

    Returns:
        The report; provisional while it rests on a typed part or on readings that no person has settled.

    Raises:
        CannotJudgeError: A part is unknown, or nothing of its sheet may be used.
    """
    whole, found = _with_parts(board, store)
    return _judgement(assess(whole), found)


def with_parts(board: Board, *, store: Store) -> Board:
    """The board with the figures of its parts, as they would be judged now.

    Raises:
        CannotJudgeError: A part is unknown, or nothing of its sheet may be used.
    """
    return _with_parts(board, store)[0]


def keep_result(judgement: Judgement, *, title: str, board: UsedInput | None, store: Store, change: Change) -> Result:
    """Freeze a judgement, with all that its page will show.

    Args:
        judgement: What was judged.
        title: What people call it.
        board: The saved board that was judged, with its version, where there is one.
        store: Where it is kept.
        change: Who asked for it, when and why.

    Returns:
        The result; the same judgement of the same inputs is one result.
    """
    report = json_bytes({**report_json(judgement.report), **pictures_json(judgement.report.board)}).decode("utf-8")
    inputs = (*judgement.inputs, *((board,) if board else ()))
    named = json.dumps([report, [(one.kind.value, one.id, one.version) for one in inputs]])
    result = Result(
        id=hashlib.sha256(named.encode()).hexdigest()[:16],
        title=title,
        report=report,
        inputs=inputs,
        parts=judgement.parts,
        board=board.id if board else None,
        rule_set=judgement.report.rule_set,
        engine_version=judgement.report.engine_version,
        typed=any(bank.switch.typed for bank in (judgement.report.board.discharge_bank, judgement.report.board.charge_bank)),
        look_at=judgement.report.provisional.look_at,
        change=change,
    )
    return freeze_result(result, store=store)


def _with_parts(board: Board, store: Store) -> tuple[Board, tuple[_Found, _Found]]:
    """The board with its parts, and what they came from."""
    with store.looking() as shelf:
        discharge = _find(shelf, board.discharge_bank)
        charge = discharge if board.charge_bank == board.discharge_bank else _find(shelf, board.charge_bank)
    whole = replace(
        board,
        discharge_bank=replace(board.discharge_bank, switch=discharge.switch),
        charge_bank=replace(board.charge_bank, switch=charge.switch),
    )
    return whole, (discharge, charge)


def _find(shelf: Shelf, bank: Bank) -> _Found:
    """The switch behind the name that a bank gives its part."""
    name = bank.part or bank.switch.marking
    if bank.switch.typed or name.startswith(TYPED):
        return _Found(switch=bank.switch)
    if name.startswith(SHEET):
        return _from_sheet(shelf, name.removeprefix(SHEET), bank=bank, marking=None)
    part = shelf.parts.find(name)
    if part is None:
        raise CannotJudgeError(
            f"No kept part goes by {name!r}. Take its datasheet in (switchbank read --keep FILE), look for what the marking may stand for"
            f" (switchbank lookup {name}), or type the part into the board file as [typed.NAME].",
        )
    return _from_part(shelf, part, bank)


def _from_part(shelf: Shelf, part: Part, bank: Bank) -> _Found:
    """The first sheet of a part that says something usable, else what was typed."""
    if part.sheets:
        return _from_sheet(shelf, part.sheets[0], bank=bank, marking=part.marking)
    if part.typed is None:
        raise CannotJudgeError(f"{part.marking} is known by name alone: take its datasheet in, or type the numbers that a board needs.")
    used = UsedInput(kind=InputKind.TYPED_PART, id=part.key, version=part.typed.version, name=part.marking)
    return _Found(switch=replace(part.typed.switch, typed=True), typed=(used,))


def _from_sheet(shelf: Shelf, sha256: str, *, bank: Bank, marking: str | None) -> _Found:
    """The switch that a kept sheet describes."""
    sheet = shelf.documents.sheet(sha256)
    if sheet is None:
        raise CannotJudgeError(f"No sheet {sha256} is kept and read: take it in with switchbank read --keep FILE.")
    if sheet.refused is not None:
        raise CannotJudgeError(f"{sheet.file} could not be read: {sheet.refused.detail}")
    offered = offered_by_store(shelf.readings.of_sheet(sha256))
    if not offered:
        raise CannotJudgeError(f"No reading of {sheet.file} may be used yet: confirm or correct its values first.")
    described = Described(marking=marking or sheet.part or sheet.file, polarity=sheet.polarity, package=sheet.package)
    return _Found(switch=switch_from_readings(offered, described=described, channel=bank.channel), offered=offered)


def _judgement(report: Report, found: tuple[_Found, ...]) -> Judgement:
    """Name what the findings used, and what of it waits for a person."""
    used = {one.sourced.source.reading for finding in report.findings for one in finding.inputs if one.sourced.source}
    shown = {value.sourced.source.reading for one in found for value in one.switch.values if value.sourced.source}
    waiting = tuple(dict.fromkeys(name for one in found for name in one.switch.look_at if name in used or name not in shown))
    typed = any(one.switch.typed for one in found)
    readings = {
        one.id: UsedInput(kind=InputKind.READING, id=one.id, version=one.version, name=f"{one.reading.key} {one.reading.limit.value}")
        for each in found
        for one in each.offered
        if one.id in used or one.id in waiting
    }
    return Judgement(
        report=replace(report, provisional=Provisional(value=typed or bool(waiting), look_at=waiting)),
        inputs=(*readings.values(), *dict.fromkeys(name for one in found for name in one.typed)),
        parts=tuple(dict.fromkeys(part_key(one.switch.marking) for one in found)),
    )
