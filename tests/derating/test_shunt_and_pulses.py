"""The shunt and the pulsed drain current."""

import pytest
from boards import FOUR_FIELDS, WHOLE, case_of

from service.derating.checks import pulsed_current, shunt
from service.facts.finding import Outcome


def of(check, changes=None, text=WHOLE, **options):
    """The first finding of a check."""
    return check.CHECK.run(case_of(text, changes, **options))[0]


def test_a_shunt_within_its_rating_holds():
    """By hand, 0.25 mohm: 90 A are 2.025 W of 5 W and 22.5 mV; 180 A are 8.1 W and 45 mV; a millivolt is 4 A; 5 W would be 141.42 A."""
    finding = of(shunt)

    assert finding.outcome is Outcome.HOLDS
    assert (finding.demand.value, finding.limit.value) == pytest.approx((2.025, 5))
    assert finding.values["drop_v"].worst == pytest.approx(0.0225)
    assert finding.values["trip_a_per_mv"].worst == pytest.approx(4)
    assert finding.values["surge_drop_v"].worst == pytest.approx(0.045)
    assert finding.values["surge_power_w"].worst == pytest.approx(8.1)
    assert shunt.continuous_a(case_of(WHOLE)) == pytest.approx(141.42, abs=0.01)


def test_a_shunt_at_its_rating_keeps_it_and_beyond_fails():
    """By hand: 80 A through 0.5 mohm is 3.2 W."""
    board = {"claim": {"continuous": "80 A"}, "board": {"shunt": "0.5 mohm", "shunt_rating": "3.2 W"}}

    assert of(shunt, board).outcome is Outcome.HOLDS
    assert of(shunt, {**board, "board": {"shunt": "0.5 mohm", "shunt_rating": "3.19 W"}}).outcome is Outcome.FAILS


def test_an_unknown_rating_becomes_its_own_threshold():
    """2.025 W is what the rating must be; a zero margin must not make it the limiting check."""
    finding = of(shunt, {"board": {"shunt_rating": None}})

    assert finding.outcome is Outcome.HOLDS_IF
    assert (finding.condition.quantity, finding.condition.value) == ("shunt_rating", 2.025)
    assert finding.margin is None
    assert shunt.continuous_a(case_of(WHOLE, {"board": {"shunt_rating": None}})) is None


def test_a_shunt_that_nobody_described_is_not_determined():
    """The finding names it."""
    assert of(shunt, text=FOUR_FIELDS).missing == ("board.shunt",)


def test_a_warm_copper_track_drifts_by_a_fifth_and_an_alloy_hardly():
    """By hand: 50 K x 3930 ppm/K is 19.65 %, 50 K x 20 ppm/K is 0.1 %."""
    drift = of(shunt).values["drift_share"]

    assert (drift.favourable, drift.worst) == pytest.approx((0.001, 0.1965))


def test_the_lowest_switch_takes_more_than_its_part_of_a_pulse():
    """By hand: rho 4.0 / 3.3, ten switches: 180 x 1.21212 / 10.21212 = 21.365 A of 580 A."""
    finding = of(pulsed_current)

    assert finding.outcome is Outcome.HOLDS
    assert (finding.demand.value, finding.limit.value) == pytest.approx((21.365, 580), abs=1e-3)


def test_a_pulse_above_the_sheet_fails_and_the_rules_factor_counts():
    """EEE-INST-002 leaves 0.75 of the rating: 21.365 A keep 28.5 A but not 28.4 A."""
    ratings = [of(pulsed_current, {"typed.A": {"id_pulse": {"max": amperes}}}, rules="eee-inst-002").outcome for amperes in ("28.5 A", "23.9 A")]

    assert ratings == [Outcome.HOLDS, Outcome.FAILS]
    assert of(pulsed_current, {"typed.A": {"id_pulse": {"max": "17 A"}}}).outcome is Outcome.FAILS


def test_between_even_and_uneven_sharing_the_spread_decides():
    """18 A each when even, 21.365 A when one is low: 20 A hold if the spread is small enough."""
    finding = of(pulsed_current, {"typed.A": {"id_pulse": {"max": "20 A"}}})

    # By hand: 20 = 180 rho / (rho + 9), so rho = 9 x 20 / 160 = 1.125.
    assert finding.outcome is Outcome.HOLDS_IF
    assert (finding.condition.quantity, finding.condition.value) == ("current_spread", 1.125)


def test_without_a_pulsed_rating_it_is_not_determined():
    """The finding names id_pulse."""
    finding = of(pulsed_current, text=FOUR_FIELDS)

    assert finding.outcome is Outcome.NOT_DETERMINED
    assert finding.missing == ("discharge: id_pulse",)


def test_a_charge_bank_of_separate_ports_sees_no_discharge_surge():
    """Its demand is the charge claim: 45 A."""
    charge = pulsed_current.CHECK.run(case_of(WHOLE, {"board": {"port": "separate"}}))[1]

    assert charge.demand.value < 45 / 7 * 1.3


def test_the_largest_current_by_the_pulsed_rating():
    """By hand: the seven switches of the charge bank bind: 580 x (1.21212 + 6) / 1.21212 = 3451 A; without a rating there is no bound."""
    assert pulsed_current.continuous_a(case_of(WHOLE)) == pytest.approx(3451, abs=0.5)
    assert pulsed_current.continuous_a(case_of(FOUR_FIELDS)) is None


def test_a_shunt_of_unknown_rating_never_holds_by_itself():
    """By hand: 10 A through 0.25 mohm are 25 mW, which any shunt bears; but nobody has said so."""
    finding = shunt.CHECK.run(case_of(WHOLE, {"claim": {"continuous": "10 A", "continuous_charge": "5 A"}, "board": {"shunt_rating": None}}))[0]
    rating = next(one for one in finding.assumptions if one.name == "shunt_rating")

    assert finding.outcome is Outcome.HOLDS_IF
    assert finding.condition.value == pytest.approx(0.025)
    assert (rating.used, rating.low, rating.high) == (0, 0, 15)
