"""How much would still hold, put in as a fact: just within it a check holds, just beyond it does not. For every inverse of every check."""

from dataclasses import replace

import pytest
from boards import FOUR_FIELDS, WHOLE, case_of
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from strategies import boards

from service.derating.checks import CHECKS, package_current, power_rating, pulsed_current, surge_current
from service.derating.inverse import inverses
from service.derating.open_case import open_case
from service.facts.finding import Outcome
from service.facts.sourced import Known, Sourced

few = settings(deadline=None, max_examples=20, suppress_health_check=[HealthCheck.too_slow])
RATINGS = (power_rating.CHECK, package_current.CHECK)


def holds(check, board, rules=None):
    """Whether a check holds for every bank."""
    return {finding.outcome for finding in check.run(open_case(board, rules=rules))} <= {Outcome.HOLDS}


def in_air(board, degrees_c):
    """The board with its ambient known."""
    ambient = Sourced(value=degrees_c, unit="degC", known=Known.TYPED)
    return replace(board, cooling=replace(board.cooling, ambient_c=ambient))


def with_switches(board, count):
    """The board with as many switches in each bank."""
    one, two = board.discharge_bank, board.charge_bank
    return replace(board, discharge_bank=replace(one, switches=count), charge_bank=replace(two, switches=count))


@few
@given(board=boards(), rules=st.sampled_from(["maker", "eee-inst-002"]), check=st.sampled_from(RATINGS))
def test_the_highest_ambient_of_a_rating_holds_and_a_little_more_does_not(board, rules, check):
    """At the real case temperature, under a rule set that leaves all of a rating and under one that takes part of it."""
    ambient = check.inverses["ambient_degc"](open_case(board, rules=rules))
    assume(ambient is not None)
    assume(ambient > -55)

    assert holds(check, in_air(board, ambient - 1e-4), rules)
    assert not holds(check, in_air(board, ambient + 0.05), rules)


@few
@given(board=boards(), rules=st.sampled_from(["maker", "eee-inst-002"]), check=st.sampled_from(RATINGS))
def test_the_least_number_of_switches_of_a_rating_is_the_least(board, rules, check):
    """With it both banks hold, with one fewer they do not."""
    least = check.inverses["switches"](open_case(board, rules=rules))
    assume(least is not None)
    assume(1 < least < 500)

    assert holds(check, with_switches(board, int(least)), rules)
    assert not holds(check, with_switches(board, int(least) - 1), rules)


@few
@given(pulse=st.integers(10, 200), surge=st.integers(100, 900))
def test_the_least_number_of_switches_of_a_pulse_is_the_least(pulse, surge):
    """The lowest switch of the bank takes the most."""
    case = case_of(WHOLE, {"claim": {"surge": f"{surge} A for 5 s"}, "typed.A": {"id_pulse": {"max": f"{pulse} A"}}})
    least = int(pulsed_current.CHECK.inverses["switches"](case))

    assert holds(pulsed_current.CHECK, with_switches(case.board, least))
    assert least == 1 or not holds(pulsed_current.CHECK, with_switches(case.board, least - 1))


def test_the_least_number_of_switches_of_a_pulse_by_hand():
    """Spread 4 / 3.3: 180 A among eleven of 20 A: share 1/9, so 1 + 1.2121 x 8 = 10.70, eleven switches."""
    case = case_of(WHOLE, {"typed.A": {"id_pulse": {"max": "20 A"}}})

    assert pulsed_current.CHECK.inverses["switches"](case) == 11


@pytest.mark.parametrize("changes", [{}, {"claim": {"surge": "150 A for 60 s"}}, {"charge_bank": {"switches": 4}}])
def test_the_highest_ambient_and_the_least_switches_of_a_surge_decide(changes):
    """The surge of the board that the contract prints, a long one, and unequal banks."""
    case = case_of(WHOLE, changes)
    ambient, least = (surge_current.CHECK.inverses[key](case) for key in ("ambient_degc", "switches"))

    assert holds(surge_current.CHECK, in_air(case.board, ambient - 1e-3))
    assert not holds(surge_current.CHECK, in_air(case.board, ambient + 0.05))
    assert holds(surge_current.CHECK, with_switches(case.board, int(least)))
    assert not holds(surge_current.CHECK, with_switches(case.board, int(least) - 1))


def test_a_surge_limits_the_ambient_of_a_board_that_runs_cooler_for_hours():
    """Junction and board would bear warmer air for hours than the claimed surge leaves them."""
    found = inverses(case_of(WHOLE))["ambient_degc"]
    for_hours = inverses(case_of(WHOLE, {"claim": {"surge": "91 A for 5 s"}}))["ambient_degc"]

    assert found.check == "surge_current"
    assert found.value < for_hours.value


def test_a_surge_on_a_board_of_unknown_heat_says_nothing_of_ambient_and_number():
    """Its bound would be that of a surge without end."""
    case = case_of(WHOLE, {"cooling": {"board_heat_capacity": None}})

    assert surge_current.CHECK.inverses["ambient_degc"](case) is None
    assert surge_current.CHECK.inverses["switches"](case) is None


def test_no_air_is_cool_enough_for_what_never_holds():
    """400 A through six switches: absolute zero stands for none."""
    case = case_of(FOUR_FIELDS, {"claim": {"continuous": "900 A", "surge": "2000 A for 5 s"}, "cooling": {"board_heat_capacity": "50 J/K"}})

    assert surge_current.CHECK.inverses["ambient_degc"](case) == pytest.approx(-273.15)
    assert power_rating.CHECK.inverses["ambient_degc"](case) <= -60


def test_every_limit_has_its_inverse():
    """Each check with a margin answers how much of what it depends on would still hold; what-ifs answer for themselves."""
    answers = {check.name: set(check.inverses) for check in CHECKS if not check.scenario}

    assert answers == {
        "drain_source_voltage": {"packs_in_series"},
        "gate_drive": set(),
        "continuous_current": {"continuous_a", "continuous_a_junction", "ambient_degc", "switches"},
        "current_sharing": {"continuous_a", "ambient_degc", "switches"},
        "conduction_loss": set(),
        "power_rating": {"continuous_a", "ambient_degc", "switches"},
        "package_current": {"continuous_a", "ambient_degc", "switches"},
        "pulsed_current": {"continuous_a", "switches"},
        "surge_current": {"surge_s", "ambient_degc", "switches"},
        "shunt": {"continuous_a"},
    }
