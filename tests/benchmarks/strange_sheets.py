"""How well the reader reads sheets that it has never seen: strange but likely layouts, wordings and quirks, combined at random.

Run it with ``python tests/benchmarks/strange_sheets.py --seed 7 --sheets 200``. The same seed draws the same sheets. Found: printed values that a
reading of any status fits. Accepted: those that an accepted reading fits. Wrong: accepted readings that fit nothing printed. Noise: readings for
review that fit nothing. Look at the sheets of one seed while you work, and report another.
"""

import argparse
import sys
from collections import Counter, defaultdict
from pathlib import Path
from random import Random

from strange.judging import counted
from strange.sheet import Sheet

from parsers.errors import DatasheetError
from parsers.pipeline import read_datasheet
from service.facts.reading import Reading

COUNTS = ("labels", "found", "accepted", "wrong", "noise")


def main() -> None:
    """Draw, read, compare, print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seed", default="1")
    parser.add_argument("--sheets", type=int, default=200)
    parser.add_argument("--only", type=int, help="this sheet of the seed alone")
    parser.add_argument("--keep", type=Path, help="write the sheets into this folder")
    parser.add_argument("--list", action="store_true", help="list what was wrong, missed or left to a person")
    chosen = parser.parse_args()
    keys: dict[str, Counter[str]] = defaultdict(Counter)
    signs: Counter[str] = Counter()
    for number in range(chosen.sheets) if chosen.only is None else [chosen.only]:
        sheet = Sheet(Random(f"{chosen.seed}:{number}"))  # noqa: S311  nothing secret is drawn
        data, name = sheet.drawn(), f"{chosen.seed}-{number:03d}.pdf"
        if chosen.keep:
            chosen.keep.joinpath(name).write_bytes(data)
        readings = read(data, name)
        counts, wrong, missed = counted(sheet.facts, readings)
        for key, count in counts.items():
            keys[key].update(count)
        for reading in wrong:
            signs[" ".join(reading.evidence)] += 1
            sys.stdout.write(f"wrong   {name} {told(reading)}\n")
        if chosen.list:
            sys.stdout.writelines(f"missed  {name} {one.key} {one.limit} {one.value:g} {one.unit} {one.cond} p{one.page}\n" for one in missed)
            sys.stdout.writelines(f"review  {name} {told(one)}\n" for one in readings if one.status == "review")
    print_table(keys)
    sys.stdout.writelines(f"{count:5} wrong with {evidence}\n" for evidence, count in signs.most_common())


def read(data: bytes, name: str) -> tuple[Reading, ...]:
    """The readings of a sheet; none where it is refused."""
    try:
        return read_datasheet(data, name).readings
    except DatasheetError as error:
        sys.stdout.write(f"refused {name} {error.kind}: {error}\n")
        return ()


def told(one: Reading) -> str:
    """A reading in a line."""
    said = {name: value for name in one.cond.__slots__ if (value := getattr(one.cond, name)) is not None}
    return f"{one.key} {one.limit} {one.value:g} {one.unit} {said} p{one.page} | {one.quote} | {'; '.join(one.trace)} | {one.why}"


def print_table(rows: dict[str, Counter[str]]) -> None:
    """One line for each parameter and one for their sum, with shares."""
    total: Counter[str] = sum(rows.values(), Counter())
    lines = [f"\n{'parameter':12}" + "".join(f"{name:>10}" for name in COUNTS)]
    lines += [f"{name:12}" + "".join(f"{counts[count]:10}" for count in COUNTS) for name, counts in [*sorted(rows.items()), ("all", total)]]
    labels = max(1, total["labels"])
    lines.append(
        f"found {total['found'] / labels:.4f}  accepted {total['accepted'] / labels:.4f}  wrong {total['wrong']}  noise {total['noise'] / labels:.4f}"
    )
    sys.stdout.write("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
