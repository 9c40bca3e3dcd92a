"""Read the hostile set and hold the readings against its manifest: one command, exit status 1 when a file fails.

The set's maker and the scorer lie in the folder ``shared`` beside the checkout; the files go to a folder that is removed afterwards.
"""

import argparse
import json
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterable, Iterator
from pathlib import Path

from parsers.process import read_documents, start
from service.facts.reading import Sheet
from service.formats.sheet import sheet_json

SHARED = Path(__file__).resolve().parents[3] / "shared"


def main() -> int:
    """Make the set, read it, score it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--workers", type=int, help="documents at the same time; all cores where nothing is said")
    parser.add_argument("--only", default="", help="files whose name begins so")
    parser.add_argument("--keep", type=Path, help="write what was read to this file")
    chosen = parser.parse_args()
    start()
    with tempfile.TemporaryDirectory() as folder:
        made = Path(folder, "pdf")
        subprocess.run([sys.executable, SHARED / "hostile" / "make_hostile.py", made], check=True)
        files = sorted(made.glob(f"{chosen.only}*.pdf"))
        readings = chosen.keep or Path(folder, "readings.jsonl")
        began = time.monotonic()
        readings.write_text("".join(_lines(read_documents(files, workers=chosen.workers))), encoding="utf-8")
        sys.stdout.write(f"{len(files)} files read in {time.monotonic() - began:.0f} s\n")
        manifest = ["--manifest", Path(folder, "MANIFEST.tsv"), "--readings", readings]
        return subprocess.run([sys.executable, SHARED / "tools" / "score_hostile", *manifest, "--list"], check=False).returncode


def _lines(sheets: Iterable[Sheet]) -> Iterator[str]:
    """One line a sheet, while a tally of what became of them is kept and printed."""
    tally: Counter[str] = Counter()
    for sheet in sheets:
        tally[sheet.refused.kind if sheet.refused else "read"] += 1
        yield json.dumps(sheet_json(sheet)) + "\n"
    sys.stdout.write(", ".join(f"{kind} {count}" for kind, count in tally.most_common()) + "\n")


if __name__ == "__main__":
    sys.exit(main())
