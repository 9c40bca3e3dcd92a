"""The course of a surge against published independent solutions, a circuit simulator and a stiff integrator."""

from math import inf

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from service.derating.assembly import Assembly, Kind, Sink
from service.derating.warming import Surge


class Parabola:
    """The parabola through IRFR3806 Fig 4 that the handbook's netlists use."""

    def value(self, junction_c):
        """The ratio."""
        return 1 + 6.17e-3 * (junction_c - 25) + 1.626e-5 * (junction_c - 25) ** 2

    def slope_per_k(self, junction_c):
        """Its growth."""
        return 6.17e-3 + 2 * 1.626e-5 * (junction_c - 25)


MEASURED = Parabola()


def massless(since):
    """A junction that is its own case."""
    return 0.0 * since


def bank_of_six() -> Assembly:
    """Netlists 04, 05 and 09: one part of 2 mohm and five of 3 mohm; a second bank of the same loss warms the board as well."""
    like = {"bank": 0, "ratio": MEASURED, "to_case_kpw": 0.0, "impedance": massless, "to_sink_kpw": 0.0}
    return Assembly(
        kinds=(
            Kind(**like, switches=1, cold_ohm=2e-3, sink=0, warming=(1, 0, 1)),
            Kind(**like, switches=5, cold_ohm=3e-3, sink=1, warming=(0, 5, 5)),
        ),
        sinks=(Sink(to_air_kpw=inf, heat_jpk=0.5), Sink(to_air_kpw=inf, heat_jpk=2.5), Sink(to_air_kpw=2, heat_jpk=20)),
        links=((0, 2, 8.0), (1, 2, 8.0 / 5)),
        ambient_c=40,
    )


def test_a_bank_settles_where_two_solvers_found_it():
    """CV24: scipy fsolve and ngspice .op, 80 A."""
    state = bank_of_six().settled(80)

    assert state.current_a == pytest.approx([18.2807, 12.3439], rel=1e-4)
    assert [*state.junction_c, state.sink_c[2]] == pytest.approx([61.2197, 59.0581, 54.5638], rel=1e-4)


def test_a_surge_ends_where_two_solvers_found_it():
    """CV59: scipy Radau and ngspice, 80 A settled, then 160 A for 10 s."""
    state = Surge(bank_of_six(), running_a=80, seconds=10).end(160)

    assert [*state.junction_c, state.sink_c[2]] == pytest.approx([86.208, 78.045, 62.612], rel=1e-3)
    assert state.current_a[0] == pytest.approx(35.615, rel=1e-3)


def test_a_surge_held_for_ever_settles_hot():
    """Section 5: 160 A for ever would settle at 226 degC."""
    assert bank_of_six().settled(160).junction_c[0] == pytest.approx(226, abs=0.5)


PAIRS = ((0.11, 0.6e-3), (0.24, 5e-3), (0.35, 60e-3))


def pairs_impedance(since):
    """The invented junction-case pairs of the boards below."""
    return sum(ohms * -np.expm1(-since / tau) for ohms, tau in PAIRS)


def unlike_banks(*, heat_jpk: float) -> Assembly:
    """An invented board: four parts, one of them low, in series with three parts of another kind, shunt and joints on the board."""
    like = {"ratio": MEASURED, "to_case_kpw": 0.7, "impedance": pairs_impedance, "to_sink_kpw": 3.5, "sink": 0}
    return Assembly(
        kinds=(
            Kind(**like, bank=0, switches=1, cold_ohm=2.4e-3, warming=(1,)),
            Kind(**like, bank=0, switches=3, cold_ohm=3.1e-3, warming=(3,)),
            Kind(**like, bank=1, switches=3, cold_ohm=2.2e-3, warming=(3,)),
        ),
        sinks=(Sink(to_air_kpw=1.9, heat_jpk=heat_jpk, resistor_ohm=0.4e-3),),
        ambient_c=30,
    )


def netlist(running_a: float, surge_a: float, seconds: float, heat_jpk: float) -> str:
    """The same board for the simulator: volts are degrees, amperes are watts, each chain of pairs floats between junction and case."""
    parts = ((0, 2.4e-3, "d"), (1, 3.1e-3, "d"), (2, 2.2e-3, "e"))
    many = (1, 3, 3)
    lines = [
        "* invented board",
        f"I1 0 d PWL(0 {running_a} 1m {running_a} 1.00001m {surge_a} 99 {surge_a})",
        f"I2 0 e PWL(0 {running_a} 1m {running_a} 1.00001m {surge_a} 99 {surge_a})",
        "Vamb amb 0 30",
    ]
    for k, ohm, node in parts:
        lines += [
            f"Bd{k} {node} s{k} I = {many[k]}*V({node},s{k})/({ohm}*(1+6.17m*(V(j{k})-25)+16.26u*(V(j{k})-25)^2))",
            f"Vs{k} s{k} 0 0",
            f"Bp{k} c{k} j{k} I = V({node})*I(Vs{k})/{many[k]}",
            f"Bc{k} 0 c{k} I = V({node})*I(Vs{k})/{many[k]}",
            f"Rcb{k} c{k} b{k} 3.5",
            f"Eb{k} b{k} 0 brd 0 1",
        ]
        inner = [f"j{k}", f"m{k}", f"n{k}", f"c{k}"]
        lines += [f"R{k}{i} {inner[i]} {inner[i + 1]} {r}\nC{k}{i} {inner[i]} {inner[i + 1]} {tau / r}" for i, (r, tau) in enumerate(PAIRS)]
    total = "V(d)*(I(Vs0)+I(Vs1))+V(e)*I(Vs2)+0.4m*(I(Vs2))^2"
    lines += [
        f"Bb 0 brd I = {total}",
        "Rba brd amb 1.9",
        f"Cb brd 0 {heat_jpk}",
        ".nodeset v(j0)=60 v(j1)=60 v(j2)=60 v(c0)=60 v(c1)=60 v(c2)=60 v(brd)=55 v(d)=0.05 v(e)=0.05",
        ".options reltol=1e-6 abstol=1e-9 vntol=1e-9 method=gear",
        f".tran {seconds / 2000} {seconds * 1.01 + 1e-3} 0 {seconds / 2000}",
    ]
    end = seconds + 1.00001e-3 - 1e-8
    lines += [f".meas tran {name} find v({node}) at={end}" for name, node in (("low", "j0"), ("rest", "j1"), ("other", "j2"), ("board", "brd"))]
    return "\n".join([*lines, ".end", ""])


@pytest.mark.parametrize(("surge_a", "seconds", "heat_jpk"), [(190, 5.0, 60.0), (215, 0.05, 60.0), (150, 40.0, 25.0)])
def test_a_surge_on_a_whole_board_meets_the_simulator(ngspice, surge_a, seconds, heat_jpk):
    """Two unlike banks, 70 A before: the simulator agrees within 0.1 % on every temperature."""
    seen = ngspice(netlist(70, surge_a, seconds, heat_jpk))
    state = Surge(unlike_banks(heat_jpk=heat_jpk), running_a=70, seconds=seconds).end(surge_a)

    assert [*state.junction_c, *state.sink_c] == pytest.approx([seen["low"], seen["rest"], seen["other"], seen["board"]], rel=1e-3)


def test_one_switch_on_its_own_copper_meets_a_stiff_integrator():
    """Scipy's Radau within 0.05 %: 5 mohm, 0.8 K/W without mass, then 45 K/W with 1.4 J/K; 8 A, then 20 A for 12 s."""
    copper = Assembly(
        kinds=(
            Kind(
                bank=0,
                switches=1,
                cold_ohm=5e-3,
                ratio=MEASURED,
                to_case_kpw=0.8,
                impedance=lambda s: 0.8 + 0 * s,
                to_sink_kpw=0.0,
                sink=0,
                warming=(1,),
            ),
        ),
        sinks=(Sink(to_air_kpw=45, heat_jpk=1.4),),
        ambient_c=25,
    )

    def junction(copper_c, amperes):
        warm = copper_c
        for _ in range(100):
            warm = copper_c + 0.8 * amperes**2 * 5e-3 * MEASURED.value(warm)
        return warm

    def rate(_, copper_c):
        return [(400 * 5e-3 * MEASURED.value(junction(copper_c[0], 20)) - (copper_c[0] - 25) / 45) / 1.4]

    start = copper.settled(8).sink_c[0]
    end = solve_ivp(rate, (0, 12), [start], method="Radau", rtol=1e-9, atol=1e-9).y[0, -1]
    state = Surge(copper, running_a=8, seconds=12).end(20)

    assert [state.sink_c[0], state.junction_c[0]] == pytest.approx([end, junction(end, 20)], rel=5e-4)


@settings(deadline=None, max_examples=40)
@given(surge=st.floats(80, 220), seconds=st.floats(1e-3, 100), heat=st.floats(0.1, 500))
def test_more_current_more_time_and_less_heat_capacity_end_hotter(surge, seconds, heat):
    """Each of the three makes a surge worse, and the bound without heat capacity lies above all."""

    def hottest(amperes=surge, time=seconds, capacity=heat):
        return Surge(unlike_banks(heat_jpk=capacity), running_a=60, seconds=time).end(amperes).junction_c[0]

    here = hottest()

    assert hottest(amperes=surge * 1.05) >= here
    assert hottest(time=seconds * 2) >= here - 0.02
    assert hottest(capacity=heat / 2) >= here - 0.02
    assert hottest(capacity=0.0) >= here - 0.02
    assert hottest(capacity=inf) <= here + 0.02


def test_without_any_heat_capacity_a_surge_is_at_its_settled_state():
    """Zero heat capacity and an impedance that is there at once leave nothing to wait for."""
    instant = unlike_banks(heat_jpk=0.0)
    kinds = tuple(Kind(**{f: getattr(k, f) for f in Kind.__slots__} | {"impedance": lambda s: 0.7 + 0 * s}) for k in instant.kinds)
    instant = Assembly(kinds=kinds, sinks=instant.sinks, ambient_c=30)

    assert Surge(instant, running_a=20, seconds=3).end(90).junction_c == pytest.approx(instant.settled(90).junction_c, rel=1e-6)


def test_a_surge_that_never_settles_is_said_to_run_away():
    """A current far beyond the fold has no state."""
    assert bank_of_six().settled(1000).ran_away
    assert Surge(bank_of_six(), running_a=80, seconds=60).end(1000).ran_away
