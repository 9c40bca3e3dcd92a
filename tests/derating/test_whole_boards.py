"""Whole invented boards at rest against ngspice, which gets its numbers from a person who reads the same board by the conventions.

Each specimen states the board as people write it, and beside it, worked out by hand, what the worst corner takes: resistance at 25 degC
and its growth for each bank, the way of the heat, what heats the board beside the switches. The two meet only in the temperatures.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

import pytest
from boards import case_of
from netlist import Part, curve, heating_deck, power_law, settled_deck

from service.derating.case import Corner
from service.derating.checks import continuous_current, current_sharing


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
    text: str
    amperes: float
    ambient_c: float
    banks: Sequence[Taken]
    board_kpw: float = 0.0
    board_ohm: float = 0.0
    bank: str = "discharge"
    runs_away: bool = field(default=False)


PRINTED = [(-40, 0.70), (25, 1.0), (100, 1.52), (175, 2.20)]

SPECIMENS = [
    Specimen(
        name="4S, separate ports, measured way to air, 30 V part",
        text="""
claim = {continuous = "40 A", continuous_charge = "10 A"}
cells = {in_series = 4}
discharge_bank = {part = "typed:A", switches = 4}
charge_bank = {part = "typed:A", switches = 2}
board = {port = "separate", gate_voltage = "10 V"}
cooling = {ambient = "30 °C", junction_to_air = "47 K/W"}
[typed.A]
vds_max = {max = "30 V"}
rds_on = [{typ = "2.6 mohm", max = "3.2 mohm", vgs = "10 V"}]
tj_max = {max = "150 °C"}
rth_jc = {max = "1.1 K/W"}
""",
        amperes=40,
        ambient_c=30,
        banks=[Taken(ohm=3.2e-3, low=2.6e-3, kpw=47, ratio=power_law(2.0), count=4)],
    ),
    Specimen(
        name="8S, common port, four fields",
        text="""
claim = {continuous = "70 A"}
cells = {in_series = 8}
discharge_bank = {part = "typed:A", switches = 6}
[typed.A]
vds_max = {max = "80 V"}
rds_on = [{typ = "4.0 mohm", max = "5.0 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
rth_jc = {max = "0.75 K/W"}
""",
        amperes=70,
        ambient_c=40,
        banks=[Taken(ohm=5e-3, low=4e-3, kpw=60, ratio=power_law(2.3), count=6)],
    ),
    Specimen(
        name="8S, common port, chain, shunt and joints on the board",
        text="""
claim = {continuous = "100 A"}
cells = {in_series = 8}
discharge_bank = {part = "typed:A", switches = 10}
board = {shunt = "0.25 mohm", joints = "0.2 mohm", gate_voltage = "12 V"}
cooling = {ambient = "35 °C", case_to_board = "4 K/W", board_to_air = "2.5 K/W"}
[typed.A]
vds_max = {max = "60 V"}
rds_on = [{typ = "2.4 mohm", max = "3.0 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
rth_jc = {max = "0.8 K/W"}
""",
        amperes=100,
        ambient_c=35,
        board_kpw=2.5,
        board_ohm=0.45e-3,
        banks=[Taken(ohm=3e-3, low=2.4e-3, kpw=4.8, ratio=power_law(2.3), count=10)] * 2,
    ),
    Specimen(
        name="8S, unequal banks of different parts, printed curve in one",
        text="""
claim = {continuous = "90 A"}
cells = {in_series = 8}
discharge_bank = {part = "typed:A", switches = 10}
charge_bank = {part = "typed:B", switches = 7}
board = {gate_voltage = "12 V"}
cooling = {ambient = "35 °C", case_to_board = "4 K/W", board_to_air = "2.5 K/W"}
[typed.A]
vds_max = {max = "75 V"}
rds_on = [{typ = "3.3 mohm", max = "4.0 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
rth_jc = {max = "0.8 K/W"}
rds_on_vs_tj = [[-40, 0.70], [25, 1.0], [100, 1.52], [175, 2.20]]
[typed.B]
vds_max = {max = "100 V"}
rds_on = [{typ = "4.1 mohm", max = "5.1 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
rth_jc = {max = "0.6 K/W"}
""",
        amperes=90,
        ambient_c=35,
        board_kpw=2.5,
        banks=[
            Taken(ohm=4e-3, low=3.3e-3, kpw=4.8, ratio=curve(PRINTED), count=10),
            Taken(ohm=5.1e-3, low=4.1e-3, kpw=4.6, ratio=power_law(2.9), count=7),
        ],
    ),
    Specimen(
        name="the same board, the charge bank under examination",
        text="""
claim = {continuous = "90 A"}
cells = {in_series = 8}
discharge_bank = {part = "typed:A", switches = 10}
charge_bank = {part = "typed:B", switches = 7}
board = {gate_voltage = "12 V"}
cooling = {ambient = "35 °C", case_to_board = "4 K/W", board_to_air = "2.5 K/W"}
[typed.A]
vds_max = {max = "75 V"}
rds_on = [{typ = "3.3 mohm", max = "4.0 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
rth_jc = {max = "0.8 K/W"}
rds_on_vs_tj = [[-40, 0.70], [25, 1.0], [100, 1.52], [175, 2.20]]
[typed.B]
vds_max = {max = "100 V"}
rds_on = [{min = "3.4 mohm", typ = "4.1 mohm", max = "5.1 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
rth_jc = {max = "0.6 K/W"}
""",
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
        text="""
claim = {continuous = "60 A"}
cells = {in_series = 12}
discharge_bank = {part = "typed:A", switches = 5}
board = {gate_voltage = "10 V"}
cooling = {ambient = "45 °C", case_to_board = "6 K/W", board_to_air = "3 K/W"}
[typed.A]
vds_max = {max = "80 V"}
rds_on = [{typ = "3.0 mohm", max = "4.0 mohm", vgs = "10 V"}, {max = "8.4 mohm", vgs = "10 V", tj = "175 °C"}]
tj_max = {max = "175 °C"}
rth_jc = {max = "0.9 K/W"}
""",
        # By hand: 8.4 / 4.0 = 2.1 at 448.15 K, so an exponent of ln 2.1 / ln(448.15/298.15) = 0.7419373 / 0.4075689 = 1.8203971.
        amperes=60,
        ambient_c=45,
        board_kpw=3.0,
        banks=[Taken(ohm=4e-3, low=3e-3, kpw=6.9, ratio=power_law(1.8203971), count=5)] * 2,
    ),
    Specimen(
        name="16S, separate ports on one board each for itself, 100 V part",
        text="""
claim = {continuous = "100 A", continuous_charge = "50 A"}
cells = {in_series = 16}
discharge_bank = {part = "typed:A", switches = 12}
charge_bank = {part = "typed:A", switches = 6}
board = {port = "separate", gate_voltage = "12 V", shunt = "0.2 mohm"}
cooling = {ambient = "40 °C", case_to_board = "3 K/W", board_to_air = "2 K/W"}
[typed.A]
vds_max = {max = "100 V"}
rds_on = [{typ = "3.5 mohm", max = "4.2 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
rth_jc = {max = "0.5 K/W"}
""",
        amperes=100,
        ambient_c=40,
        board_kpw=2.0,
        board_ohm=0.2e-3,
        banks=[Taken(ohm=4.2e-3, low=3.5e-3, kpw=3.5, ratio=power_law(2.9), count=12)],
    ),
    Specimen(
        name="cold ambient, chain",
        text="""
claim = {continuous = "50 A"}
cells = {in_series = 8}
discharge_bank = {part = "typed:A", switches = 4}
board = {gate_voltage = "10 V"}
cooling = {ambient = "-20 °C", case_to_board = "5 K/W", board_to_air = "3 K/W"}
[typed.A]
vds_max = {max = "60 V"}
rds_on = [{typ = "4.5 mohm", max = "5.5 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
rth_jc = {max = "1.0 K/W"}
""",
        # Below 25 degC the smaller exponent of the band makes the larger resistance.
        amperes=50,
        ambient_c=-20,
        board_kpw=3.0,
        banks=[Taken(ohm=5.5e-3, low=4.5e-3, kpw=6.0, ratio=power_law(2.3, 1.7), count=4)] * 2,
    ),
    Specimen(
        name="typical on-resistance alone, RthJC from the watts",
        text="""
claim = {continuous = "45 A"}
cells = {in_series = 8}
discharge_bank = {part = "typed:A", switches = 6}
board = {gate_voltage = "10 V"}
cooling = {ambient = "40 °C", case_to_board = "4 K/W", board_to_air = "3 K/W"}
[typed.A]
vds_max = {max = "40 V"}
rds_on = [{typ = "3.0 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
pd = [{max = "150 W", tc = "25 °C"}]
""",
        # By hand: at most 1.5 x 3.0 mohm; spread 4.5 / 3.0; RthJC (175 - 25) / 150 W = 1.0 K/W.
        amperes=45,
        ambient_c=40,
        board_kpw=3.0,
        banks=[Taken(ohm=4.5e-3, low=3e-3, kpw=5.0, ratio=power_law(2.0), count=6)] * 2,
    ),
    Specimen(
        name="P-channel part, gate voltage not known, next lower row",
        text="""
claim = {continuous = "20 A"}
cells = {in_series = 4}
discharge_bank = {part = "typed:A", switches = 3}
cooling = {ambient = "40 °C", junction_to_air = "35 K/W"}
[typed.A]
polarity = "P"
vds_max = {max = "-40 V"}
rds_on = [{typ = "9 mohm", max = "11 mohm", vgs = "-10 V"}, {typ = "12 mohm", max = "15 mohm", vgs = "-4.5 V"}]
tj_max = {max = "150 °C"}
""",
        amperes=20,
        ambient_c=40,
        banks=[Taken(ohm=15e-3, low=12e-3, kpw=35, ratio=power_law(2.0), count=3)],
    ),
    Specimen(
        name="one switch alone",
        text="""
claim = {continuous = "12 A"}
cells = {in_series = 4}
discharge_bank = {part = "typed:A", switches = 1}
board = {gate_voltage = "12 V"}
cooling = {ambient = "25 °C", junction_to_air = "50 K/W"}
[typed.A]
vds_max = {max = "30 V"}
rds_on = [{max = "6 mohm", vgs = "10 V"}]
tj_max = {max = "150 °C"}
""",
        amperes=12,
        ambient_c=25,
        banks=[Taken(ohm=6e-3, low=6e-3, kpw=50, ratio=power_law(2.0), count=1)],
    ),
    Specimen(
        name="close to its fold",
        text="""
claim = {continuous = "23 A"}
cells = {in_series = 16}
discharge_bank = {part = "typed:A", switches = 2}
board = {gate_voltage = "10 V"}
cooling = {ambient = "-10 °C", junction_to_air = "45 K/W"}
[typed.A]
vds_max = {max = "100 V"}
rds_on = [{typ = "8 mohm", max = "9 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
""",
        amperes=23,
        ambient_c=-10,
        banks=[Taken(ohm=9e-3, low=8e-3, kpw=45, ratio=power_law(2.9, 2.3), count=2)],
    ),
    Specimen(
        name="run-away",
        text="""
claim = {continuous = "36 A"}
cells = {in_series = 16}
discharge_bank = {part = "typed:A", switches = 2}
board = {gate_voltage = "10 V"}
cooling = {ambient = "-10 °C", junction_to_air = "45 K/W"}
[typed.A]
vds_max = {max = "100 V"}
rds_on = [{typ = "8 mohm", max = "9 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
""",
        amperes=36,
        ambient_c=-10,
        banks=[Taken(ohm=9e-3, low=8e-3, kpw=45, ratio=power_law(2.9, 2.3), count=2)],
        runs_away=True,
    ),
]
NEAR_FOLD = "close to its fold"
SETTLING = [specimen for specimen in SPECIMENS if not specimen.runs_away]


def parts(specimen, *, low_switch):
    """The banks for the circuit: all high, or one low switch first in the bank under examination."""
    banks = []
    for number, taken in enumerate(specimen.banks):
        high = Part(ohm=taken.ohm, kpw=taken.kpw, ratio=taken.ratio, count=taken.count)
        if low_switch and number == 0 and taken.count > 1:
            low = Part(ohm=taken.low, kpw=taken.kpw, ratio=taken.ratio)
            banks.append([low, Part(ohm=taken.ohm, kpw=taken.kpw, ratio=taken.ratio, count=taken.count - 1)])
        else:
            banks.append([high])
    return banks


def deck(specimen, *, low_switch):
    """The circuit of the settled state."""
    return settled_deck(
        parts(specimen, low_switch=low_switch),
        amperes=specimen.amperes,
        ambient_c=specimen.ambient_c,
        board_kpw=specimen.board_kpw,
        board_ohm=specimen.board_ohm,
    )


def finding(specimen, check):
    """What a check says of the bank under examination."""
    case = case_of(specimen.text)
    return next(found for found in check.CHECK.run(case) if found.bank == specimen.bank)


@pytest.mark.parametrize("specimen", SETTLING, ids=lambda specimen: specimen.name)
def test_a_board_settles_where_the_circuit_simulator_settles_it(specimen, ngspice):
    """Junction and board within 0.1 % of the temperature, heat and drop within 0.1 %: all switches at their largest resistance."""
    circuit = ngspice(deck(specimen, low_switch=False))
    values = finding(specimen, continuous_current).values

    assert values["junction_degc"].worst == pytest.approx(circuit["t1x"], rel=1e-3)
    assert values["switch_current_a"].worst == pytest.approx(circuit["i1x"], rel=1e-3)
    assert values["bank_drop_v"].worst == pytest.approx(circuit["d0x"], rel=1e-3)
    assert values["bank_loss_w"].worst == pytest.approx(circuit["d0x"] * specimen.amperes, rel=1e-3)
    if specimen.board_kpw:
        assert values["board_degc"].worst == pytest.approx(circuit["brdx"], rel=1e-3)


@pytest.mark.parametrize("specimen", [one for one in SETTLING if one.banks[0].count > 1], ids=lambda specimen: specimen.name)
def test_a_low_switch_settles_where_the_circuit_simulator_settles_it(specimen, ngspice):
    """Its junction and its current within 0.1 %, among others at their largest resistance."""
    circuit = ngspice(deck(specimen, low_switch=True))
    values = finding(specimen, current_sharing).values

    assert values["low_switch_junction_degc"].worst == pytest.approx(circuit["t1x"], rel=1e-3)
    assert values["low_switch_current_a"].worst == pytest.approx(circuit["i1x"], rel=1e-3)


@pytest.mark.parametrize("specimen", [one for one in SETTLING if one.name != NEAR_FOLD], ids=lambda specimen: specimen.name)
def test_the_largest_current_settles_at_a_limit_in_the_circuit_simulator(specimen, ngspice):
    """Put in as the current, it brings the junction or the board to the limit within 0.1 %."""
    case = case_of(specimen.text)
    bank = case.discharge if specimen.bank == "discharge" else case.charge
    largest = finding(specimen, continuous_current).values["largest_a"].worst
    circuit = ngspice(
        settled_deck(
            parts(specimen, low_switch=False),
            amperes=largest * 0.99999,
            ambient_c=specimen.ambient_c,
            board_kpw=specimen.board_kpw,
            board_ohm=specimen.board_ohm,
        ),
    )
    junction_limit = case.junction_limit_c(bank, case.point(Corner.WORST))
    stress = [circuit["t1x"] / junction_limit, circuit["brdx"] / 120.0 if specimen.board_kpw else 0.0]

    assert max(stress) == pytest.approx(1.0, abs=2e-3)


def test_the_largest_current_of_a_board_that_folds_is_that_of_the_fold():
    """By hand: fold at 263.15 x 2.9 / 1.9 = 401.65 K (128.5 degC); 2 x sqrt(138.5 / (45 x 9 mohm x (401.65/298.15)^2.9)) = 24.009 A."""
    specimen = next(one for one in SPECIMENS if one.name == NEAR_FOLD)

    assert finding(specimen, continuous_current).values["largest_a"].worst == pytest.approx(24.009, abs=0.001)


def test_a_board_that_runs_away_does_so_in_the_circuit_simulator(ngspice):
    """The junction is still climbing beyond any silicon, and the check says that nothing settles."""
    specimen = SPECIMENS[-1]
    taken = specimen.banks[0]
    bank = [Part(ohm=taken.ohm, kpw=taken.kpw, ratio=taken.ratio, count=taken.count)]
    circuit = ngspice(heating_deck([bank], amperes=36, ambient_c=-10, board_kpw=0, seconds=20))

    assert circuit.get("final", 1e9) > 2 * circuit.get("middle", 1e3) or circuit.get("final", 1e9) > 1000
    assert finding(specimen, continuous_current).values["junction_degc"].worst is None
    assert "never settles" in finding(specimen, continuous_current).text
