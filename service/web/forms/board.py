"""The board form: its fields, and the board document that a filled-in form stands for.

The field names are the keys of the board document, so that an error of the document stands beside its field.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

SCHEMA = "switchbank.board/1"
YES_NO = {"yes": True, "no": False}


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One field of the form.

    Attributes:
        key: Key of the board document: ``claim.continuous``.
        label: What is asked, in plain words.
        hint: What may be written, and what holds when nothing is.
        kind: quantity, amperes (a bare number is taken in A), count, flag, choice (none is assumed) or text.
        choices: The words that may be chosen; empty for a free field.
    """

    key: str
    label: str
    hint: str = ""
    kind: str = "quantity"
    choices: tuple[str, ...] = ()


FOUR = (
    Field(key="discharge_bank.part", label="Part on the switches", hint="as read, ? for doubt", kind="text"),
    Field(key="discharge_bank.switches", label="Switches per bank", hint="in parallel, counted", kind="count"),
    Field(key="cells.in_series", label="Cells in series", hint="4 to 16 as a rule", kind="count"),
    Field(key="claim.continuous", label="Claimed current for hours", hint="in A", kind="amperes"),
)

GROUPS: tuple[tuple[str, tuple[Field, ...]], ...] = (
    (
        "What else is claimed",
        (
            Field(key="claim.surge", label="Surge", hint="as in 180 A for 5 s"),
            Field(key="claim.continuous_charge", label="Charge current for hours", hint="as the discharge claim", kind="amperes"),
            Field(key="claim.packs_in_series", label="Packs in series", hint="1 assumed", kind="count"),
        ),
    ),
    (
        "Cooling",
        (
            Field(key="cooling.ambient", label="Air around the board", hint="40 °C assumed"),
            Field(key="cooling.junction_to_air", label="Each switch to air", hint="40 K/W to 60 K/W assumed; a measured figure replaces it"),
            Field(key="cooling.case_to_board", label="Case to board, each switch", hint="as in 4 K/W; with the next, instead of the figure above"),
            Field(key="cooling.board_to_air", label="Board to air, all together", hint="as in 2.5 K/W"),
            Field(key="cooling.board_heat_capacity", label="Heat capacity of board and plate", hint="as in 55 J/K"),
            Field(key="cooling.board_limit", label="Hottest that the board may get", hint="as in 110 °C"),
        ),
    ),
    (
        "Board",
        (
            Field(key="board.port", label="Port", hint="one pair of terminals, or two", kind="text", choices=("common", "separate")),
            Field(key="charge_bank.part", label="Part on the charge bank", hint="the same as above", kind="text"),
            Field(key="charge_bank.switches", label="Switches of the charge bank", hint="as many as above", kind="count"),
            Field(key="board.gate_voltage", label="Gate voltage", hint="10 V assumed"),
            Field(key="board.shunt", label="Shunt", hint="as in 0.25 mΩ"),
            Field(key="board.shunt_rating", label="Shunt rating", hint="as in 5 W"),
            Field(key="board.joints", label="Joints and tracks", hint="as in 0.2 mΩ"),
            Field(
                key="board.recloses_on_current",
                label="Re-closes a blocked bank when current flows",
                hint="unknown: both cases are shown",
                kind="flag",
                choices=("yes", "no"),
            ),
            Field(key="board.charger_voltage", label="Charger's largest voltage", hint="cells × 3.65 V assumed"),
        ),
    ),
    (
        "Cells",
        (
            Field(key="cells.charge_voltage", label="Charge voltage of a cell", hint="3.65 V assumed"),
            Field(key="cells.empty_voltage", label="Empty voltage of a cell", hint="2.5 V assumed"),
            Field(key="cells.resistance", label="Resistance of a cell, 1 kHz", hint="as in 0.4 mΩ"),
        ),
    ),
    (
        "Leads and short circuit",
        (
            Field(key="leads.length", label="Leads, one way", hint="as in 0.3 m"),
            Field(key="leads.conductors", label="Conductors per polarity", hint="1 assumed", kind="count"),
            Field(key="leads.size", label="Size of a conductor", hint="as in 2 AWG, or 25 mm2", kind="text"),
            Field(key="fault.protection_delay", label="Protection delay", hint="as in 250 µs"),
            Field(key="fault.loop_inductance", label="Loop inductance", hint="from the leads, when nothing is said"),
        ),
    ),
    (
        "Limits and rules",
        (
            Field(key="limits.junction", label="Junction limit of your own", hint="the rule set's applies where lower"),
            Field(key="limits.junction_surge", label="Junction limit for a surge", hint="the same"),
            Field(key="rules.set", label="Derating rules", hint="maker's limit", kind="text", choices=("maker", "trade-80", "eee-inst-002")),
        ),
    ),
)

FIELDS = FOUR + tuple(field for _, fields in GROUPS for field in fields)


def document_of(values: Mapping[str, str]) -> dict[str, Any]:
    """Turn what was typed into a board document; what is no number stays text, so that the document's reader can say what is wrong.

    Args:
        values: Field names and texts; empty fields are left out.

    Returns:
        The document (schema switchbank.board/1), not yet checked.
    """
    document: dict[str, Any] = {"schema": SCHEMA}
    for field in FIELDS:
        text = values.get(field.key, "").strip()
        if text:
            table, name = field.key.split(".")
            document.setdefault(table, {})[name] = typed(field, text)
    if "charge_bank" in document:
        document["charge_bank"] = {**document.get("discharge_bank", {}), **document["charge_bank"]}
    return document


def typed(field: Field, text: str) -> str | int | bool:
    """What a field's text stands for."""
    if field.kind == "count" and text.isascii() and text.isdigit() and len(text) <= 4:
        return int(text)
    if field.kind == "flag":
        return YES_NO.get(text, text)
    if field.kind == "amperes" and text.isascii() and text.replace(".", "", 1).isdigit():
        return f"{text} A"
    return text


def values_of(document: Mapping[str, Any]) -> dict[str, str]:
    """Fill the form from a board document; measured tables show their value."""
    values = {}
    for field in FIELDS:
        table, name = field.key.split(".")
        written = document.get(table, {}).get(name)
        written = written.get("value") if isinstance(written, dict) else written
        if written is not None:
            values[field.key] = ("yes" if written else "no") if isinstance(written, bool) else str(written)
    return values
