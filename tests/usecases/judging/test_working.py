"""The working: numbers put into the formula of each check, shown only where they add up."""

import json
import tomllib
from pathlib import Path

import pytest

from service.derating.assess import assess
from service.derating.checks import CHECKS
from service.formats.board import read_board
from service.formats.json_text import json_bytes
from service.formats.report import report_json
from service.usecases.working import LINES, adds_up, filled, working

WORKED = Path(__file__).parents[2] / "cli" / "worked-by-hand.toml"
WHOLE = Path(__file__).parents[2] / "formats" / "every-key.toml"


def report_of(path: Path) -> dict:
    """The report of a board file whose parts are all typed, as it is frozen."""
    text = path.read_text(encoding="utf-8").replace('"AB75N40"', '"typed:A"')
    return json.loads(json_bytes(report_json(assess(read_board(tomllib.loads(text))))))


def lines_of(report: dict, check: str, bank: str = "discharge") -> tuple[str, ...]:
    """The working of one finding."""
    finding = next(one for one in report["findings"] if one["check"] == check and one["bank"] in (bank, "both"))
    return working(finding, report).lines


def test_every_check_has_its_lines_or_says_why_not():
    """A check that is added is added here."""
    assert list(LINES) == [check.name for check in CHECKS]


def test_the_board_worked_by_hand_shows_its_heat():
    """By hand (contract): (80/6)^2 x 5 mohm grown by ((Tj + 273.15)/298.15)^2.3, times 60 K/W, above 40 degC."""
    heat = lines_of(report_of(WORKED), "continuous_current")

    assert len(heat) == 3
    assert heat[0].endswith("^ 2.3 = 2.605")
    assert heat[1].startswith("(80 A / 6)² × 5 mΩ × 2.605 = 2.315 W")
    assert heat[2].startswith("40 °C + 60 K/W × 2.315 W = 178.9 °C")


def test_the_voltage_of_a_string_is_shown():
    """8 x 3.65 V = 29.2 V of 80 V (worked in the contract)."""
    assert lines_of(report_of(WORKED), "drain_source_voltage") == ("1 × 8 × 3.65 V = 29.2 V", "1 × 80 V = 80 V")


@pytest.mark.parametrize("check", [name for name, lines in LINES.items() if lines])
def test_a_whole_board_shows_the_arithmetic_of_every_check(check):
    """Where everything is stated, at least one line of each check adds up."""
    assert lines_of(report_of(WHOLE), check)


def test_a_line_that_does_not_add_up_is_not_shown():
    """A report of another engine may mean something else by the same names."""
    line, numbers = "{a} × {b} = {c}", {"a": (2.0, "A"), "b": (0.5, "ohm"), "c": (1.0, "V")}

    assert adds_up(line, numbers)
    assert filled(line, numbers) == "2 A × 500 mΩ = 1 V"
    assert not adds_up(line, {**numbers, "c": (1.1, "V")})
    assert not adds_up(line, {"a": (2.0, "A")})
    assert not adds_up("{a} / {b} = {c}", {**numbers, "b": (0.0, "ohm")})


def test_a_fact_is_listed_once():
    """Both banks name the claimed current; the working of their path names it once."""
    report = report_of(WORKED)
    finding = next(one for one in report["findings"] if one["check"] == "conduction_loss")
    names = [fact["name"] for fact in working(finding, report).facts]

    assert len(names) == len(set(names))


def test_what_is_said_of_both_banks_alike_shows_its_numbers_too():
    """A page says once what holds for both."""
    report = report_of(WORKED)
    first = next(one for one in report["findings"] if one["check"] == "continuous_current")

    assert working({**first, "bank": "both"}, report).lines == working(first, report).lines
