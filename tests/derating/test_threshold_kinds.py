"""Every kind of threshold that the engine can name, put in as a fact: just inside it the finding holds, just outside it does not."""

import pytest
from boards import FOUR_FIELDS, WHOLE, case_of

from service.derating.case import Case
from service.derating.checks import CHECKS
from service.derating.wordings import WORDINGS
from service.facts.finding import Outcome, Relation

# No condition names these: even copper is taken as even until somebody says otherwise; a protection is asked, not moved.
NEVER_OPEN, ASKED = {"track_asymmetry"}, {"recloses_on_current"}
LOCAL = {"protection_delay", "transient_impedance", "diode_voltage", "shunt_rating", "fault_voltage", "cell_resistance", "lead_resistance"}

# Each makes at least one kind of threshold; the kinds are in its name.
BOARDS = {
    "way to air, on-resistance, its growth": (FOUR_FIELDS, {}),
    "charge current": (FOUR_FIELDS, {"board": {"port": "separate"}, "charge_bank": {"part": "typed:A", "switches": 2}}),
    "cold rating": (FOUR_FIELDS, {"cooling": {"ambient": "-20 °C", "junction_to_air": "30 K/W"}, "typed.A": {"vds_max": {"max": "30.9 V"}}}),
    "ambient": (FOUR_FIELDS, {"cooling": {"ambient": "20 °C to 60 °C", "junction_to_air": "50 K/W"}, "claim": {"continuous": "82 A"}}),
    "junction limit": (FOUR_FIELDS, {"claim": {"continuous": "84 A"}, "cooling": {"junction_to_air": "50 K/W"}, "typed.A": {"tj_max": None}}),
    "board to air": (FOUR_FIELDS, {"claim": {"continuous": "40 A"}, "cooling": {"case_to_board": "1 K/W"}}),
    "case to board": (FOUR_FIELDS, {"claim": {"continuous": "150 A"}, "cooling": {"board_to_air": "0.5 K/W"}}),
    "package": (
        FOUR_FIELDS,
        {
            "claim": {"continuous": "460 A"},
            "cooling": {"junction_to_air": "1 K/W"},
            "typed.A": {"package": "TO-220", "id_cont": [{"max": "200 A", "tc": "25 °C", "limited_by": "silicon"}]},
        },
    ),
    "junction to case": (
        FOUR_FIELDS,
        {"claim": {"continuous": "160 A"}, "cooling": {"case_to_board": "4 K/W", "board_to_air": "0.3 K/W"}, "typed.A": {"rth_jc": {"typ": "6 K/W"}}},
    ),
    "impedance": (
        FOUR_FIELDS,
        {"claim": {"continuous": "40 A", "surge": "700 A for 10 ms"}, "cooling": {"junction_to_air": "45 K/W", "board_heat_capacity": "60 J/K"}},
    ),
    "cells and leads": (
        FOUR_FIELDS,
        {
            "claim": {"continuous": "30 A"},
            "fault": {"protection_delay": "300 us", "loop_inductance": "2 uH"},
            "typed.A": {"eas": {"max": "2700 mJ", "id": "4000 A"}, "zth": [["1 us", "0.003 K/W"], ["1 ms", "0.1 K/W"], ["1 s", "0.75 K/W"]]},
        },
    ),
    "gate voltage": (WHOLE, {"claim": {"continuous": "120 A", "packs_in_series": 1}, "board": {"gate_voltage": None}, "limits": {"junction": None}}),
    "gate stress": (WHOLE, {"typed.A": {"vgs_max": {"max": "11 V"}}, "board": {"gate_voltage": None}}),
    "joints": (WHOLE, {"claim": {"continuous": "104 A"}, "limits": {"junction": None}, "board": {"joints": "0.1 mohm to 0.8 mohm"}}),
    "shunt, charger": (WHOLE, {"claim": {"continuous": "122 A"}, "board": {"shunt": "0.1 mohm to 0.6 mohm"}}),
    "heat of the board": (WHOLE, {"claim": {"surge": "300 A for 5 s"}, "cooling": {"board_heat_capacity": None}}),
    "laminate": (WHOLE, {"claim": {"continuous": "127 A"}, "cooling": {"board_limit": None}, "limits": {"junction": None}}),
    "rating of the shunt, charge voltage": (WHOLE, {"board": {"shunt_rating": None}, "cells": {"charge_voltage": "3.4 V to 5 V"}}),
    "diode": (
        WHOLE,
        {"claim": {"continuous_charge": "24 A"}, "board": {"recloses_on_current": False}, "typed.A": {"vsd": {"typ": "0.7 V", "max": "1.2 V"}}},
    ),
    "delay": (WHOLE, {"fault": {"loop_inductance": "5 uH", "protection_delay": None}, "claim": {"packs_in_series": 1}}),
    "spread": (WHOLE, {"typed.A": {"id_pulse": {"max": "20 A"}}}),
}


def judged(text, changes):
    """The findings of a board that name a threshold, each with its check and its place among that check's findings."""
    case = case_of(text, changes)
    found = [(check, place, finding) for check in CHECKS for place, finding in enumerate(check.run(case))]
    return [(check, place, finding) for check, place, finding in found if conditions(finding)]


def conditions(finding):
    """Those that stand with all else at its worst."""
    return [c for c in (finding.condition, *finding.conditions) if c and "all else" not in c.text and c.quantity not in ASKED]


def kind(quantity):
    """The public name: without the bank's."""
    own = set(WORDINGS) | LOCAL
    return quantity if quantity in own else quantity.removeprefix("discharge_").removeprefix("charge_")


@pytest.mark.parametrize(("text", "changes"), BOARDS.values(), ids=BOARDS.keys())
def test_a_threshold_put_in_as_a_fact_decides(text, changes, monkeypatch):
    """The quantity stands where the condition says at every end; all others keep theirs."""
    case, whole = case_of(text, changes), Case.point
    for check, place, finding in judged(text, changes):
        for condition in conditions(finding):
            inside, outside = _either_side(condition)
            for value, holds in ((inside, True), (outside, False)):
                pinned = {condition.quantity: value}
                monkeypatch.setattr(Case, "point", lambda self, corner, moved=None, pinned=pinned: whole(self, corner, {**(moved or {}), **pinned}))
                found = check.run(case)[place]
                monkeypatch.setattr(Case, "point", whole)

                assert (found.outcome is Outcome.HOLDS) is holds, (condition, found.text)


def test_every_kind_of_threshold_is_named_on_some_board():
    """So that none escapes the law above."""
    found = {kind(c.quantity) for board in BOARDS.values() for _, _, finding in judged(*board) for c in conditions(finding)}

    assert found == (set(WORDINGS) | LOCAL) - NEVER_OPEN - ASKED


def _either_side(condition):
    """A little inside and a little outside; for a yes or no the other answer."""
    if condition.relation is Relation.IS:
        return float(condition.value), float(not condition.value)
    side = 1 if condition.relation is Relation.AT_LEAST else -1
    return condition.value * (1 + side * 1e-6), condition.value * (1 - side * 2e-3)
