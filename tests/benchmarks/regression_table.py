"""How well the reader reads real datasheets: one table per maker and one per parameter.

Run it with ``python tests/benchmarks/regression_table.py FOLDER``, where FOLDER holds ``labels.jsonl`` (what each sheet prints, typed by eye)
and ``pdf/``. Found: labels that a reading of any status fits. Accepted: those that an accepted reading fits. Wrong: accepted readings that fit
no label. Noise: readings for review that fit none.
"""

import argparse
import json
import re
import sys
from collections import Counter, defaultdict
from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path
from typing import Any

from parsers.errors import DatasheetError
from parsers.grammar.unit import SCALE, unit_named
from parsers.harvest import harvest
from parsers.pipeline import pages_in, read_datasheet
from parsers.stages.identity import identify
from parsers.stages.open_document import open_document
from service.facts.reading import Reading

NUMBERS = ("vgs", "id", "is_", "vds", "tc", "ta", "tsp", "tj")
WORDS = ("ch", "part", "limited_by")
DECISIVE = {"rds_on": ("vgs", "tj"), "id_cont": ("tc", "ta", "tsp", "limited_by"), "pd": ("tc", "ta", "tsp", "limited_by")}
"""Conditions without which a value of a parameter misleads."""
LAYERS = ("good", "garbled")
COUNTS = ("labels", "found", "accepted", "wrong", "noise")


def main() -> None:
    """Read every sheet of a folder and print the tables."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--without-lines", action="store_true", help="take the drawn lines off every page first: how the reader does by place alone")
    arguments = parser.parse_args()
    folder, way = arguments.folder, read_by_place if arguments.without_lines else read
    makers: dict[str, Counter[str]] = defaultdict(Counter)
    keys: dict[str, Counter[str]] = defaultdict(Counter)
    for line in (folder / "labels.jsonl").read_text(encoding="utf-8").splitlines():
        label = json.loads(line)
        if label["text_layer"] in LAYERS:
            for key, counts in counted(label["values"], way(folder / "pdf" / label["file"])).items():
                keys[key].update(counts)
                makers[label["manufacturer"]].update(counts)
    print_table("parameter", keys)
    print_table("maker", makers)


def read(file: Path) -> tuple[Reading, ...]:
    """The readings of a file; none where it is refused."""
    try:
        return read_datasheet(file.read_bytes(), file.name).readings
    except DatasheetError as error:
        sys.stderr.write(f"{file.name}: refused, {error.kind}: {error}\n")
        return ()


def read_by_place(file: Path) -> tuple[Reading, ...]:
    """The same with no drawn line on any page."""
    try:
        document = open_document(file.read_bytes())
        pages = [replace(page, rules=()) for page in pages_in(document)]
        return harvest(pages, document.sha256, identify(document, pages).polarity).readings
    except DatasheetError as error:
        sys.stderr.write(f"{file.name}: refused, {error.kind}: {error}\n")
        return ()


def counted(labels: Iterable[dict[str, Any]], readings: Iterable[Reading]) -> dict[str, Counter[str]]:
    """Labels and readings held against each other, by parameter."""
    labels, readings = [label for label in labels if label.get("value") is not None], list(readings)
    out: dict[str, Counter[str]] = defaultdict(Counter)
    for label in labels:
        if (label.get("cond") or {}).get("where") != "headline":
            hits = [reading for reading in readings if fits(reading, label)]
            out[label["key"]] += Counter(labels=1, found=bool(hits), accepted=any(hit.status == "accepted" for hit in hits))
    for reading in readings:
        if not any(fits(reading, label) for label in labels):
            out[reading.key]["wrong" if reading.status == "accepted" else "noise"] += 1
    return out


def fits(reading: Reading, label: dict[str, Any]) -> bool:
    """Whether a reading says what a label says, with every condition without which the value misleads."""
    if (reading.key, reading.limit.value, reading.page) != (label["key"], label["limit"], label["page"]):
        return False
    cond = conditions(label.get("cond") or {})
    said = {name: getattr(reading.cond, name) for name in (*NUMBERS, *WORDS, "sign")}
    return same_value(reading, label, both="sign" in cond or bool(said["sign"])) and agree(said, cond, DECISIVE.get(reading.key, ()))


def conditions(cond: dict[str, Any]) -> dict[str, Any]:
    """A label's conditions under the names of a reading's; the mounting base is the case."""
    named = {{"is": "is_", "tmb": "tc"}.get(name, name): value for name, value in cond.items() if value not in (None, "")}
    return {name: plain(value) if name in NUMBERS else value for name, value in named.items()}


def plain(value: object) -> float | None:
    """A number, also where the label wrote it into words."""
    found = re.match(r"\s*[-+]?\d+(?:\.\d+)?", str(value))
    return float(found.group()) if found else None


def same_value(reading: Reading, label: dict[str, Any], *, both: bool) -> bool:
    """Whether two values are the same to half a percent, signs aside where the rating is of both."""
    unit = unit_named(str(label["unit"]).replace("degC", "°C"))
    wanted = float(label["value"]) * SCALE[unit] if unit else float("nan")
    given = abs(reading.si) if both else reading.si
    return abs(given - (abs(wanted) if both else wanted)) <= 0.005 * abs(wanted)


def agree(said: dict[str, Any], cond: dict[str, Any], decisive: tuple[str, ...]) -> bool:
    """Whether no condition contradicts, and none that decides is missing."""
    for name in (*NUMBERS, *WORDS):
        mine, theirs = said[name], cond.get(name)
        if mine is not None and theirs is not None:
            if name in WORDS and str(mine).lower() != str(theirs).lower():
                return False
            if name in NUMBERS and abs(abs(mine) - abs(theirs)) > 0.02 * max(abs(mine), abs(theirs)):
                return False
        if mine is None and theirs is not None and (name in decisive or name in {"ch", "part"}) and not (name == "tj" and 20 <= theirs <= 30):
            return False
    return True


def print_table(head: str, rows: dict[str, Counter[str]]) -> None:
    """One line for each row and one for their sum."""
    total: Counter[str] = sum(rows.values(), Counter())
    lines = [f"\n{head:56}" + "".join(f"{name:>10}" for name in COUNTS)]
    for name, counts in [*sorted(rows.items()), ("all", total)]:
        lines.append(f"{name:56}" + "".join(f"{counts[count]:10}" for count in COUNTS))
    sys.stdout.write("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
