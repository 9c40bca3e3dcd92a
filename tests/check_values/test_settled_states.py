"""Settled states of switch banks against scipy's and ngspice's answers, and against closed forms."""

from dataclasses import dataclass

import pytest
from scipy.optimize import brentq

from service.derating.formulas.network import Die, Network, network_loop_gain
from service.derating.formulas.ratio_model import Curve, PowerLaw
from service.derating.formulas.settled_at import ambient_at_board, ambient_at_junction, current_at_board, current_at_junction
from service.derating.formulas.settling import settle


@dataclass(frozen=True)
class Parabola:
    """The parabola of Fig 4 of the IRFR3806 sheet (PD-97313), or a straight line."""

    slope: float = 6.17e-3
    bend: float = 1.626e-5

    def value(self, junction_c):
        """The ratio."""
        return 1 + self.slope * (junction_c - 25) + self.bend * (junction_c - 25) ** 2

    def slope_per_k(self, junction_c):
        """Its growth."""
        return self.slope + 2 * self.bend * (junction_c - 25)


def bank(number, *, low=False):
    """Five switches of 3 mohm and one of 3 or 2, each 8 K/W from the board."""
    parts = ((1, 2e-3), (5, 3e-3)) if low else ((6, 3e-3),)
    return tuple(Die(bank=number, count=count, cold_resistance_ohm=ohm, to_board_kpw=8.0, ratio=Parabola()) for count, ohm in parts)


MIXED = Network(dies=(*bank(0, low=True), *bank(1, low=True)), ambient_c=40.0, board_to_air_kpw=2.0)


def alone(ratio, *, ohm=4e-3):
    """One switch with its own 20 K/W to air of 40 degC."""
    return Network(dies=(Die(bank=0, count=1, cold_resistance_ohm=ohm, to_board_kpw=20.0, ratio=ratio),), ambient_c=40.0, board_to_air_kpw=0.0)


def test_six_unequal_switches_on_a_board_that_two_banks_heat():
    """CV24: scipy fsolve and ngspice .op of one circuit, 80 A."""
    found = settle(MIXED, current_a=80.0)

    assert found.currents_a[:2] == pytest.approx((18.2807, 12.3439), rel=1e-4)
    assert found.junctions_c[:2] == pytest.approx((61.2197, 59.0581), rel=1e-4)
    assert found.board_c == pytest.approx(54.5638, rel=1e-4)
    assert found.drops_v[0] * 1e3 == pytest.approx(45.5118, rel=1e-4)


def test_the_bank_with_all_switches_high():
    """Handbook section 5: 61.25 and 55.94 degC by the same solvers, as hot as the low switch of the mixed bank."""
    found = settle(Network(dies=(*bank(0), *bank(1)), ambient_c=40.0, board_to_air_kpw=2.0), current_a=80.0)

    assert found.junctions_c[0] == pytest.approx(61.25, abs=0.005)
    assert found.board_c == pytest.approx(55.94, abs=0.005)


def test_the_current_that_meets_a_junction_temperature():
    """CV24 read backwards: 61.2197 degC of the low switch is met at 80 A."""
    found = current_at_junction(MIXED, die=0, limit_c=61.2197)

    assert found.value == pytest.approx(80.0, rel=1e-4)
    assert found.steady


def test_the_current_that_meets_a_board_temperature():
    """CV24 read backwards: a board of 54.5638 degC is met at 80 A."""
    assert current_at_board(MIXED, limit_c=54.5638).value == pytest.approx(80.0, rel=1e-4)


def test_the_ambient_that_meets_a_junction_or_a_board_temperature():
    """CV24 read backwards: both are met in air of 40 degC at 80 A."""
    assert ambient_at_junction(MIXED, die=0, limit_c=61.2197, current_a=80.0).value == pytest.approx(40.0, abs=2e-4)
    assert ambient_at_board(MIXED, limit_c=54.5638, current_a=80.0).value == pytest.approx(40.0, abs=2e-4)


def test_a_straight_line_settles_or_runs_away():
    """CV21: 83.168 degC at 20 A, nothing from 45.644 A on; ngspice settles the one and diverges at 48 A."""
    network = alone(Parabola(slope=0.006, bend=0.0))

    assert settle(network, current_a=20.0).junctions_c[0] == pytest.approx(83.168, rel=1e-4)
    assert settle(network, current_a=40.0).exists
    assert not settle(network, current_a=45.65).exists
    assert settle(network, current_a=48.0).junctions_c[0] == float("inf")


def test_a_parabola_settles_until_its_fold():
    """CV22: 85.973 degC at 20 A, fold at 28.770 A and 299.65 degC."""
    network = alone(Parabola())

    assert settle(network, current_a=20.0).junctions_c[0] == pytest.approx(85.973, rel=1e-4)
    assert settle(network, current_a=28.769).exists
    assert not settle(network, current_a=28.771).exists
    assert current_at_junction(network, die=0, limit_c=299.65).value == pytest.approx(28.770, rel=1e-4)
    assert current_at_junction(network, die=0, limit_c=299.0).steady
    assert not current_at_junction(network, die=0, limit_c=300.5).steady


def test_the_loop_gain_of_one_switch_is_its_closed_form():
    """CV21: 400 A2 x 4 mohm x 20 K/W x 0.006 per kelvin = 0.192."""
    network = alone(Parabola(slope=0.006, bend=0.0))

    assert network_loop_gain(network, current_a=20.0, junctions_c=(83.168,)) == pytest.approx(0.192, abs=1e-6)


@pytest.mark.parametrize("amperes", [5.0, 12.0, 20.0, 26.0])
def test_a_power_law_settles_where_brentq_finds_it(amperes):
    """Scipy's bracketing root of the heat balance, an independent solver."""
    root = brentq(lambda t: 40 + 20 * amperes**2 * 4e-3 * ((t + 273.15) / 298.15) ** 2.0 - t, 40, 300, xtol=1e-10)

    assert settle(alone(PowerLaw(2.0, 2.0)), current_a=amperes).junctions_c[0] == pytest.approx(root, abs=1e-6)


def test_a_printed_curve_is_followed_in_straight_lines_and_prolonged():
    """By hand: between 100 degC (1.5) and 150 degC (2.0) 0.01 a kelvin, so 1.75 at 125 degC and 2.25 at 175 degC."""
    curve = Curve((25.0, 100.0, 150.0), (1.0, 1.5, 2.0))

    assert curve.value(125.0) == pytest.approx(1.75)
    assert curve.value(175.0) == pytest.approx(2.25)
    assert curve.slope_per_k(110.0) == pytest.approx(0.01)
    assert curve.value(25.0) == pytest.approx(1.0)
