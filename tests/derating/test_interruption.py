"""Laws of breaking a current, and a circuit simulator's word on the same loop."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.derating.formulas.avalanche import (
    avalanche_time_s,
    energy_with_supply_j,
    energy_without_supply_j,
    thermal_energy_j,
    triangle_energy_j,
)
from service.derating.formulas.interruption import fault_current_a, let_through_a2s, prospective_current_a, time_to_current_s


def test_a_rising_short_circuit_meets_the_simulator(ngspice):
    """The simulator agrees within 0.1 %: 26.4 V into 5.2 mohm and 1.1 uH, current and let-through at 40 us and 180 us."""
    deck = """* rising fault
V1 a 0 PWL(0 0 1n 26.4 1 26.4)
R1 a b 5.2m
L1 b c 1.1u
Vm c 0 0
Bsq 0 e I = I(Vm)*I(Vm)
Ce e 0 1
Re e 0 1e12
.options reltol=1e-6 method=gear
.tran 20n 181u 0 20n
.meas tran i40 find i(Vm) at=40u
.meas tran i180 find i(Vm) at=180u
.meas tran q180 find v(e) at=180u
.end
"""
    seen = ngspice(deck)
    loop = {"supply_v": 26.4, "loop_ohm": 5.2e-3, "inductance_h": 1.1e-6}

    assert seen["i40"] == pytest.approx(fault_current_a(**loop, time_s=40e-6), rel=1e-3)
    assert seen["i180"] == pytest.approx(fault_current_a(**loop, time_s=180e-6), rel=1e-3)
    assert seen["q180"] == pytest.approx(let_through_a2s(**loop, time_s=180e-6), rel=1e-3)


def test_clamp_energy_meets_the_simulator(ngspice):
    """The simulator agrees within 0.1 %: 2.2 uH with 420 A broken against 60 V while 29.2 V go on feeding it."""
    deck = """* stiff clamp
Vdd s 0 29.2
L1 s d 2.2u ic=420
Dc d k dmod
.model dmod d(is=1e-12 n=0.001)
Vbv k 0 60
Bpw 0 e I = 60*I(Vbv)
Ce e 0 1 ic=0
Rd d 0 1e7
.options reltol=1e-6 method=gear
.tran 5n 40u 0 5n uic
.meas tran energy find v(e) at=39u
.end
"""
    assert ngspice(deck)["energy"] == pytest.approx(energy_with_supply_j(inductance_h=2.2e-6, current_a=420, breakdown_v=60, supply_v=29.2), rel=1e-3)


@given(supply=st.floats(5, 120), ohm=st.floats(1e-3, 0.1), henry=st.floats(1e-7, 1e-4), share=st.floats(0.01, 0.95))
def test_the_time_to_a_current_undoes_the_current_at_a_time(supply, ohm, henry, share):
    """One formula is the other's inverse, and no current passes the prospective one."""
    loop = {"supply_v": supply, "loop_ohm": ohm, "inductance_h": henry}
    current = share * prospective_current_a(supply_v=supply, loop_ohm=ohm)

    assert fault_current_a(**loop, time_s=time_to_current_s(**loop, current_a=current)) == pytest.approx(current)


@given(henry=st.floats(1e-7, 1e-4), current=st.floats(1, 5000), breakdown=st.floats(30, 200), share=st.floats(0, 0.95))
def test_a_supply_that_stays_only_adds_energy(henry, current, breakdown, share):
    """The triangle of the avalanche's own time holds exactly the energy of the convention with the supply."""
    supply = share * breakdown
    fed = energy_with_supply_j(inductance_h=henry, current_a=current, breakdown_v=breakdown, supply_v=supply)
    lasts = avalanche_time_s(inductance_h=henry, current_a=current, breakdown_v=breakdown, supply_v=supply)

    assert fed >= energy_without_supply_j(inductance_h=henry, current_a=current) * (1 - 1e-12)
    assert triangle_energy_j(breakdown_v=breakdown, current_a=current, time_s=lasts) == pytest.approx(fed)


@given(start=st.floats(25, 170), current=st.floats(4, 500))
def test_a_warmer_start_or_a_larger_current_allows_less_energy(start, current):
    """The allowed energy falls with both (Blackburn, PESC 1988)."""
    rule = {"limit_c": 175.0, "breakdown_v": 78.0, "impedance": lambda t: t**0.5}
    here = thermal_energy_j(start_c=start, current_a=current, **rule)

    assert thermal_energy_j(start_c=start + 4, current_a=current, **rule) < here
    assert thermal_energy_j(start_c=start, current_a=current * 1.1, **rule) < here
