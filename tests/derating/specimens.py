"""Whole invented boards as written, and beside each, worked out by hand, what the worst corner takes of it.

What is taken by hand: resistance at 25 degC and its growth for each bank, the way of the heat, what heats the board beside the
switches. Tests let the two meet in the temperatures alone.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from netlist import curve, power_law

from service.derating.open_case import open_case
from service.formats.board import read_board


@dataclass(frozen=True, kw_only=True)
class Taken:
    """What the worst corner takes of one bank, by hand: largest resistance, the low one's, way to the board, ratio, count."""

    ohm: float
    low: float
    kpw: float
    ratio: str
    count: int


@dataclass(frozen=True, kw_only=True)
class Specimen:
    """A board as written and as read by hand; the bank under examination first."""

    name: str
    board: Mapping[str, object]
    amperes: float
    ambient_c: float
    banks: Sequence[Taken]
    board_kpw: float = 0.0
    board_ohm: float = 0.0
    bank: str = "discharge"

    @property
    def case(self):
        """The board ready to be judged."""
        return open_case(read_board(dict(self.board)))


def part(volts, *rows, junction="175 °C", kpw=None, **more):
    """A typed part: its rated voltage, its rows of on-resistance, its limits."""
    known = {} if kpw is None else {"rth_jc": {"max": kpw}}
    return {"vds_max": {"max": volts}, "rds_on": list(rows), "tj_max": {"max": junction}, **known, **more}


def row(largest=None, typical=None, gate="10 V", **more):
    """A row of on-resistance."""
    return {"vgs": gate, **more} | ({"max": largest} if largest else {}) | ({"typ": typical} if typical else {})


def written(amperes, cells, switches, sheet, *, cooling=None, board=None, charge=(None, None), other=None):
    """A board as a person writes it; its charge bank as the discharge bank where nothing else is said."""
    count, charging = charge
    claim = {"continuous": amperes} | ({"continuous_charge": charging} if charging else {})
    tables = {
        "claim": claim,
        "cells": {"in_series": cells},
        "discharge_bank": {"part": "typed:A", "switches": switches},
        "board": board or {},
        "typed": {"A": sheet} | ({"B": other} if other else {}),
    }
    if count:
        tables["charge_bank"] = {"part": "typed:B" if other else "typed:A", "switches": count}
    return tables | ({"cooling": cooling} if cooling else {})


def chain(ambient, case_to_board, board_to_air):
    """Switches on one board."""
    return {"ambient": ambient, "case_to_board": case_to_board, "board_to_air": board_to_air}


def alone(ambient, junction_to_air):
    """Each switch with its own way to the air."""
    return {"ambient": ambient, "junction_to_air": junction_to_air}


PRINTED = [(-40, 0.70), (25, 1.0), (100, 1.52), (175, 2.20)]
CURVED = part("75 V", row("4.0 mohm", "3.3 mohm"), kpw="0.8 K/W", rds_on_vs_tj=[list(point) for point in PRINTED])
UNLIKE = {"cooling": chain("35 °C", "4 K/W", "2.5 K/W"), "board": {"gate_voltage": "12 V"}, "charge": (7, None)}
FOLDING = part("100 V", row("9 mohm", "8 mohm"))
GATE_10 = {"gate_voltage": "10 V"}

SPECIMENS = [
    Specimen(
        name="4S, separate ports, measured way to air, 30 V part",
        board=written(
            "40 A",
            4,
            4,
            part("30 V", row("3.2 mohm", "2.6 mohm"), junction="150 °C", kpw="1.1 K/W"),
            charge=(2, "10 A"),
            board={"port": "separate", **GATE_10},
            cooling=alone("30 °C", "47 K/W"),
        ),
        amperes=40,
        ambient_c=30,
        banks=[Taken(ohm=3.2e-3, low=2.6e-3, kpw=47, ratio=power_law(2.0), count=4)],
    ),
    Specimen(
        name="8S, common port, four fields",
        board=written("70 A", 8, 6, part("80 V", row("5.0 mohm", "4.0 mohm"), kpw="0.75 K/W")),
        amperes=70,
        ambient_c=40,
        banks=[Taken(ohm=5e-3, low=4e-3, kpw=60, ratio=power_law(2.3), count=6)],
    ),
    Specimen(
        name="8S, common port, chain, shunt and joints on the board",
        board=written(
            "100 A",
            8,
            10,
            part("60 V", row("3.0 mohm", "2.4 mohm"), kpw="0.8 K/W"),
            board={"shunt": "0.25 mohm", "joints": "0.2 mohm", "gate_voltage": "12 V"},
            cooling=chain("35 °C", "4 K/W", "2.5 K/W"),
        ),
        amperes=100,
        ambient_c=35,
        board_kpw=2.5,
        board_ohm=0.45e-3,
        banks=[Taken(ohm=3e-3, low=2.4e-3, kpw=4.8, ratio=power_law(2.3), count=10)] * 2,
    ),
    Specimen(
        name="8S, unequal banks of different parts, printed curve in one",
        board=written("90 A", 8, 10, CURVED, other=part("100 V", row("5.1 mohm", "4.1 mohm"), kpw="0.6 K/W"), **UNLIKE),
        amperes=90,
        ambient_c=35,
        board_kpw=2.5,
        banks=[
            Taken(ohm=4e-3, low=3.3e-3, kpw=4.8, ratio=curve(PRINTED), count=10),
            Taken(ohm=5.1e-3, low=4.1e-3, kpw=4.6, ratio=power_law(2.9), count=7),
        ],
    ),
    Specimen(
        name="the same board, the charge bank under examination, its least on-resistance printed",
        board=written("90 A", 8, 10, CURVED, other=part("100 V", row("5.1 mohm", "4.1 mohm", min="3.4 mohm"), kpw="0.6 K/W"), **UNLIKE),
        amperes=90,
        ambient_c=35,
        board_kpw=2.5,
        bank="charge",
        banks=[
            Taken(ohm=5.1e-3, low=3.4e-3, kpw=4.6, ratio=power_law(2.9), count=7),
            Taken(ohm=4e-3, low=3.3e-3, kpw=4.8, ratio=curve(PRINTED), count=10),
        ],
    ),
    Specimen(
        name="12S, hot on-resistance printed",
        board=written(
            "60 A",
            12,
            5,
            part("80 V", row("4.0 mohm", "3.0 mohm"), row("8.4 mohm", tj="175 °C"), kpw="0.9 K/W"),
            board=GATE_10,
            cooling=chain("45 °C", "6 K/W", "3 K/W"),
        ),
        # By hand: 8.4 / 4.0 = 2.1 at 448.15 K, so an exponent of ln 2.1 / ln(448.15/298.15) = 0.7419373 / 0.4075689 = 1.8203971.
        amperes=60,
        ambient_c=45,
        board_kpw=3.0,
        banks=[Taken(ohm=4e-3, low=3e-3, kpw=6.9, ratio=power_law(1.8203971), count=5)] * 2,
    ),
    Specimen(
        name="16S, separate ports on one board each for itself, 100 V part",
        board=written(
            "100 A",
            16,
            12,
            part("100 V", row("4.2 mohm", "3.5 mohm"), kpw="0.5 K/W"),
            charge=(6, "50 A"),
            board={"port": "separate", "gate_voltage": "12 V", "shunt": "0.2 mohm"},
            cooling=chain("40 °C", "3 K/W", "2 K/W"),
        ),
        amperes=100,
        ambient_c=40,
        board_kpw=2.0,
        board_ohm=0.2e-3,
        banks=[Taken(ohm=4.2e-3, low=3.5e-3, kpw=3.5, ratio=power_law(2.9), count=12)],
    ),
    Specimen(
        name="cold ambient, chain",
        board=written(
            "50 A", 8, 4, part("60 V", row("5.5 mohm", "4.5 mohm"), kpw="1.0 K/W"), board=GATE_10, cooling=chain("-20 °C", "5 K/W", "3 K/W")
        ),
        # Below 25 degC the smaller exponent of the band makes the larger resistance.
        amperes=50,
        ambient_c=-20,
        board_kpw=3.0,
        banks=[Taken(ohm=5.5e-3, low=4.5e-3, kpw=6.0, ratio=power_law(2.3, 1.7), count=4)] * 2,
    ),
    Specimen(
        name="typical on-resistance alone, RthJC from the watts",
        board=written(
            "45 A",
            8,
            6,
            part("40 V", row(typical="3.0 mohm"), pd=[{"max": "150 W", "tc": "25 °C"}]),
            board=GATE_10,
            cooling=chain("40 °C", "4 K/W", "3 K/W"),
        ),
        # By hand: at most 1.5 x 3.0 mohm; spread 4.5 / 3.0; RthJC (175 - 25) / 150 W = 1.0 K/W.
        amperes=45,
        ambient_c=40,
        board_kpw=3.0,
        banks=[Taken(ohm=4.5e-3, low=3e-3, kpw=5.0, ratio=power_law(2.0), count=6)] * 2,
    ),
    Specimen(
        name="P-channel part, gate voltage not known, next lower row",
        board=written(
            "20 A",
            4,
            3,
            part("-40 V", row("11 mohm", "9 mohm", gate="-10 V"), row("15 mohm", "12 mohm", gate="-4.5 V"), junction="150 °C", polarity="P"),
            cooling=alone("40 °C", "35 K/W"),
        ),
        amperes=20,
        ambient_c=40,
        banks=[Taken(ohm=15e-3, low=12e-3, kpw=35, ratio=power_law(2.0), count=3)],
    ),
    Specimen(
        name="one switch alone",
        board=written(
            "12 A",
            4,
            1,
            part("30 V", row("6 mohm"), junction="150 °C"),
            board={"gate_voltage": "12 V"},
            cooling=alone("25 °C", "50 K/W"),
        ),
        amperes=12,
        ambient_c=25,
        banks=[Taken(ohm=6e-3, low=6e-3, kpw=50, ratio=power_law(2.0), count=1)],
    ),
    Specimen(
        name="close to its fold",
        board=written("23 A", 16, 2, FOLDING, board=GATE_10, cooling=alone("-10 °C", "45 K/W")),
        amperes=23,
        ambient_c=-10,
        banks=[Taken(ohm=9e-3, low=8e-3, kpw=45, ratio=power_law(2.9, 2.3), count=2)],
    ),
    Specimen(
        name="run-away",
        board=written("36 A", 16, 2, FOLDING, board=GATE_10, cooling=alone("-10 °C", "45 K/W")),
        amperes=36,
        ambient_c=-10,
        banks=[Taken(ohm=9e-3, low=8e-3, kpw=45, ratio=power_law(2.9, 2.3), count=2)],
    ),
]
