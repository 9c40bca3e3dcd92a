"""What must hold between the numbers of one sheet, on figures that makers publish.

Figures: International Rectifier PD-91896F (IRF1404), PD-91279E (IRF3205), PD-94812 (IRF540NPbF); NXP AN11158 rev 4, section 2.4 and table 3.
"""

import pytest

from service.facts.identities import (
    CURRENT_SUPPORTS,
    POWER_FACTOR,
    POWER_SUPPORTS,
    current,
    in_order,
    power,
    pulse_covers,
    resistance_falls,
)


@pytest.mark.parametrize(
    ("power_w", "resistance", "junction"),
    [(333, 0.45, 175), (200, 0.75, 175), (130, 1.15, 175), (105, 1.42, 175)],
    ids=["IRF1404", "IRF3205", "IRF540NPbF", "AN11158 BUK7Y12-55B"],
)
def test_published_power_and_resistance_agree(power_w, resistance, junction):
    """Rated power is by definition what takes the junction to its limit at a case of 25 degrees."""
    assert power(power_w=power_w, resistance_k_per_w=resistance, junction_c=junction).off <= POWER_SUPPORTS


def test_a_power_ten_times_too_large_is_a_misreading():
    """2,140 W for 214 W: no rounding makes a factor of ten."""
    assert power(power_w=2140, resistance_k_per_w=0.7, junction_c=175).factor >= POWER_FACTOR


def test_published_currents_follow_the_square_root():
    """AN11158 table 3: 61.8 A at 25 degrees, 43.7 A at 100."""
    assert current(hot_a=43.7, cold_a=61.8, hot_c=100, junction_c=175).off <= CURRENT_SUPPORTS


def test_impossible_figures_are_refused():
    """A thermal resistance of nothing and a junction below the case have no verdict."""
    with pytest.raises(ValueError, match="above zero"):
        power(power_w=100, resistance_k_per_w=0, junction_c=175)
    with pytest.raises(ValueError, match="rise in this order"):
        current(hot_a=1, cold_a=2, hot_c=25, junction_c=175)


@pytest.mark.parametrize(
    ("row", "holds"), [((1, 2, 3), True), ((None, 2, 2), True), ((2, None, 1), False), ((1, 3, 2), False), ((None, None, None), True)]
)
def test_least_typical_and_most_are_in_order(row, holds):
    """As far as they are given."""
    least, typical, most = row

    assert in_order(least=least, typical=typical, most=most) is holds


def test_resistance_and_pulse_are_in_order():
    """A higher gate voltage opens the switch further; a pulse may carry at least what may flow for ever."""
    assert resistance_falls(lower_gate_ohm=0.004, higher_gate_ohm=0.003)
    assert not resistance_falls(lower_gate_ohm=0.003, higher_gate_ohm=0.004)
    assert pulse_covers(continuous_a=50, pulsed_a=200)
    assert not pulse_covers(continuous_a=200, pulsed_a=50)
