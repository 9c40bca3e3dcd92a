"""Figures of a short circuit's end for the report: currents, energies, and what a slower fall would ask of the safe operating area."""

from collections.abc import Callable
from math import isfinite

import numpy as np

from service.derating.case import Case, Corner
from service.derating.case_impedance import case_impedance
from service.derating.fault_loop import loop_ohm
from service.derating.formulas.avalanche import avalanche_time_s
from service.derating.formulas.interruption import conduction_energy_j, gentlest_fall_s, let_through_a2s, overshoot_v
from service.derating.formulas.safe_area import equivalent_pulse_s, power_line_current_a
from service.derating.quantity import Point
from service.derating.turn_off import TurnOff, avalanche_limit_c
from service.facts.finding import BothEnds

# How fast a hard-driven gate breaks a current; common practice, no source. The overshoot for it shows that only avalanche ends it.
HARD_FALL_S = 1e-6


def turn_off_figures(case: Case, best: TurnOff, worst: TurnOff) -> dict[str, BothEnds]:
    """Figures of both ends.

    Args:
        case: With the loop's quantities.
        best: The moment at the favourable end.
        worst: The moment at the worst end.

    Returns:
        By name with unit; None where there is none.
    """
    ends = ((best, case.point(Corner.FAVOURABLE)), (worst, case.point(Corner.WORST)))

    def both(unit: str, figure: Callable[[TurnOff, Point], float | None]) -> BothEnds:
        found = [figure(moment, point) for moment, point in ends]
        favourable, least = (None if value is None or not isfinite(value) else float(value) for value in found)
        return BothEnds(favourable=favourable, worst=least, unit=unit)

    def delay_j(moment: TurnOff, point: Point) -> float | None:
        if not isfinite(moment.junction_c):
            return None
        warm = min(moment.junction_c, avalanche_limit_c(case, point))
        hot_ohm = point[case.discharge.prefix + "on_resistance"] * case.ratio(case.discharge, point).value(warm)
        let_through = _let_through(case, moment, point)
        return conduction_energy_j(let_through_a2s=let_through, resistance_ohm=hot_ohm, switches=case.discharge.switches)

    return {
        "prospective_current_a": both("A", lambda moment, _: moment.prospective_a),
        "turn_off_current_a": both("A", lambda moment, _: moment.current_a),
        "switch_current_a": both("A", lambda moment, _: moment.current_a / case.discharge.switches),
        "junction_degc": both("degC", lambda moment, _: moment.junction_c),
        "stored_energy_j": both("J", lambda moment, _: moment.stored_j),
        "turn_off_energy_j": both("J", lambda moment, _: moment.energy_j),
        "allowed_energy_j": both("J", lambda moment, _: moment.allowed_j),
        "switch_delay_energy_j": both("J", delay_j),
        "avalanche_time_s": both("s", lambda moment, _: _avalanche_s(moment)),
        "gentlest_fall_s": both("s", lambda moment, _: gentle_fall_s(moment)),
        "hard_overshoot_v": both("V", lambda moment, _: _hard_overshoot_v(moment)),
        "power_line_current_a": both("A", lambda moment, point: power_line_a(case, point, moment)),
        "loop_resistance_ohm": both("ohm", lambda _, point: loop_ohm(case, point)),
        "loop_inductance_h": both("H", lambda moment, _: moment.inductance_h),
        "let_through_a2s": both("A2s", lambda moment, point: _let_through(case, moment, point)),
        "supply_v": both("V", lambda moment, _: moment.supply_v),
    }


def gentle_fall_s(moment: TurnOff) -> float | None:
    """The shortest fall of the current without avalanche; None where the supply alone passes the rating. [s]."""
    if moment.supply_v >= moment.rated_v:
        return None
    return gentlest_fall_s(
        inductance_h=moment.inductance_h,
        current_a=moment.current_a,
        breakdown_v=moment.rated_v,
        supply_v=moment.supply_v,
    )


def power_line_a(case: Case, point: Point, moment: TurnOff) -> float | None:
    """Current that one switch bears on its power line while the current falls as gently as just avoids avalanche.

    Args:
        case: With the loop's quantities.
        point: A number for each quantity.
        moment: When the switches open.

    Returns:
        Current at the rated voltage for the equivalent square pulse; thermal instability may allow less. None where there is none. [A]
    """
    bank, fall = case.discharge, gentle_fall_s(moment)
    left_k = avalanche_limit_c(case, point) - moment.junction_c
    if not fall or left_k <= 0:
        return None
    peak_w = moment.rated_v * moment.current_a
    pulse_s = equivalent_pulse_s(energy_j=peak_w * fall / 2, peak_power_w=peak_w)
    impedance = case_impedance(bank.switch, settled_kpw=point[bank.prefix + "junction_case"])(np.asarray(pulse_s))
    return power_line_current_a(
        limit_c=avalanche_limit_c(case, point),
        case_c=moment.junction_c,
        impedance_kpw=float(impedance),
        voltage_v=moment.rated_v,
    )


def _let_through(case: Case, moment: TurnOff, point: Point) -> float:
    """I2t of the loop until the switches open."""
    return let_through_a2s(
        supply_v=moment.supply_v,
        loop_ohm=max(loop_ohm(case, point), 1e-6),
        inductance_h=moment.inductance_h,
        time_s=point["protection_delay"],
    )


def _avalanche_s(moment: TurnOff) -> float | None:
    """How long the switch stays in avalanche."""
    if moment.supply_v >= moment.rated_v:
        return None
    return avalanche_time_s(
        inductance_h=moment.inductance_h,
        current_a=moment.current_a,
        breakdown_v=moment.rated_v,
        supply_v=moment.supply_v,
    )


def _hard_overshoot_v(moment: TurnOff) -> float:
    """What the loop would add to the supply if nothing clamped it."""
    return overshoot_v(inductance_h=moment.inductance_h, current_a=moment.current_a, fall_s=HARD_FALL_S)
