"""How quick and how small reading is, beside the plain libraries: one command that prints ratios measured in the same run.

Every document is read in a process of its own, forked from this one, by each way in turn, on one core: whole datasheets as the product reads
them, words of the chosen pages alone, the tables and the words of all pages by pdfplumber, and the plain text of all pages by PDFium. The folder
``shared`` beside the checkout must hold the corpus.
"""

import argparse
import gc
import io
import json
import os
import resource
import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pdfplumber
import pypdfium2 as pdfium

from parsers.errors import DatasheetError
from parsers.pipeline import read_datasheet
from parsers.stages.open_document import open_document
from parsers.stages.words import read_page

CORPUS = Path(__file__).resolve().parents[3] / "shared" / "corpus"
AIMS = {"tables": 8.0, "words": 6.0, "text": 15.0}
MOST_MB = 120.0


def read_sheet(data: bytes) -> None:
    """The product: a whole datasheet."""
    read_datasheet(data, "sheet.pdf")


def read_words(data: bytes) -> None:
    """The product's first two stages."""
    document = open_document(data)
    for number in document.chosen:
        read_page(document, number)


def extract_tables(data: bytes) -> None:
    """Tables of all pages by pdfplumber."""
    with pdfplumber.open(io.BytesIO(data)) as pdf:
        for page in pdf.pages:
            page.extract_tables()
            page.close()


def extract_words(data: bytes) -> None:
    """Words of all pages by pdfplumber."""
    with pdfplumber.open(io.BytesIO(data)) as pdf:
        for page in pdf.pages:
            page.extract_words()
            page.close()


def plain_text(data: bytes) -> None:
    """Text of all pages by PDFium."""
    pdf = pdfium.PdfDocument(data)
    for page in pdf:
        page.get_textpage().get_text_range()


WAYS: dict[str, Callable[[bytes], None]] = {
    "sheet": read_sheet, "chosen words": read_words, "tables": extract_tables, "words": extract_words, "text": plain_text,
}  # fmt: skip


def main() -> None:
    """Read the sheets in every way, as often as asked, and print what came of it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--sheets", type=int, default=60, help="how many, spread over the corpus")
    parser.add_argument("--runs", type=int, default=3, help="the median of so many runs counts")
    chosen = parser.parse_args()
    files = sheets_with_text(chosen.sheets)
    gc.freeze()
    runs: dict[str, list[float]] = {way: [] for way in WAYS}
    peaks: dict[str, list[float]] = {way: [] for way in WAYS}
    for _ in range(chosen.runs):
        spent = dict.fromkeys(WAYS, 0.0)
        for data in files:
            for way, read in WAYS.items():
                seconds, peak_mb = in_a_child(read, data)
                spent[way] += seconds
                peaks[way].append(peak_mb)
        for way, seconds in spent.items():
            runs[way].append(seconds)
    report(len(files), {way: statistics.median(seconds) for way, seconds in runs.items()}, peaks)


def sheets_with_text(count: int) -> list[bytes]:
    """Sheets that have a text layer, spread evenly over the corpus."""
    labels = [json.loads(line) for line in (CORPUS / "labels.jsonl").read_text(encoding="utf-8").splitlines()]
    names = [label["file"] for label in labels if label["text_layer"] != "none"]
    return [(CORPUS / "pdf" / names[index * len(names) // count]).read_bytes() for index in range(min(count, len(names)))]


def in_a_child(read: Callable[[bytes], None], data: bytes) -> tuple[float, float]:
    """Read in a child: wall time from its start to its end [s], and its largest resident size [MB]."""
    began = time.perf_counter()
    child = os.fork()
    if not child:
        resource.setrlimit(resource.RLIMIT_CPU, (90, 90))
        try:
            read(data)
        except DatasheetError:
            os._exit(1)
        os._exit(0)
    _, _, usage = os.wait4(child, 0)
    return time.perf_counter() - began, usage.ru_maxrss / 1024


def report(count: int, seconds: dict[str, float], peaks: dict[str, list[float]]) -> None:
    """Print a line a way, then the ratios beside their aims."""
    lines = [f"{count} sheets"]
    for way in WAYS:
        ordered = sorted(peaks[way])
        median, high = ordered[len(ordered) // 2], ordered[int(0.95 * (len(ordered) - 1))]
        lines.append(f"{way:13}{seconds[way]:8.2f} s{median:8.0f} MB{high:8.0f} MB at the 95th percentile")
    for way in ("sheet", "chosen words"):
        ratios = [f"{seconds['tables'] / seconds[way]:.1f}x faster than tables", f"{seconds['words'] / seconds[way]:.1f}x faster than words"]
        lines.append(f"{way}: {', '.join(ratios)}, {seconds[way] / seconds['text']:.1f}x the time of plain text")
    lines.append(f"aims: {AIMS['tables']:.0f}x, {AIMS['words']:.0f}x, at most {AIMS['text']:.0f}x; {MOST_MB:.0f} MB at the 95th percentile")
    sys.stdout.write("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
