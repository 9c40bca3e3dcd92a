"""The form for a part without a sheet: its fields, and the switch that a filled-in form stands for."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from service.facts.switch import Switch
from service.formats.board import read_board
from service.formats.errors import BoardError
from service.web.forms.board import SCHEMA, Field

FIELDS = (
    Field(key="vds_max", label="Drain-source voltage rating", hint="80 V"),
    Field(key="rds_on", label="On-resistance, at most", hint="3.2 mΩ"),
    Field(key="vgs", label="at a gate voltage of", hint="10 V"),
    Field(key="tj_max", label="Highest junction temperature", hint="175 °C"),
    Field(key="pd", label="Power dissipation, case at 25 °C", hint="188 W; or the next"),
    Field(key="rth_jc", label="Thermal resistance, junction to case", hint="0.8 K/W"),
    Field(key="id_cont", label="Continuous drain current, case at 25 °C", hint="145 A"),
    Field(key="id_pulse", label="Pulsed drain current", hint="580 A; without it no pulse check"),
    Field(key="vsd", label="Body-diode voltage, at most", hint="1.2 V; without it no diode check"),
    Field(key="vgs_max", label="Gate-source voltage rating", hint="20 V"),
    Field(key="package", label="Package", hint="TO-263", kind="text"),
)
REQUIRED = ("vds_max", "rds_on", "tj_max", "id_cont")
EITHER = ("pd", "rth_jc")
AT_CASE_25 = {"tc": "25 °C"}


def switch_of(marking: str, values: Mapping[str, str]) -> tuple[Switch | None, dict[str, str]]:
    """Turn what was typed into a switch.

    Args:
        marking: The name that the part goes by.
        values: Field names and texts.

    Returns:
        The switch and no errors, or None and what is wrong with each field.
    """
    typed = {field.key: text for field in FIELDS if (text := values.get(field.key, "").strip())}
    errors = {key: "needed for a judgement" for key in REQUIRED if key not in typed}
    errors |= {} if any(key in typed for key in EITHER) else dict.fromkeys(EITHER, "one of power and thermal resistance is needed")
    if errors:
        return None, errors
    try:
        board = read_board(carrier(part_table(typed)))
    except BoardError as error:
        return None, {field_of(problem.key): f"{problem.why}; allowed: {problem.allowed}" for problem in error.problems}
    return replace(board.discharge_bank.switch, marking=marking), {}


def part_table(typed: Mapping[str, str]) -> dict[str, Any]:
    """The typed part as a table of a board file, so that one reader takes both in."""
    table: dict[str, Any] = {"polarity": "N"}
    for key in ("vds_max", "vgs_max", "tj_max", "rth_jc", "id_pulse", "vsd"):
        if key in typed:
            table[key] = {"max": typed[key]}
    for key in ("pd", "id_cont"):
        if key in typed:
            table[key] = [{"max": typed[key], **AT_CASE_25}]
    table["rds_on"] = [{"max": typed["rds_on"], "vgs": typed.get("vgs", "10 V")}]
    return {**table, **({"package": typed["package"]} if "package" in typed else {})}


def carrier(table: Mapping[str, Any]) -> dict[str, Any]:
    """A board that does nothing but carry the part."""
    bank = {"part": "typed:PART", "switches": 1}
    return {"schema": SCHEMA, "claim": {"continuous": "1 A"}, "cells": {"in_series": 1}, "discharge_bank": bank, "typed": {"PART": dict(table)}}


def field_of(key: str) -> str:
    """The form's field for a key of the board file: ``typed.PART.rds_on.0.vgs`` is the gate voltage's."""
    parts = key.replace("[", ".").replace("]", "").split(".")
    return next((part for part in reversed(parts) if any(part == field.key for field in FIELDS)), "vds_max")
