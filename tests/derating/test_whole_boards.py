"""Whole invented boards at rest against ngspice, which gets its numbers from a person who reads the same board by the conventions."""

import pytest
from netlist import Part, heating_deck, settled_deck
from specimens import SPECIMENS

from service.derating.case import Corner
from service.derating.checks import continuous_current, current_sharing

NEAR_FOLD = "close to its fold"
SETTLING = [specimen for specimen in SPECIMENS if specimen.name != "run-away"]


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
    return next(found for found in check.CHECK.run(specimen.case) if found.bank == specimen.bank)


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
    case = specimen.case
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
