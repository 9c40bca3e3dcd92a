"""A form has fewer fields than a board file has keys: nothing that it does not ask is lost."""

from service.usecases.edit_board import merged

ASKED = {"cooling.ambient", "cooling.junction_to_air", "discharge_bank.part", "discharge_bank.switches", "leads.length", "claim.continuous"}
MEASURED = {"value": "47 K/W", "known": "measured", "by": "R. Vell"}
BANK = {"part": "AB75N40", "switches": 6}


def test_keys_that_the_form_does_not_ask_stay():
    """A fault voltage, a channel and a typed part are no fields of the form."""
    before = {
        "schema": "switchbank.board/1",
        "cells": {"in_series": 8, "fault_voltage": "3.3 V"},
        "discharge_bank": {**BANK, "channel": "Q1"},
        "typed": {"A": {"polarity": "N"}},
    }
    after = merged(before, {"schema": "switchbank.board/1", "cells": {"in_series": 8}, "discharge_bank": BANK}, asked=ASKED | {"cells.in_series"})

    assert after == before


def test_a_measured_fact_keeps_its_history_until_its_value_is_changed():
    """The form shows its value alone."""
    before = {"cooling": {"junction_to_air": MEASURED}}

    assert merged(before, {"cooling": {"junction_to_air": "47 K/W"}}, asked=ASKED) == before
    assert merged(before, {"cooling": {"junction_to_air": "50 K/W"}}, asked=ASKED) == {"cooling": {"junction_to_air": "50 K/W"}}
    assert merged(before, {}, asked=ASKED) == {}


def test_another_part_is_another_bank():
    """What was measured of the old part says nothing of the new one."""
    before = {"discharge_bank": {**BANK, "on_resistance": "3 mohm"}}
    other = {"discharge_bank": {**BANK, "part": "CD30"}}

    assert merged(before, {"discharge_bank": {**BANK, "switches": 7}}, asked=ASKED)["discharge_bank"]["on_resistance"] == "3 mohm"
    assert merged(before, other, asked=ASKED) == other


def test_what_belongs_to_a_bank_or_to_leads_goes_with_them():
    """Leads without a length are none."""
    before = {"leads": {"length": "0.3 m", "spacing": "25 mm"}, "charge_bank": {**BANK, "channel": "Q2"}}

    assert merged(before, {}, asked=ASKED) == {}


def test_nothing_that_was_saved_is_changed():
    """The document before stays as it was."""
    before = {"cooling": {"ambient": "40 °C", "board_limit": "110 °C"}}
    merged(before, {"cooling": {"ambient": "30 °C"}}, asked=ASKED)

    assert before == {"cooling": {"ambient": "40 °C", "board_limit": "110 °C"}}
