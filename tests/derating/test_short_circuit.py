"""A short circuit against the handbook's worked loop, numerical integration and its own thresholds."""

import numpy as np
import pytest
from boards import FOUR_FIELDS, WHOLE, case_of
from scipy.integrate import quad
from scipy.optimize import brentq

from service.derating.case import Corner
from service.derating.checks.short_circuit import CHECK
from service.derating.fault_loop import inductance_h, loop_ohm, loop_quantities
from service.facts.finding import Outcome

# Section 9's loop: 14.4 V, 4.176 mohm = 4 x 0.2 + two banks of six 4.5 mohm parts + 1.876 of leads and joints, 1.5 uH; rated 52 V.
LOOP = """
claim = {continuous = "20 A"}
cells = {in_series = 4, charge_voltage = "3.65 V", resistance = "0.2 mohm", fault_voltage = "3.6 V"}
discharge_bank = {part = "typed:A", switches = 6}
board = {joints = "1.876 mohm"}
cooling = {ambient = "25 °C", junction_to_air = "20 K/W"}
fault = {protection_delay = "61 us", loop_inductance = "1.5 uH"}

[typed.A]
vds_max = {max = "52 V"}
rds_on = [{typ = "4.5 mohm", max = "4.5 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
rth_jc = {max = "0.8 K/W"}
eas = {max = "400 mJ", id = "600 A"}
zth = [["1 us", "0.0032 K/W"], ["244 us", "0.05 K/W"], ["10 ms", "0.32 K/W"], ["1 s", "0.8 K/W"]]
"""


def found(changes=None, text=LOOP, **options):
    """The finding of the discharge bank."""
    (finding,) = CHECK.run(case_of(text, changes, **options))
    return finding


@pytest.mark.parametrize(
    ("delay", "current_a", "stored_mj", "fed_mj", "let_through"),
    [("61 us", 538.6, 217.5, 301, 6.15), ("244 us", 1700.1, 2167.7, 2998, 276)],
)
def test_the_worked_loop_comes_out_as_worked(delay, current_a, stored_mj, fed_mj, let_through):
    """CV51 and the table of section 9: closed form and ODE; both conventions of the energy."""
    values = found({"fault": {"protection_delay": delay}}).values

    assert values["prospective_current_a"].worst == pytest.approx(3448, abs=1)
    assert values["turn_off_current_a"].worst == pytest.approx(current_a, rel=5e-4)
    assert values["switch_current_a"].worst == pytest.approx(current_a / 6, rel=5e-4)
    assert values["stored_energy_j"].worst * 1e3 == pytest.approx(stored_mj, rel=5e-4)
    assert values["turn_off_energy_j"].worst * 1e3 == pytest.approx(fed_mj, abs=0.6)
    assert values["let_through_a2s"].worst == pytest.approx(let_through, rel=0.002)


def test_heating_during_the_delay_meets_numerical_integration():
    """Scipy's quad of the convolution of power and impedance; the section's rough figure for it is 9.6 K."""
    finding = found({"fault": {"protection_delay": "244 us"}})

    def impedance(t):
        return np.exp(np.interp(np.log(t), np.log([1e-6, 244e-6]), np.log([0.0032, 0.05])))

    def growth(t):
        current, slope = 14.4 / 4.176e-3 * -np.expm1(-t * 2784), 14.4 / 1.5e-6 * np.exp(-t * 2784)
        return 2 * current * slope / 36

    running = 25.0
    for _ in range(50):
        running = 25 + 20 * (20 / 6) ** 2 * 4.5e-3 * ((running + 273.15) / 298.15) ** 2.3
    rise = quad(lambda t: growth(t) * impedance(244e-6 - t), 0, 243.99e-6, limit=200)[0]
    hot = 4.5e-3 * ((running + 273.15) / 298.15) ** 2.3

    assert finding.values["junction_degc"].worst - running == pytest.approx(rise * hot, rel=0.01)
    assert 9 < rise * hot < 15


def test_the_printed_energy_is_derated_by_hand_where_no_impedance_is_known():
    """0.88 x 400 mJ x (175 - Tj) / 150, with Tj of the finding itself; 301 mJ is more than is left at 50 degC."""
    finding = found({"typed.A": {"zth": None}, "fault": {"protection_delay": "30 us"}})
    junction = finding.values["junction_degc"].worst

    assert finding.values["allowed_energy_j"].worst == pytest.approx(0.88 * 0.4 * (175 - junction) / 150)


def test_a_missing_delay_becomes_the_longest_that_holds():
    """Put in as a fact, it holds just inside and does not just outside."""
    open_delay = found({"fault": {"protection_delay": None}})
    longest = open_delay.condition.value

    assert open_delay.outcome is Outcome.HOLDS_IF
    assert open_delay.condition.quantity == "protection_delay"
    assert found({"fault": {"protection_delay": f"{longest * 1e6:.6f} us"}}).outcome is Outcome.HOLDS
    assert found({"fault": {"protection_delay": f"{longest * 1.01e6:.6f} us"}}).outcome is not Outcome.HOLDS


def test_above_the_current_of_the_printed_energy_only_the_impedance_decides():
    """1700 A against an energy printed for 600 A: not determined without an impedance, and it says what would do."""
    late = {"fault": {"protection_delay": "244 us"}}
    without = found({**late, "typed.A": {"zth": None}})

    assert without.outcome is Outcome.NOT_DETERMINED
    assert without.missing == ("discharge: eas at 1700 A, or zth",)
    assert "would do" in without.text
    assert found(late).outcome is Outcome.FAILS


def test_an_energy_without_its_current_means_nothing():
    """Blackburn, PESC 1988: the allowed energy depends on the current."""
    finding = found({"typed.A": {"zth": None, "eas": {"max": "400 mJ"}}})

    assert finding.outcome is Outcome.NOT_DETERMINED


def test_without_any_energy_the_currents_are_still_shown():
    """Prospective current and energy of the loop need no rating."""
    finding = found({"typed.A": {"zth": None, "eas": None}})

    assert finding.outcome is Outcome.NOT_DETERMINED
    assert finding.values["prospective_current_a"].worst == pytest.approx(3448, abs=1)
    assert finding.values["allowed_energy_j"].worst is None


def test_four_fields_end_in_a_bound_on_the_current():
    """Without cells and leads stated their resistance is none at all: 8 x 3.65 V over two banks of six 4 mohm parts is 21900 A."""
    finding = found(text=FOUR_FIELDS)

    assert finding.values["prospective_current_a"].worst == pytest.approx(21900, rel=1e-6)


def test_a_string_above_the_rating_fails_outright():
    """Four packs of 14.4 V are 57.6 V on 52 V parts; the next stack down holds its figures."""
    finding = found({"claim": {"packs_in_series": 4}, "fault": {"protection_delay": "1 us"}})

    assert finding.outcome is Outcome.FAILS
    assert "the string alone passes the rating" in finding.text


def test_all_of_a_band_of_inductances_is_searched():
    """Between a nearer and a farther loop the finding is no better than at either end."""
    ends = [found({"fault": {"loop_inductance": value}}).margin.worst for value in ("0.5 uH", "3 uH")]
    band = found({"fault": {"loop_inductance": "0.5 uH to 3 uH"}})

    assert band.margin.worst <= min(ends) * (1 + 1e-9)
    assert "loop_inductance" in {assumption.name for assumption in band.assumptions}


def test_leads_give_resistance_and_inductance():
    """CV49: 1 m of 25 mm2 at 20 mm is 0.88346 uH; by hand 2 m / 58 / 25 mm2 = 1.3793 mohm; IEC 60228 class 5 is 2 x 0.780 mohm."""
    stated = {"leads": {"length": "1 m", "size": "25 mm2", "spacing": "20 mm"}, "fault": {"loop_inductance": None, "extra_inductance": "0 uH"}}
    case = case_of(LOOP, stated)
    classed = case_of(LOOP, {**stated, "leads": {**stated["leads"], "size": "25 mm2 class 5"}})
    ohms = [next(q.worst for q in loop_quantities(one) if q.key == "lead_resistance") for one in (case, classed)]

    assert inductance_h(case).value * 1e6 == pytest.approx(0.88346, rel=1e-4)
    assert ohms == pytest.approx([1.3793e-3, 1.560e-3], rel=1e-4)


def test_leads_without_a_spacing_reach_from_side_by_side_to_far_apart():
    """The band holds the section's 0.883 uH at 20 mm and 1.527 uH at 100 mm."""
    case = case_of(LOOP, {"leads": {"length": "1 m", "size": "25 mm2"}, "fault": {"loop_inductance": None, "extra_inductance": "0 uH"}})
    loop = inductance_h(case)

    assert loop.least * 1e6 < 0.883
    assert loop.most * 1e6 > 1.527


def test_a_loop_of_two_packs_has_twice_the_voltage_and_twice_the_packs_resistance():
    """The leads count once."""
    one, two = (case_of(LOOP, {"claim": {"packs_in_series": packs}}) for packs in (1, 2))
    ohms = [loop_ohm(c, c.with_quantities(loop_quantities(c)).point(Corner.WORST)) for c in (one, two)]

    assert ohms == pytest.approx([4.176e-3, 2 * 4.176e-3])


def test_it_is_a_scenario():
    """It never names the limiting check."""
    assert CHECK.scenario
    assert found(text=WHOLE).scenario


def test_a_slow_fall_is_held_against_the_power_line_of_one_switch():
    """By hand at 61 us: 538.6 A fall without avalanche in 1.5 uH x 538.6 A / 37.6 V = 21.49 us; half of that is the square pulse."""
    values = found().values
    pulse_s = 21.49e-6 / 2
    # The typed points between 1 us and 244 us, joined in the logarithms.
    impedance = np.exp(np.interp(np.log(pulse_s), np.log([1e-6, 244e-6]), np.log([0.0032, 0.05])))

    assert values["gentlest_fall_s"].worst * 1e6 == pytest.approx(21.49, abs=0.01)
    assert values["power_line_current_a"].worst == pytest.approx((175 - values["junction_degc"].worst) / impedance / 52, rel=1e-3)
    assert values["hard_overshoot_v"].worst == pytest.approx(1.5 * 538.6, rel=1e-3)


def test_heat_of_one_switch_during_the_delay_by_hand():
    """6.15 A2s over six switches squared, in 4.5 mohm grown by its own junction's temperature."""
    values = found().values
    hot = 4.5e-3 * ((values["junction_degc"].worst + 273.15) / 298.15) ** 2.3

    assert values["switch_delay_energy_j"].worst == pytest.approx(values["let_through_a2s"].worst / 36 * hot, rel=1e-6)
    assert values["switch_delay_energy_j"].worst == pytest.approx(6.15 / 36 * hot, rel=2e-3)


def test_extra_inductance_counts_beside_a_stated_loop():
    """1.2 uH and 0.3 uH are the worked loop's 1.5 uH."""
    split = found({"fault": {"loop_inductance": "1.2 uH", "extra_inductance": "0.3 uH"}})

    assert split.values["turn_off_current_a"].worst == pytest.approx(538.6, rel=5e-4)


def test_leads_in_parallel_share_the_current_but_not_the_loop():
    """Two conductors a polarity halve the resistance; their inductance counts by the bundle's outer size, so it falls by far less."""
    stated = {"leads": {"length": "1 m", "size": "25 mm2", "spacing": "20 mm"}, "fault": {"loop_inductance": None, "extra_inductance": "0 uH"}}
    one, two = (case_of(LOOP, {**stated, "leads": {**stated["leads"], "conductors": count}}) for count in (1, 2))
    ohms = [next(q.worst for q in loop_quantities(case) if q.key == "lead_resistance") for case in (one, two)]

    assert ohms[1] == pytest.approx(ohms[0] / 2)
    # By hand: 0.4 uH/m x (ln(20 / 3.98942) + 1/4).
    assert inductance_h(two).value * 1e6 == pytest.approx(0.4 * (np.log(20 / 3.98942) + 0.25), rel=1e-4)


def test_more_than_the_pulsed_current_is_said_to_lie_outside_the_sheet():
    """538.6 A over six switches are 89.8 A each."""
    assert "outside the sheet" in found({"typed.A": {"id_pulse": {"max": "80 A"}}}).text
    assert "outside the sheet" not in found({"typed.A": {"id_pulse": {"max": "100 A"}}}).text


def test_a_cold_switch_is_not_promised_more_than_the_sheet_prints():
    """At -20 degC the straight rule stays at its figure for 25 degC: 0.88 x 400 mJ."""
    cold = found({"typed.A": {"zth": None}, "cooling": {"ambient": "-20 °C"}, "fault": {"protection_delay": "1 us"}})

    assert cold.values["allowed_energy_j"].worst == pytest.approx(0.352)


def test_of_several_printed_energies_the_smallest_counts():
    """400 mJ and 90 mJ: 0.88 x 90 mJ at 25 degC and below."""
    two = {"zth": None, "eas": [{"max": "400 mJ", "id": "600 A"}, {"max": "90 mJ", "id": "700 A"}]}
    finding = found({"typed.A": two, "cooling": {"ambient": "-20 °C"}, "fault": {"protection_delay": "1 us"}})

    assert finding.values["allowed_energy_j"].worst == pytest.approx(0.0792)


def test_a_known_impedance_derates_the_printed_energy_by_the_thermal_form():
    """Scipy's brentq on the typed points: 2 (175 - T) / (1.3 x 52 V x 600 A) = Z(t), and energies in proportion to t."""
    finding = found()

    def lasting(start_c):
        allowed = 2 * (175 - start_c) / (1.3 * 52 * 600)
        return brentq(lambda t: np.exp(np.interp(np.log(t), np.log([1e-6, 244e-6]), np.log([0.0032, 0.05]))) - allowed, 1e-6, 244e-6, xtol=1e-14)

    expected = 0.4 * lasting(finding.values["junction_degc"].worst) / lasting(25)

    assert finding.values["allowed_energy_j"].worst == pytest.approx(expected, rel=1e-6)


def test_heat_during_a_long_delay_decides_where_the_energy_does_not():
    """With 100 J at 5 kA allowed it is the bound RthJC on the junction that stays open, until a curve is read."""
    finding = found({"typed.A": {"zth": None, "eas": {"max": "100 J", "id": "5000 A"}}, "fault": {"protection_delay": "488 us"}})

    assert finding.outcome is Outcome.HOLDS_IF
    assert finding.condition.quantity == "transient_impedance"
    # By hand at most: 427 A each in 4.5 mohm grown to 5.1 mohm are 930 W; 150 K less the running rise over that is 0.16 K/W.
    assert 0.13 < finding.condition.value < 0.20


def test_an_unknown_delay_is_none_that_no_protection_keeps():
    """TI SLUUCJ0: the fastest step is 15 us. By hand 26.4 V and 5 to 9 mohm on 1 uH reach some 380 A by then: more than the energy bears."""
    unknown = {"loop_inductance": "1 uH", "extra_inductance": None, "protection_delay": None}
    finding = found({"claim": {"packs_in_series": 1}, "fault": unknown}, text=WHOLE)

    assert finding.outcome is Outcome.FAILS
    assert "the fastest published step is 15 \N{MICRO SIGN}s" in finding.text
    assert finding.values["turn_off_current_a"].favourable == pytest.approx(380, abs=10)


def test_a_missing_energy_is_asked_for_at_a_current_that_a_protection_may_meet():
    """Without an impedance the energy is wanted at the current of the fastest published step, not at one that nobody will ever see."""
    unknown = {"loop_inductance": "1 uH", "extra_inductance": None, "protection_delay": None}
    finding = found({"claim": {"packs_in_series": 1}, "fault": unknown, "typed.A": {"zth_foster": None}}, text=WHOLE)

    assert finding.outcome is Outcome.NOT_DETERMINED
    assert finding.missing == (f"discharge: eas at {finding.values['turn_off_current_a'].favourable:.0f} A, or zth",)


def test_a_rule_set_with_a_lower_limit_leaves_less_of_the_printed_energy():
    """Scipy's brentq on the typed points: 125 degC of EEE-INST-002 at the end, while 400 mJ were printed for 175 degC."""
    finding = found(rules="eee-inst-002")

    def lasting(start_c, limit_c):
        allowed = 2 * (limit_c - start_c) / (1.3 * 52 * 600)
        return brentq(lambda t: np.exp(np.interp(np.log(t), np.log([1e-6, 244e-6]), np.log([0.0032, 0.05]))) - allowed, 1e-6, 244e-6, xtol=1e-14)

    expected = 0.4 * lasting(finding.values["junction_degc"].worst, 125) / lasting(25, 175)

    assert finding.values["allowed_energy_j"].worst == pytest.approx(expected, rel=1e-6)


def test_the_longest_delay_is_said_beside_a_delay_that_holds():
    """Put in as the delay it just holds, and a hair more does not."""
    longest = found().values["longest_delay_s"].worst

    assert found().outcome is Outcome.HOLDS
    assert found({"fault": {"protection_delay": f"{longest * 0.9999e6:.6f} us"}}).outcome is Outcome.HOLDS
    assert found({"fault": {"protection_delay": f"{longest * 1.0001e6:.6f} us"}}).outcome is not Outcome.HOLDS


@pytest.mark.parametrize(("impedance", "holds"), [("0.12 K/W", True), ("0.18 K/W", False)])
def test_the_junction_is_held_against_its_own_limit_whatever_the_air(impedance, holds):
    """By hand 930 W per switch (427 A in 5.1 mohm): 112 K above a start near 25 degC stay below 175 degC, 167 K do not, with energy to spare."""
    typed = {"zth": [["1 us", impedance], ["1 ms", impedance], ["1 s", "0.8 K/W"]], "eas": {"max": "100 J", "id": "5000 A"}}
    finding = found({"typed.A": typed, "fault": {"protection_delay": "488 us"}})

    assert finding.values["junction_degc"].worst == pytest.approx(25 + 930 * float(impedance.split()[0]), rel=0.1)
    assert (finding.outcome is Outcome.HOLDS) is holds
