"""How often each outcome comes out, for the example's boards and for boards drawn at random: ``python tests/benchmarks/outcomes.py [seed ...]``.

Why: an engine that says *holds if* of nearly everything has bounds that are too loose. The draw knows what people know after a look at
a board: always the four fields and a sheet, sometimes how the heat leaves, the gate voltage, the shunt. Aim: neither the example nor
any draw says *holds if* of more than a third.
"""

import random
import sys
import tempfile
import tomllib
from collections import Counter
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from service.derating.assess import assess
from service.facts.board import Board
from service.formats.board import read_board
from service.formats.report import report_json
from service.usecases.refusals import CannotJudgeError
from service.wiring.judging import judge
from service.wiring.reading import read_sheets

Tables = dict[str, Any]
Report = dict[str, Any]
FIXTURES = Path(__file__).resolve().parents[2] / "fixtures"
BOARDS, SEEDS = 20, (20, 21, 22, 23, 24)
WORDS = ("holds", "not determined", "holds if", "fails")
LARGEST_SHARE = 1 / 3
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


def drawn(seed: int) -> list[Report]:
    """Reports of boards drawn at random."""
    dice = random.Random(seed)  # noqa: S311 - boards, not secrets
    return [report_json(assess(board(dice))) for _ in range(BOARDS)]


def example() -> list[Report]:
    """Reports of the example's boards whose part is known; their sheets are read here and now."""
    scenario = tomllib.loads((FIXTURES / "packs" / "scenario.toml").read_text(encoding="utf-8"))
    reports: list[Report] = []
    with tempfile.TemporaryDirectory() as folder:
        list(read_sheets([FIXTURES / name for name in scenario["sheets"]], workers=1, keep=True, data_dir=Path(folder)))
        for entry in scenario["boards"]:
            written = tomllib.loads((FIXTURES / entry["file"]).read_text(encoding="utf-8"))
            try:
                reports.append(judge(written, data_dir=Path(folder)).report)
            except CannotJudgeError:
                continue
    return reports


def counted(reports: Iterable[Report]) -> dict[str, Counter[str]]:
    """Outcomes by check, one of each report: that of its least favourable bank."""
    tally: dict[str, Counter[str]] = {}
    for report in reports:
        worst: dict[str, str] = {}
        for finding in report["findings"]:
            if finding["outcome"]:
                worst[finding["check"]] = max(worst.get(finding["check"], WORDS[0]), finding["outcome"], key=WORDS.index)
        for check, word in worst.items():
            tally.setdefault(check, Counter())[word] += 1
    return tally


def shares(tally: dict[str, Counter[str]], *, without: Iterable[str] = ()) -> dict[str, float]:
    """Share of each outcome over all checks but some."""
    total: Counter[str] = sum((counts for check, counts in tally.items() if check not in without), Counter())
    return {word: total[word] / max(total.total(), 1) for word in WORDS}


def told(title: str, reports: list[Report]) -> bool:
    """Print the table of some reports, with the shares of all checks and of those that are no what-if, and what decides."""
    tally = counted(reports)
    said = [f"{title:24s}" + "".join(f"{word:>16s}" for word in WORDS)]
    said += [f"{check:24s}" + "".join(f"{counts[word]:16d}" for word in WORDS) for check, counts in tally.items()]
    for name, left_out in (("share of all", ()), ("share without what-ifs", SCENARIOS)):
        said.append(f"{name:24s}" + "".join(f"{share:16.0%}" for share in shares(tally, without=left_out).values()))
    conditions = Counter(f"{f['check']}: {f['condition']['quantity']}" for report in reports for f in report["findings"] if f.get("condition"))
    said += [f"{times:4d} holds if {name}" for name, times in conditions.most_common()]
    sys.stdout.write("\n".join(said) + "\n\n")
    sys.stdout.flush()
    return shares(tally)["holds if"] <= LARGEST_SHARE


def main() -> int:
    """Judge and print; 1 where *holds if* takes too large a share."""
    seeds = [int(seed) for seed in sys.argv[1:]] or SEEDS
    kept = [told("the example", example())]
    kept += [told(f"{BOARDS} boards, seed {seed}", drawn(seed)) for seed in seeds]
    return 0 if all(kept) else 1


if __name__ == "__main__":
    sys.exit(main())
