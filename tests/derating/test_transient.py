"""Laws of heating over time, and a circuit simulator's word on the same networks."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.derating.formulas.ladder import drawn_capacities_jpk, foster_to_ladder, ladder_to_foster
from service.derating.formulas.transient import (
    foster_impedance_kpw,
    foster_train_peak_k,
    foster_train_valley_k,
    four_term_impedance_kpw,
    superposed_rise_k,
    two_term_impedance_kpw,
)

OHMS, TAUS = (0.12, 0.31, 0.27, 0.10), (0.4e-3, 2.1e-3, 11e-3, 0.16)  # an invented die, pad and tab
TIGHT = ".options reltol=1e-6 abstol=1e-12 vntol=1e-9 method=gear\n"

networks = st.lists(st.tuples(st.floats(0.01, 10), st.floats(1e-5, 10)), min_size=1, max_size=5, unique_by=lambda pair: round(pair[1], 6))


def foster_lines(name: str) -> str:
    """A netlist's lines for the invented pairs in series, driven at node ``name``0."""
    nodes = [f"{name}{i}" for i in range(len(OHMS))] + ["0"]
    pairs = zip(OHMS, TAUS, nodes[:-1], nodes[1:], strict=True)
    return "".join(f"R{a} {a} {b} {r}\nC{a} {a} {b} {tau / r}\n" for r, tau, a, b in pairs)


def ladder_lines(name: str, ohms, farads) -> str:
    """A netlist's lines for a ladder with its capacitors to the common line."""
    nodes = [f"{name}{i}" for i in range(len(ohms))] + ["0"]
    return "".join(f"R{a} {a} {b} {r}\nC{a} {a} 0 {c}\n" for r, c, a, b in zip(ohms, farads, nodes[:-1], nodes[1:], strict=True))


def test_a_step_into_pairs_and_into_their_ladder_meets_the_simulator(ngspice):
    """The simulator agrees within 0.1 %: Foster pairs, the equivalent ladder, and the pairs drawn as a ladder, each under 60 W."""
    times = {"a": 0.2e-3, "b": 2e-3, "c": 20e-3, "d": 0.3}
    drawn = drawn_capacities_jpk(resistances_kpw=OHMS, time_constants_s=TAUS)
    source = "".join(f"I{n} 0 {n}0 PWL(0 0 1n 60 1 60)\n" for n in "fgh")
    wanted = "".join(f".meas tran {n}{k} find v({n}0) at={t}\n" for n in "fgh" for k, t in times.items())
    equivalent = foster_to_ladder(resistances_kpw=OHMS, time_constants_s=TAUS)
    deck = "* steps\n" + source + foster_lines("f") + ladder_lines("g", *equivalent) + ladder_lines("h", OHMS, drawn)
    seen = ngspice(deck + TIGHT + ".tran 10u 0.31 0 10u\n" + wanted + ".end\n")
    as_pairs = dict(zip(("resistances_kpw", "time_constants_s"), ladder_to_foster(resistances_kpw=OHMS, capacities_jpk=drawn), strict=True))

    for k, t in times.items():
        rise = 60 * foster_impedance_kpw(time_s=t, resistances_kpw=OHMS, time_constants_s=TAUS)
        assert seen[f"f{k}"] == pytest.approx(rise, rel=1e-3)
        assert seen[f"g{k}"] == pytest.approx(rise, rel=1e-3)
        assert seen[f"h{k}"] == pytest.approx(60 * foster_impedance_kpw(time_s=t, **as_pairs), rel=1e-3)


def test_a_pulse_train_meets_the_simulator(ngspice):
    """The simulator agrees within 0.1 %: 45 W for 3 ms of every 12 ms, long settled."""
    deck = "* train\nI1 0 f0 PULSE(0 45 0 10n 10n 3m 12m)\n" + foster_lines("f") + TIGHT + ".tran 5u 1.452 1.42 5u\n"
    seen = ngspice(deck + ".meas tran top max v(f0) from=1.428 to=1.452\n.meas tran low min v(f0) from=1.428 to=1.452\n.end\n")
    train = {"power_w": 45, "pulse_s": 3e-3, "period_s": 12e-3, "resistances_kpw": OHMS, "time_constants_s": TAUS}

    assert seen["top"] == pytest.approx(foster_train_peak_k(**train), rel=1e-3)
    assert seen["low"] == pytest.approx(foster_train_valley_k(**train), rel=1e-3)


def test_a_staircase_meets_the_simulator(ngspice):
    """The simulator agrees within 0.1 %: 20 W, then 70 W, then 5 W."""
    deck = "* staircase\nI1 0 f0 PWL(0 0 10n 20 10m 20 10.0001m 70 14m 70 14.0001m 5 1 5)\n" + foster_lines("f") + TIGHT
    seen = ngspice(deck + ".tran 5u 21m 0 5u\n.meas tran top find v(f0) at=14m\n.meas tran late find v(f0) at=20m\n.end\n")
    stairs = {"impedance": lambda t: foster_impedance_kpw(time_s=t, resistances_kpw=OHMS, time_constants_s=TAUS)}

    assert seen["top"] == pytest.approx(superposed_rise_k(time_s=14e-3, powers_w=[20, 70], starts_s=[0, 10e-3], **stairs), rel=1e-3)
    assert seen["late"] == pytest.approx(superposed_rise_k(time_s=20e-3, powers_w=[20, 70, 5], starts_s=[0, 10e-3, 14e-3], **stairs), rel=1e-3)


@given(network=networks, early=st.floats(1e-6, 10), longer=st.floats(1, 100))
def test_an_impedance_never_falls_and_never_passes_its_sum(network, early, longer):
    """Heat that is kept longer makes it warmer, up to the steady resistance."""
    ohms, taus = zip(*network, strict=True)
    first = foster_impedance_kpw(time_s=early, resistances_kpw=ohms, time_constants_s=taus)
    later = foster_impedance_kpw(time_s=early * longer, resistances_kpw=ohms, time_constants_s=taus)

    assert 0 <= first <= later * (1 + 1e-12)
    assert later <= sum(ohms) * (1 + 1e-12)


@given(network=networks)
def test_a_network_survives_the_way_to_a_ladder_and_back(network):
    """Both forms have the same step response."""
    ohms, taus = zip(*network, strict=True)
    ladder = foster_to_ladder(resistances_kpw=ohms, time_constants_s=taus)
    back = ladder_to_foster(resistances_kpw=ladder[0], capacities_jpk=ladder[1])

    assert sum(ladder[0]) == pytest.approx(sum(ohms))
    for t in (1e-4, 1e-2, 1.0):
        before = foster_impedance_kpw(time_s=t, resistances_kpw=ohms, time_constants_s=taus)
        assert foster_impedance_kpw(time_s=t, resistances_kpw=back[0], time_constants_s=back[1]) == pytest.approx(before, rel=1e-6)


@given(network=networks, duty=st.floats(0.01, 0.99), period=st.floats(1e-4, 1))
def test_the_duty_rules_lie_on_the_safe_side(network, duty, period):
    """Exact <= four terms <= two terms, and every one at least the mean."""
    ohms, taus = zip(*network, strict=True)
    pulse = duty * period
    z = {
        name: foster_impedance_kpw(time_s=t, resistances_kpw=ohms, time_constants_s=taus)
        for name, t in {"pulse": pulse, "period": period, "both": pulse + period}.items()
    }
    exact = foster_train_peak_k(power_w=1, pulse_s=pulse, period_s=period, resistances_kpw=ohms, time_constants_s=taus)
    two = two_term_impedance_kpw(duty=duty, steady_kpw=sum(ohms), pulse_kpw=z["pulse"])
    four = four_term_impedance_kpw(
        duty=duty,
        steady_kpw=sum(ohms),
        pulse_kpw=z["pulse"],
        period_kpw=z["period"],
        period_and_pulse_kpw=z["both"],
    )

    assert duty * sum(ohms) <= exact * (1 + 1e-9)
    assert exact <= four * (1 + 1e-9)
    assert four <= two * (1 + 1e-9)
