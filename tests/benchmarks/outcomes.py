"""How often each outcome comes out for boards drawn at random, as a practitioner meets them: ``python tests/benchmarks/outcomes.py [boards] [seed]``.

Why: an engine that says *holds if* of nearly everything has bounds that are too loose. The draw knows what people know after a look at
a board: always the four fields and a sheet, sometimes how the heat leaves, the gate voltage, the shunt.
"""

import random
import sys
from collections import Counter, defaultdict
from typing import Any

from service.derating.assess import assess
from service.facts.board import Board
from service.facts.finding import Finding
from service.formats.board import read_board

Tables = dict[str, Any]
WORDS = ("holds", "holds if", "fails", "not determined")
SCENARIOS = {"short_circuit", "body_diode"}
# Rated voltage by cells in series, and typical milliohm at that voltage for a part with a tab.
CLASSES = {4: ((30, 40), 1.6), 8: ((40, 60, 80), 2.2), 12: ((60, 75, 80), 2.8), 16: ((75, 80, 100), 3.6)}


def part(dice: random.Random, cells: int) -> Tables:
    """A sheet of a common power switch."""
    ratings, middle = CLASSES[cells]
    volts, typical = dice.choice(ratings), middle * dice.uniform(0.6, 2.0)
    largest = typical * dice.uniform(1.15, 1.45)
    kpw = dice.uniform(0.4, 1.3)
    silicon = (150 / kpw / (largest * 1e-3 * 2.1)) ** 0.5
    sheet: Tables = {
        "package": dice.choice(["TO-220", "TO-263", "TO-263", "LFPAK56"]),
        "vds_max": {"max": f"{volts} V"},
        "vgs_max": {"max": "20 V"},
        "rds_on": [{"typ": f"{typical:.3f} mohm", "max": f"{largest:.3f} mohm", "vgs": "10 V"}],
        "tj_max": {"max": f"{dice.choice([150, 175, 175])} °C"},
        "rth_jc": {"max": f"{kpw:.3f} K/W"},
        "pd": [{"max": f"{150 / kpw:.1f} W", "tc": "25 °C"}],
        "id_cont": [{"max": f"{silicon:.1f} A", "tc": "25 °C", "limited_by": "silicon"}],
        "id_pulse": {"max": f"{4 * silicon:.1f} A"},
        "vsd": {"max": "1.2 V"},
        "eas": {"max": f"{dice.uniform(100, 500):.0f} mJ", "id": "40 A"},
    }
    if dice.random() < 0.5:
        sheet["rds_on"].append({"typ": f"{typical * 1.25:.3f} mohm", "max": f"{largest * 1.4:.3f} mohm", "vgs": "6 V"})
    if dice.random() < 0.3:
        sheet["rds_on_vs_tj"] = [[-40, 0.70], [25, 1.0], [100, 1.52], [175, 2.20]]
    return sheet


def board(dice: random.Random) -> Board:
    """A board with what people know of it."""
    cells = dice.choice(list(CLASSES))
    count = dice.randint(3, 12)
    tables: Tables = {
        "claim": {"continuous": f"{dice.choice([30, 50, 60, 80, 100, 120, 150])} A"},
        "cells": {"in_series": cells},
        "discharge_bank": {"part": "typed:A", "switches": count},
        "typed": {"A": part(dice, cells)},
        "board": {},
        "cooling": {"ambient": f"{dice.choice([25, 35, 40])} °C"},
    }
    if dice.random() < 0.4:
        tables["claim"]["surge"] = f"{2 * float(tables['claim']['continuous'].split()[0]):.0f} A for {dice.choice([3, 5, 10])} s"
    if dice.random() < 0.5:
        tables["cooling"] |= {"case_to_board": f"{dice.uniform(1, 6):.2f} K/W", "board_to_air": f"{dice.uniform(1, 4):.2f} K/W"}
        tables["cooling"] |= {"board_heat_capacity": f"{dice.uniform(30, 150):.0f} J/K"}
    if dice.random() < 0.5:
        tables["board"] |= {"gate_voltage": "10 V", "shunt": f"{dice.choice([0.25, 0.5, 1.0])} mohm", "shunt_rating": "5 W"}
    return read_board(tables)


def counted(findings: tuple[Finding, ...], tally: dict[str, Counter[str]]) -> None:
    """Add the outcomes of a report, one for each check: its least favourable bank."""
    for finding in findings:
        if finding.bank != "charge" and finding.outcome is not None:
            tally[finding.check][finding.outcome.value] += 1


def main() -> None:
    """Draw, judge and print."""
    boards = int(sys.argv[1]) if len(sys.argv) > 1 else 20
    dice = random.Random(int(sys.argv[2]) if len(sys.argv) > 2 else 20)  # noqa: S311 - boards, not secrets
    tally: dict[str, Counter[str]] = defaultdict(Counter)
    conditions: Counter[str] = Counter()
    for _ in range(boards):
        report = assess(board(dice))
        counted(report.findings, tally)
        conditions.update(f"{f.check}: {f.condition.quantity}" for f in report.findings if f.condition and f.bank != "charge")
    sys.stdout.write("\n".join(lines(tally, conditions)) + "\n")


def lines(tally: dict[str, Counter[str]], conditions: Counter[str]) -> list[str]:
    """The table, with the shares of all checks and of those that are no what-if, and what decides."""
    said = [f"{'check':24s}" + "".join(f"{word:>16s}" for word in WORDS)]
    said += [f"{check:24s}" + "".join(f"{counts[word]:16d}" for word in WORDS) for check, counts in tally.items()]
    for name, left_out in (("share of all", set()), ("share without what-ifs", SCENARIOS)):
        total: Counter[str] = sum((counts for check, counts in tally.items() if check not in left_out), Counter())
        said.append(f"{name:24s}" + "".join(f"{total[word] / max(total.total(), 1):16.0%}" for word in WORDS))
    return said + [f"{times:4d} holds if {name}" for name, times in conditions.most_common()]


if __name__ == "__main__":
    main()
