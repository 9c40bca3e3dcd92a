"""What a part would have to be, worked by hand from the conventions of the engine."""

import pytest

from service.formats.board import read_board
from service.usecases.part_wanted import part_wanted


def board(rules: str = "maker", *, amps: str = "80 A"):
    """A board of four fields whose part nobody knows."""
    return read_board(
        {
            "claim": {"continuous": amps},
            "cells": {"in_series": 8},
            "discharge_bank": {"part": "nobody knows", "switches": 6},
            "rules": {"set": rules},
        },
    )


@pytest.mark.parametrize(
    ("rules", "volt", "milliohm"),
    [
        # 8 x 3.65 V = 29.2 V; (150 - 40) K / (60 K/W x (80/6 A)^2 x (423.15/298.15)^2.0) = 5.12 mohm; exponent 1.7 + 0.3 up to 40 V.
        ("maker", 29.2, 5.1),
        # 29.2 V / 0.80 = 36.5 V; heat as the maker's.
        ("trade-80", 36.5, 5.1),
        # 29.2 V / 0.75 = 38.93 V, up to a tenth 39.0 V; junction at most min(0.80 x 150, 125, 150 - 40) = 110 degC (EEE-INST-002, table 4):
        # 70 K / (60 K/W x (80/6 A)^2 x (383.15/298.15)^2.0) = 3.97 mohm.
        ("eee-inst-002", 39.0, 3.9),
    ],
)
def test_the_part_that_is_sought_is_rounded_to_the_safe_side(rules, volt, milliohm):
    """Volts go up, milliohms go down."""
    wanted = part_wanted(board(rules))

    assert wanted.drain_source_v == pytest.approx(volt)
    assert wanted.on_resistance_ohm == pytest.approx(milliohm / 1000)


def test_where_no_part_would_do_no_resistance_is_named():
    """Ten thousand ampere through six switches: not even a hundredth of a milliohm helps."""
    assert part_wanted(board(amps="10 kA")).on_resistance_ohm is None
