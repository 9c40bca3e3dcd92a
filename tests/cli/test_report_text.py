"""What a person reads of a report, where no board file leads there."""

import pytest

from service.cli.report_text import report_text


def report(**other: object) -> dict[str, object]:
    """The least report."""
    bank = {"part": "AB75N40", "switches": 6}
    return {
        "engine_version": "1",
        "rule_set": "maker",
        "board": {
            "claim": {"continuous": {"value": "80 A", "known": "claimed"}},
            "cells": {"in_series": 8},
            "discharge_bank": bank,
            "charge_bank": bank,
        },
        "findings": [],
        "limiting": None,
        "provisional": {"value": False, "look_at": []},
        "inverse": {},
        "measure_next": [],
        "cautions": ["No certification."],
        **other,
    }


def finding(**other: object) -> dict[str, object]:
    """The least finding."""
    return {
        "check": "pulsed_current",
        "bank": "discharge",
        "scenario": False,
        "outcome": "holds",
        "text": "80 A of the discharge bank: holds",
        "condition": None,
        "missing": [],
        "inputs": [],
        "assumptions": [],
        **other,
    }


def test_a_final_report_says_nothing_of_waiting():
    """Claim, rule set and cautions are there; no word of what is settled."""
    shown = report_text(report())

    assert shown.startswith("6 x AB75N40 per bank, 8 cells in series, 80 A claimed. Rule set maker, engine 1.")
    assert "Provisional" not in shown
    assert shown.endswith("! No certification.")


@pytest.mark.parametrize(
    ("look_at", "words"),
    [
        ([], "the part was typed in"),
        (["r-1", "r-2"], "looked at the printed values behind it: 2 more on the sheet, which contradicts itself."),
    ],
)
def test_a_provisional_report_says_why(look_at, words):
    """A typed part, or values that wait because their sheet contradicts itself."""
    shown = report_text(report(provisional={"value": True, "look_at": look_at}))

    assert words in " ".join(shown.split())


def test_what_is_true_of_both_banks_is_said_once():
    """Two sentences that differ by the bank's name alone become one; different ones stay two."""
    alike = [finding(), finding(bank="charge", text="80 A of the charge bank: holds")]
    apart = [finding(), finding(bank="charge", text="40 A of the charge bank: holds")]

    assert report_text(report(findings=alike)).count("HOLDS") == 1
    assert "80 A of each bank: holds" in report_text(report(findings=alike))
    assert report_text(report(findings=apart)).count("HOLDS") == 2


def test_a_scenario_and_a_missing_datum_are_told_as_such():
    """A what-if is marked, and what it lacks stands among the things to find out."""
    shown = report_text(report(findings=[finding(scenario=True, outcome="not determined", missing=["fault.protection_delay"])]))

    assert "pulsed current, if it ever happens, discharge bank" in shown
    assert "- fault protection delay, for want of which pulsed current has no answer" in shown
