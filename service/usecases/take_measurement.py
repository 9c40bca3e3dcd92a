"""Take a test on the bench: what it says replaces a default, and the board is judged again; the result before it stays.

What is typed stays text until here, so that an error can say what was typed, where, and what may stand there.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from service.derating.case import BankCase, Case, Corner
from service.derating.heat_test import HeatTest, Spot
from service.derating.measurement import allowed_current, board_to_air, junction_to_air, path_resistance, switch_resistance
from service.derating.open_case import open_case
from service.derating.spoken import rounded_down, rounded_up, spoken
from service.facts.change import Change
from service.facts.result import Result
from service.facts.sourced import Attestation, Known, Sourced
from service.formats import dimensions as d
from service.formats.board import read_board
from service.formats.dimensions import Dimension
from service.formats.errors import BoardError, Problem, UnitError
from service.formats.sourced import read_sourced, sourced_json
from service.usecases.judge_and_keep import board_of, judge_and_keep
from service.usecases.judge_board import with_parts
from service.usecases.ports import Store
from service.usecases.refusals import CannotJudgeError

SPOTS: Mapping[str, Spot] = {spot.value: spot for spot in Spot}
BANKS = ("discharge", "charge")
SHUNT = "shunt"
LID_ON, LID_OFF = "closed", "open"


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatSaid:
    """A temperature at a known current, as typed.

    Attributes:
        current: Through the bank, for as long as the temperature still rose: ``40 A``.
        probe: The hottest that the thermometer showed: ``62 °C``, or a band with its doubt.
        air: That the rise is counted from.
        spot: Where the probe sat: a value of `Spot`.
        lid: ``closed`` or ``open``.
        bank: discharge or charge.
        instrument: What it was measured with; may be empty.
    """

    current: str
    probe: str
    air: str
    spot: str
    lid: str
    bank: str = "discharge"
    instrument: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class DropSaid:
    """Millivolts at a known current, as typed.

    Attributes:
        drop: Between the two probes: ``34.2 mV``.
        current: Through them.
        across: discharge, charge or shunt.
        warm: How hot the switches were; of no account for a shunt.
        instrument: What it was measured with; may be empty.
    """

    drop: str
    current: str
    across: str
    warm: str = ""
    instrument: str = ""


def take_heat_test(result_id: str, said: HeatSaid, *, store: Store, change: Change) -> Result:
    """Judge the board of a result with the way of its heat measured.

    Args:
        result_id: The result.
        said: What was seen.
        store: Where things are kept.
        change: Who measured and when; why is said here, with what the test allows by itself.

    Returns:
        The new result.

    Raises:
        BoardError: What was typed cannot be taken, field by field, or the test says nothing.
        CannotJudgeError: The result is unknown, its board was not saved, or its heat has no bound.
    """
    result, kept = board_of(result_id, store)
    document: dict[str, Any] = json.loads(kept.document)
    test = _heat_test(said, _attested(change, said.instrument))
    case = open_case(with_parts(read_board(document), store=store))
    bank = _bank(case, said.bank)
    limit_c = case.junction_limit_c(bank, case.point(Corner.WORST))
    try:
        # Why two ways: with a measured junction to air a shared board would lose its own limit, which laminate passes before silicon.
        key, measured = ("board_to_air", board_to_air(case, bank, test)) if case.is_chain else ("junction_to_air", junction_to_air(case, bank, test))
        allowed = allowed_current(case, bank, test, limit_c=limit_c)
    except ValueError as error:
        raise BoardError((Problem(key="probe", value=repr(said.probe), why=str(error), allowed="a rise beyond the thermometer's doubt"),)) from error
    document["cooling"] = {**document.get("cooling", {}), key: sourced_json(_outwards(measured))}
    least, most = (spoken(rounded_down(end), "A") for end in (allowed.least, allowed.most))
    why = (
        f"measured {said.probe} on the {test.spot} at {spoken(test.current_a.value, 'A')} in air of {said.air}, case {said.lid}; "
        f"taken alone, the test allows {least} for hours, and {most} at the very most{_more_careful(case, bank)}"
    )
    return judge_and_keep(document, title=result.title, store=store, change=replace(change, why=why), slug=kept.slug)


def take_drop(result_id: str, said: DropSaid, *, store: Store, change: Change) -> Result:
    """Judge the board of a result with the resistance of a bank's switches or of the shunt measured.

    Args:
        result_id: The result.
        said: What was seen.
        store: Where things are kept.
        change: Who measured and when; why is said here.

    Returns:
        The new result.

    Raises:
        BoardError: What was typed cannot be taken, field by field.
        CannotJudgeError: The result is unknown, its board was not saved, or a bank's part has no on-resistance to grow from.
    """
    result, kept = board_of(result_id, store)
    document: dict[str, Any] = json.loads(kept.document)
    warm = () if said.across == SHUNT else (("warm", said.warm, d.TEMPERATURE),)
    fields = (("drop", said.drop, d.VOLTAGE), ("current", said.current, d.CURRENT), *warm)
    seen, problems = _read(fields, _attested(change, said.instrument))
    _refuse(problems, (_chosen("across", said.across, (*BANKS, SHUNT)),))
    if said.across == SHUNT:
        found = path_resistance(drop_v=seen["drop"], current_a=seen["current"])
        document.setdefault("board", {})["shunt"] = sourced_json(_outwards(found))
    else:
        case = open_case(with_parts(read_board(document), store=store))
        bank = _bank(case, said.across)
        found = switch_resistance(case, bank, drop_v=seen["drop"], current_a=seen["current"], junction_c=seen["warm"])
        before = document["discharge_bank"]
        # Why both: a measurement on one bank says nothing of the other, which is as that one was where nothing else is written.
        banks = {"discharge_bank": before, "charge_bank": document.get("charge_bank", before)}
        banks[f"{said.across}_bank"] = {**banks[f"{said.across}_bank"], "on_resistance": sourced_json(_outwards(found))}
        document |= banks
    why = f"measured {said.drop} across the {said.across}{'' if said.across == SHUNT else ' bank'} at {spoken(seen['current'].value, 'A')}"
    return judge_and_keep(document, title=result.title, store=store, change=replace(change, why=why), slug=kept.slug)


def _heat_test(said: HeatSaid, attested: Attestation) -> HeatTest:
    """The test as facts."""
    fields = (("current", said.current, d.CURRENT), ("probe", said.probe, d.TEMPERATURE), ("air", said.air, d.TEMPERATURE))
    seen, problems = _read(fields, attested)
    choices = (_chosen("spot", said.spot, tuple(SPOTS)), _chosen("lid", said.lid, (LID_ON, LID_OFF)), _chosen("bank", said.bank, BANKS))
    _refuse(problems, choices)
    return HeatTest(current_a=seen["current"], probe_c=seen["probe"], air_c=seen["air"], spot=SPOTS[said.spot], lid_on=said.lid == LID_ON)


def _read(fields: tuple[tuple[str, str, Dimension], ...], attested: Attestation) -> tuple[dict[str, Sourced], list[Problem]]:
    """What each field says, and what is wrong with the others."""
    seen: dict[str, Sourced] = {}
    problems = []
    for key, text, dimension in fields:
        try:
            seen[key] = replace(read_sourced(text, key, dimension=dimension), known=Known.MEASURED, attested=attested)
        except UnitError as error:
            why = error.why if text else "nothing was typed"
            problems.append(Problem(key=key, value=repr(text) if text else "", why=why, allowed=f"{error.allowed}, as in {dimension.example!r}"))
    return seen, problems


def _chosen(key: str, word: str, allowed: tuple[str, ...]) -> Problem | None:
    """What is wrong with a choice; nothing where it is one of the words."""
    return None if word in allowed else Problem(key=key, value=repr(word) if word else "", why="not chosen", allowed=", ".join(allowed))


def _refuse(problems: list[Problem], choices: tuple[Problem | None, ...]) -> None:
    """Refuse all at once where anything is wrong."""
    found = (*problems, *(one for one in choices if one))
    if found:
        raise BoardError(found)


def _bank(case: Case, name: str) -> BankCase:
    """The bank that carried the current."""
    bank = case.discharge if name == BANKS[0] else case.charge
    if case.lacks_conduction(bank):
        raise CannotJudgeError(f"A test of the {name} bank says nothing yet, for want of {', '.join(case.lacks_conduction(bank))}.")
    return bank


def _more_careful(case: Case, bank: BankCase) -> str:
    """Why a judgement may allow less than the test by itself.

    A test fixes the product of on-resistance and K/W; while the former is open, its lower end makes the latter large, and the
    judgement then puts the upper end beside it.
    """
    if not case.quantities[bank.prefix + "on_resistance"].is_open:
        return ""
    return "; the judgement is more careful as long as nobody has measured the millivolts across the bank"


def _attested(change: Change, instrument: str) -> Attestation:
    """Who measured, when, and with what."""
    return Attestation(by=change.by, on=change.at[:10], instrument=instrument or None)


def _outwards(measured: Sourced) -> Sourced:
    """A measured band to four digits, its ends rounded outwards; a single number to the nearest."""
    if not measured.is_band:
        return replace(measured, value=float(f"{measured.value:.4g}"), low=None, high=None)
    return replace(measured, low=rounded_down(measured.least), high=rounded_up(measured.most))
