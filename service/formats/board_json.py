"""A board as switchbank.board/1, defaults filled in; reading it again gives the same board."""

from service.facts.board import Bank, Board, Cells, Cooling, Fault, Leads
from service.facts.claim import Claim
from service.facts.sourced import Sourced
from service.formats.board import SCHEMA
from service.formats.part_name import TYPED
from service.formats.sourced import sourced_json, sourced_text
from service.formats.typed_part import typed_part_json

Written = dict[str, object]


def board_json(board: Board) -> Written:
    """Write a board.

    Args:
        board: The facts.

    Returns:
        Plain tables, text, counts and yes/no in the order of the contract; what is unknown is left out.
    """
    written: Written = {
        "schema": SCHEMA,
        "claim": _claim(board.claim),
        "cells": _cells(board.cells),
        "discharge_bank": _bank(board.discharge_bank),
        "charge_bank": _bank(board.charge_bank),
        "board": _board(board),
        "cooling": _cooling(board.cooling),
        "limits": _quantities(junction=board.junction_limit_c, junction_surge=board.junction_surge_limit_c),
        "leads": _leads(board.leads) if board.leads else {},
        "fault": _fault(board.fault),
        "rules": {"set": board.rule_set},
        "typed": _typed(board),
    }
    return {name: value for name, value in written.items() if value != {}}


def _quantities(**facts: Sourced | None) -> Written:
    """The quantities that are known."""
    return {name: sourced_json(fact) for name, fact in facts.items() if fact is not None}


def _claim(claim: Claim) -> Written:
    """What the pack is said to do."""
    written = _quantities(continuous=claim.continuous_a, continuous_charge=claim.continuous_charge_a)
    if claim.surge_a is not None and claim.surge_s is not None:
        text = f"{sourced_text(claim.surge_a)} for {sourced_text(claim.surge_s)}"
        written["surge"] = sourced_json(claim.surge_a, text=text)
    return {**written, "packs_in_series": claim.packs_in_series}


def _cells(cells: Cells) -> Written:
    """The cells behind the board."""
    return {
        "in_series": cells.in_series,
        **_quantities(charge_voltage=cells.charge_v, empty_voltage=cells.empty_v, resistance=cells.resistance_ohm, fault_voltage=cells.fault_v),
    }


def _bank(bank: Bank) -> Written:
    """Equal switches in parallel."""
    written: Written = {"part": bank.part or _part(bank), "switches": bank.switches}
    channel = {"channel": bank.channel} if bank.channel else {}
    return {**written, **channel, **_quantities(on_resistance=bank.on_resistance_ohm)}


def _part(bank: Bank) -> str:
    """The name of a part that no file has named."""
    return TYPED + bank.switch.marking if bank.switch.typed else bank.switch.marking


def _board(board: Board) -> Written:
    """The board itself."""
    written: Written = {
        "port": board.port.value,
        **_quantities(gate_voltage=board.gate_v, charger_voltage=board.charger_v, shunt=board.shunt_ohm, shunt_rating=board.shunt_rating_w),
        "shunt_on_board": board.shunt_on_board,
        **_quantities(joints=board.joints_ohm),
    }
    return written if board.recloses_on_current is None else {**written, "recloses_on_current": board.recloses_on_current}


def _cooling(cooling: Cooling) -> Written:
    """How heat leaves."""
    return _quantities(
        ambient=cooling.ambient_c,
        junction_to_air=cooling.junction_to_air_kpw,
        case_to_board=cooling.case_to_board_kpw,
        board_to_air=cooling.board_to_air_kpw,
        board_heat_capacity=cooling.board_heat_jpk,
        board_limit=cooling.board_limit_c,
    )


def _leads(leads: Leads) -> Written:
    """The way from pack to load."""
    written: Written = {**_quantities(length=leads.length_m), "conductors": leads.conductors}
    size = {"size": leads.size_text} if leads.size_text else _quantities(size=leads.area_mm2)
    return {**written, **size, **_quantities(spacing=leads.spacing_m, temperature=leads.temperature_c)}


def _fault(fault: Fault) -> Written:
    """What is known about a short circuit."""
    return _quantities(
        protection_delay=fault.protection_delay_s,
        loop_inductance=fault.loop_inductance_h,
        extra_inductance=fault.extra_inductance_h,
    )


def _typed(board: Board) -> Written:
    """The typed parts that the banks use, each under its name."""
    banks = [bank for bank in (board.discharge_bank, board.charge_bank) if bank.switch.typed]
    return {(bank.part or _part(bank)).removeprefix(TYPED): typed_part_json(bank.switch) for bank in banks}
