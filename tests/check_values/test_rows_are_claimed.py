"""Each row of the list of check values about switches is a test: its id and its expected figures stand in a file of worked examples."""

import csv
import re
from pathlib import Path

import pytest

TESTS = Path(__file__).resolve().parents[1]
TOPICS = {
    "rating",
    "rds(on) ratio",
    "fixed point",
    "parallel",
    "current sharing",
    "transient",
    "soa",
    "avalanche",
    "derating rule",
    "inductance",
    "short circuit",
    "board",
    "convection",
    "stacking",
    "surge",
    "body diode",
}
NUMBER = re.compile(r"(?<![\w.])-?\d+(?:\.\d+)?(?:e-?\d+)?")


@pytest.fixture(scope="module")
def rows(shared):
    """The rows of those topics."""
    with (shared / "handbook" / "check-values.tsv").open(encoding="utf-8") as lines:
        return [row for row in csv.DictReader(lines, delimiter="\t") if row["topic"] in TOPICS]


def claiming(identity):
    """The text of every file of tests that names a row."""
    paths = [path for folder in ("check_values", "derating") for path in (TESTS / folder).iterdir() if path.suffix in {".py", ".toml"}]
    texts = [path.read_text(encoding="utf-8") for path in paths]
    return [text for text in texts if re.search(rf"\b{identity}\b", text)]


def test_every_topic_has_rows(rows):
    """A topic that is spelled otherwise one day must not pass as empty."""
    assert {row["topic"] for row in rows} == TOPICS


def test_every_row_is_claimed_with_its_figures(rows):
    """Figures count by their value, however they are written."""
    missing = {}
    for row in rows:
        written = {float(number) for text in claiming(row["id"]) for number in NUMBER.findall(text)}
        expected = {float(number) for number in NUMBER.findall(row["expected"])}
        if not expected <= written:
            missing[row["id"]] = expected - written

    assert missing == {}
