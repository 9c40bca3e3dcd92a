"""The working of a finding: its formula with the numbers put in, and every number with how it is known.

The numbers are those of the frozen report, in the worst corner. A line is shown only where all its numbers are known and it adds up,
so that nothing wrong is shown of a report that an older engine has made.
"""

import ast
import operator
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from math import isclose
from typing import Any

from service.derating.rules import RULE_SETS
from service.derating.spoken import spoken
from service.facts.sourced import Sourced
from service.formats.board import read_board

Finding = Mapping[str, Any]
Numbers = Mapping[str, tuple[float, str]]

HEAT = "({claimed_current} / {switches})² × {on_resistance} × {growth} = {switch_loss_w}"
GROWTH = "(({junction_degc} + 273.15) / 298.15) ^ {on_resistance_exponent} = {growth}"
SHARED = "{pulse_a} × {current_spread} / ({current_spread} + {switches} − 1) = {switch_pulse_a}"
LINES: Mapping[str, tuple[str, ...]] = {
    "drain_source_voltage": (
        "{packs} × {cells} × {charge_voltage} = {open_switch_v}",
        "{packs} × {cells} × {charge_voltage} + {charger_voltage} = {open_switch_v}",
        "{drain_voltage_factor} × {drain_voltage} = {allowed_v}",
    ),
    "gate_drive": ("{gate_voltage_factor} × {gate_rating} = {allowed_v}",),
    "continuous_current": (
        GROWTH,
        HEAT,
        "{ambient} + {junction_to_air} × {switch_loss_w} = {junction_degc}",
        "{board_degc} + ({junction_case} + {case_to_board}) × {switch_loss_w} = {junction_degc}",
    ),
    "current_sharing": ("{switches} × {current_spread} / ({current_spread} + {switches} − 1) = {low_switch_current_cold_ratio}",),
    "conduction_loss": ("{claimed_current} × {path_resistance_ohm} = {path_drop_v}", "{path_drop_v} × {claimed_current} = {path_loss_w}"),
    "power_rating": (
        HEAT,
        "{power_factor} × {headline_w} × ({junction_max} − {case_degc}) / ({junction_max} − 25) = {allowed_w}",
    ),
    "package_current": ("{claimed_current} / {switches} = {switch_current_a}",),
    "pulsed_current": (SHARED, "{current_factor} × {pulsed_drain_current} = {allowed_pulse_a}"),
    # Forty steps, one after the other: no line of arithmetic holds them; its figures stand in the table.
    "surge_current": (),
    "shunt": ("({claimed_current})² × {shunt_resistance} = {shunt_power_w}",),
    "short_circuit": (
        "{supply_v} / {loop_resistance_ohm} = {prospective_current_a}",
        "{loop_inductance_h} × ({turn_off_current_a})² / 2 = {stored_energy_j}",
    ),
    "body_diode": (
        "{blocked_current} × {diode_voltage} = {bank_diode_loss_w}",
        "{board_degc} + ({junction_case} + {case_to_board}) × {switch_diode_loss_w} = {junction_degc}",
        "{ambient} + {junction_to_air} × {switch_diode_loss_w} = {junction_degc}",
    ),
}
# How far a line may be off, of numbers that a report rounds nowhere.
CLOSE = 1e-4
OPERATORS: Mapping[type[ast.operator], Callable[[float, float], float]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """How one finding was reached.

    Attributes:
        finding: As the report has it.
        lines: Its formula with the numbers put in, in the worst corner.
        facts: Every number that it used, once, as the report's inputs.
        defaults: Every default that it used, as the report's assumptions.
    """

    finding: Finding
    lines: tuple[str, ...]
    facts: tuple[Mapping[str, Any], ...]
    defaults: tuple[Mapping[str, Any], ...]


def working(finding: Finding, report: Mapping[str, Any]) -> Working:
    """Show the working of a finding.

    Args:
        finding: One of the report.
        report: As switchbank.report/1.

    Returns:
        The working; without lines where the check is none of today's.
    """
    numbers = numbers_of(finding, report)
    return Working(
        finding=finding,
        lines=tuple(filled(line, numbers) for line in LINES.get(finding["check"], ()) if adds_up(line, numbers)),
        facts=tuple({fact["name"]: fact for fact in finding["inputs"]}.values()),
        defaults=tuple(finding["assumptions"]),
    )


def numbers_of(finding: Finding, report: Mapping[str, Any]) -> dict[str, tuple[float, str]]:
    """Every number of a finding in the worst corner, by its name without the bank's, with its unit."""
    found: dict[str, tuple[Any, str]] = {**dict(_of_board(report)), **dict(_of_rules(report))}
    for fact in finding["inputs"]:
        found[fact["name"]] = (fact.get("high", fact["value"]), fact["unit"])
    found |= {one["name"]: (one["used"], one["unit"]) for one in finding["assumptions"]}
    found |= {name: (ends["worst"], ends["unit"]) for name, ends in finding["values"].items()}
    found |= {figure["quantity"]: (figure["value"], figure["unit"]) for figure in (finding["limit"], finding["demand"]) if figure}
    # Why discharge: what is said of both banks alike is said with the numbers of the first.
    own = "charge" if finding["bank"] == "charge" else "discharge"
    bare = {name.removeprefix(f"{own}_"): value for name, value in found.items()}
    known = {name: (value, unit) for name, (value, unit) in (bare | found).items() if value is not None}
    return {**known, **dict(_derived(known))}


def adds_up(line: str, numbers: Numbers) -> bool:
    """Whether all numbers of a line are known and its two sides agree."""
    if any(name not in numbers for name in re.findall(r"{(\w+)}", line)):
        return False
    try:
        left, right = (_value(side, numbers) for side in line.split(" = "))
    except (ArithmeticError, TypeError):
        return False
    return isclose(left, right, rel_tol=CLOSE)


def filled(line: str, numbers: Numbers) -> str:
    """A line with its numbers and their units."""
    return re.sub(r"{(\w+)}", lambda name: _written(*numbers[name[1]]), line)


def _written(value: float, unit: str) -> str:
    """A number as people write it: of amperes in a short circuit all digits, and no exponent."""
    text = spoken(value, unit)
    return f"{value:.0f} {unit}" if "e+" in text else text


def _of_board(report: Mapping[str, Any]) -> Iterator[tuple[str, tuple[float, str]]]:
    """What the board says and no finding repeats."""
    board = read_board(report["board"])
    yield "packs", (board.claim.packs_in_series, "1")
    yield "cells", (board.cells.in_series, "1")
    pulse: Sourced = board.claim.surge_a or board.claim.continuous_a
    yield "pulse_a", (pulse.most, "A")
    if board.charger_v:
        yield "charger_voltage", (board.charger_v.most, "V")


def _of_rules(report: Mapping[str, Any]) -> Iterator[tuple[str, tuple[float, str]]]:
    """The factors of the rule set."""
    rules = RULE_SETS[report["rule_set"]]
    for name in ("drain_voltage_factor", "gate_voltage_factor", "current_factor", "power_factor"):
        yield name, (getattr(rules, name), "1")


def _derived(known: Numbers) -> Iterator[tuple[str, tuple[float, str]]]:
    """Heat of one switch, and how much its on-resistance has grown: quotients of numbers that the report gives."""
    wanted = ("claimed_current", "switches", "on_resistance")
    loss = known.get("switch_loss_w") or known.get("bank_loss_w")
    if loss is None or any(name not in known for name in wanted):
        return
    current, switches, ohm = (known[name][0] for name in wanted)
    own_w = loss[0] if "switch_loss_w" in known else loss[0] / switches
    yield "switch_loss_w", (own_w, "W")
    yield "growth", (own_w / ((current / switches) ** 2 * ohm), "1")


def _value(side: str, numbers: Numbers) -> float:
    """One side of a line as a number."""
    text = re.sub(r"{(\w+)}", lambda name: f"({numbers[name[1]][0]!r})", side)
    for sign, meant in (("×", "*"), ("−", "-"), ("^", "**"), ("²", "**2")):
        text = text.replace(sign, meant)
    return _reckoned(ast.parse(text.strip(), mode="eval").body)


def _reckoned(node: ast.expr) -> float:
    """Reckon plain arithmetic of numbers, and nothing else."""
    if isinstance(node, ast.BinOp):
        return OPERATORS[type(node.op)](_reckoned(node.left), _reckoned(node.right))
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
        return -_reckoned(node.operand)
    if isinstance(node, ast.Constant) and isinstance(node.value, int | float):
        return float(node.value)
    raise TypeError(f"{ast.dump(node)} is no plain arithmetic")
