"""A blocked bank: heat, safe current, how long, and what re-closing changes."""

import numpy as np
import pytest
from boards import FOUR_FIELDS, WHOLE, case_of
from scipy.integrate import solve_ivp

from service.derating.checks.body_diode import CHECK
from service.facts.finding import Outcome, Relation

# CV60: 80 A, 0.8 V, six parts, 40 K/W; a limit of 100 degC in 40 degC leaves the 60 K of that row.
ROW_60 = {
    "cooling": {"ambient": "40 °C", "junction_to_air": "40 K/W"},
    "limits": {"junction": "100 °C"},
    "board": {"recloses_on_current": False},
    "typed.A": {"vsd": {"max": "0.8 V"}},
}


def of(bank, changes, text=FOUR_FIELDS):
    """The finding of one blocked bank."""
    return next(finding for finding in CHECK.run(case_of(text, changes)) if finding.bank == bank)


def test_a_blocked_bank_heats_as_worked_elsewhere():
    """CV60, exact rational arithmetic: 64 W, 10.667 W a part, a rise of 426.667 K, and 6 x 1.875 A for 60 K."""
    finding = of("charge", ROW_60)

    assert finding.outcome is Outcome.FAILS
    assert finding.values["bank_diode_loss_w"].worst == pytest.approx(64)
    assert finding.values["switch_diode_loss_w"].worst == pytest.approx(10.667, abs=1e-3)
    assert finding.values["junction_degc"].worst == pytest.approx(466.667, abs=1e-3)
    assert finding.values["safe_current_a"].worst == pytest.approx(11.25, abs=1e-3)


def test_a_protection_that_closes_the_bank_again_holds():
    """The diodes then carry the current for a moment only; the figures of the worse case stay beside."""
    finding = of("charge", {**ROW_60, "board": {"recloses_on_current": True}})

    assert finding.outcome is Outcome.HOLDS
    assert finding.values["safe_current_a"].worst == pytest.approx(11.25, abs=1e-3)


def test_an_unknown_protection_holds_if_it_closes_the_bank_again():
    """The condition is a fact that a person can look up or try."""
    finding = of("charge", {**ROW_60, "board": {}})

    assert finding.outcome is Outcome.HOLDS_IF
    assert (finding.condition.quantity, finding.condition.relation, finding.condition.value) == ("recloses_on_current", Relation.IS, True)


def test_a_current_that_diodes_bear_holds_whatever_the_protection_does():
    """11 A of the 11.25 A above; 11.3 A fail."""
    claims = {"continuous": "80 A", "continuous_charge": "11 A"}

    assert of("discharge", {**ROW_60, "claim": claims}).outcome is Outcome.HOLDS
    assert of("discharge", {**ROW_60, "claim": {**claims, "continuous_charge": "11.3 A"}}).outcome is Outcome.FAILS


def test_without_a_forward_voltage_it_is_not_determined():
    """The finding names vsd."""
    finding = of("charge", {})

    assert finding.outcome is Outcome.NOT_DETERMINED
    assert finding.missing == ("charge: vsd",)


def test_a_typical_forward_voltage_alone_is_bounded_from_above():
    """1.5 V is the largest printed maximum of five sheets; it is shown as a default."""
    finding = of("charge", {**ROW_60, "typed.A": {"vsd": {"typ": "0.8 V"}}})

    assert finding.values["bank_diode_loss_w"].worst == pytest.approx(80 * 1.5)
    assert "diode_voltage" in {assumption.name for assumption in finding.assumptions}


def test_separate_ports_know_no_such_case():
    """No outcome, one sentence."""
    (finding,) = CHECK.run(case_of(WHOLE, {"board": {"port": "separate"}}))

    assert finding.outcome is None
    assert "Separate ports" in finding.text


def test_it_never_names_the_limiting_check():
    """A scenario, marked as one."""
    assert CHECK.scenario
    assert all(finding.scenario for finding in CHECK.run(case_of(WHOLE)))


def test_the_time_to_the_limit_meets_a_stiff_integrator():
    """Scipy on the contract's board: 10 blocked switches at 45 A x 1.2 V and seven on, 55 J/K, until 110 degC of board or 120 of junction."""
    changes = {"board": {"recloses_on_current": False}}
    seconds = of("discharge", changes, WHOLE).values["time_to_limit_s"].worst

    def ratio(junction_c):
        return np.interp(junction_c, [-40, 25, 100, 175], [0.70, 1.0, 1.52, 2.20])

    def channel_w(board_c, switches):
        warm = board_c
        for _ in range(50):
            warm = board_c + 4.8 * (45 / switches) ** 2 * 4e-3 * ratio(warm)
        return switches * (45 / switches) ** 2 * 4e-3 * ratio(warm)

    board = 35.0
    for _ in range(200):
        board = 35 + 2.5 * (channel_w(board, 10) + channel_w(board, 7) + 45**2 * 0.45e-3)

    def rate(_, state):
        return [(45 * 1.2 + channel_w(state[0], 7) + 45**2 * 0.45e-3 - (state[0] - 35) / 2.5) / 55]

    diode_rise = 4.8 * 45 * 1.2 / 10
    course = solve_ivp(rate, (0, 300), [board], rtol=1e-8, dense_output=True)
    times = np.linspace(0, 300, 300001)
    reached = course.sol(times)[0]
    expected = times[np.argmax((reached >= 110) | (reached + diode_rise >= 120))]

    assert seconds == pytest.approx(expected, rel=0.02)


def test_a_charge_current_that_nobody_claims_is_an_open_question():
    """CV60 again: six diodes bear 11.25 A for 60 K; a charger may bring a tenth of the 80 A of the discharge claim, or all of it."""
    finding = of("discharge", ROW_60)

    assert finding.outcome is Outcome.HOLDS_IF
    assert finding.condition.quantity == "charge_current"
    assert finding.condition.value == pytest.approx(11.25, abs=1e-3)
    assert of("discharge", {**ROW_60, "claim": {"continuous_charge": "11.24 A"}}).outcome is Outcome.HOLDS
    assert of("discharge", {**ROW_60, "claim": {"continuous_charge": "11.26 A"}}).outcome is Outcome.FAILS
