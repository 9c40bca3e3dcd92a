"""What a table is made of before any layout: parameters, their lines, and what each line states."""

import re
from dataclasses import dataclass, field
from typing import Any

ASCII = {"mΩ": "mohm", "Ω": "ohm", "°C": "degC", "°C/W": "K/W", "K/W": "K/W", "W/°C": "W/degC", "mW/°C": "mW/degC", "µJ": "uJ"}
"""Printed units under the names that a reading gives them; all others are the same."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One value that a sheet prints.

    Attributes:
        key: Name of the parameter.
        limit: min, typ or max.
        value: As printed, with its sign.
        unit: In ASCII.
        cond: Conditions by name, as a reading has them.
        page: Counted from 1.
    """

    key: str
    limit: str
    value: float
    unit: str
    cond: dict[str, Any]
    page: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of values.

    Attributes:
        values: Printed numbers by limit; by limit and column, ``max:0``, where channels or parts stand side by side.
        cond: What it holds for, by name: vgs, id, is, vds, tc, ta, tj, t, in the order in which it is printed.
        extra: Words printed with the conditions that no reading keeps.
        limited_by: package or silicon, where the line or its footnote says so.
        noted: Footnote that says so, referred to beside the number; empty where the name says it.
    """

    values: dict[str, str]
    cond: dict[str, Any] = field(default_factory=dict)
    extra: str = ""
    limited_by: str | None = None
    noted: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One parameter with its lines.

    Attributes:
        key: Name of the parameter; None where nobody reads it.
        label: What it is called.
        symbol: Its letter symbol, with ``_{...}`` for a subscript.
        unit: As printed.
        lines: At least one.
        kept: Conditions that belong to the reading.
        said: Conditions that the item has from elsewhere: its channel, its caption's temperature.
        mark: Footnote that its label refers to.
    """

    key: str | None
    label: str
    symbol: str
    unit: str
    lines: tuple[Line, ...]
    kept: tuple[str, ...] = ()
    said: dict[str, Any] = field(default_factory=dict)
    mark: str = ""


def facts_of(item: Item, page: int, columns: tuple[dict[str, Any], ...] = ({},)) -> list[Fact]:
    """What an item states when it is drawn on a page; columns say what each of several value columns holds for."""
    if item.key is None:
        return []
    out: list[Fact] = []
    for line in item.lines:
        cond = item.said | {name: value for name, value in line.cond.items() if name in item.kept}
        if any(name in line.cond for name in ("tc", "ta")) and item.key in {"id_cont", "pd"}:
            cond = {name: value for name, value in cond.items() if name not in {"tc", "ta"} or name in line.cond}
        if line.limited_by:
            cond["limited_by"] = line.limited_by
        for place, text in line.values.items():
            limit, _, column = place.partition(":")
            if limit == "min" and item.key == "tj_max":
                continue
            limit = "max" if item.key == "vgs_max" else limit
            at = [columns[int(column)]] if column else list(columns)
            out += [
                Fact(key=item.key, limit=limit, value=value, unit=ASCII.get(item.unit, item.unit), cond=cond | more | sign, page=page)
                for value, sign in _values(item.key, text)
                for more in at
            ]
    return out


def _values(key: str, text: str) -> list[tuple[float, dict[str, str]]]:
    """The numbers of a printed value: both ends of a gate rating, the upper end of a range of temperatures."""
    plain = text.replace("\u2212", "-").replace("\u2013", "-").replace(",", ".")
    if key == "tj_max":
        return [(abs(float(re.findall(r"\d+", plain)[-1])), {})]
    if re.match(r"\s*(?:±|\+\s?/\s?-)\s*\d", plain):
        return [(float(re.sub(r"[^\d.]", "", plain)), {"sign": "+-"})]
    numbers = re.findall(r"[-+]?\s?\d+(?:\.\d+)?", plain.replace("~", " ").replace("to", " ").replace("/", " "))
    return [(float(number.replace(" ", "")), {}) for number in numbers]
