"""What one switch has to bear when the protection breaks a short circuit, and what its sheet lets it bear."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import inf

import numpy as np

from service.derating.case import Case
from service.derating.case_impedance import case_impedance, has_impedance
from service.derating.fault_loop import loop_ohm, supply_v
from service.derating.formulas.avalanche import energy_with_supply_j, energy_without_supply_j, linear_energy_j, thermal_energy_j
from service.derating.formulas.interruption import fault_current_a, prospective_current_a
from service.derating.quantity import Point
from service.facts.reading import Limit
from service.facts.switch import RatedValue

# In avalanche a switch clamps at about 1.3 times its rated voltage (NXP/Nexperia AN11158 rev 4, section 2.4.3).
REAL_OVER_RATED = 1.3
_LOOKS = 9
_STEPS = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnOff:
    """The moment at which the switches open.

    Attributes:
        prospective_a: Current that the fault would settle at. [A]
        current_a: Current when the switches open. [A]
        inductance_h: Of the loop. [H]
        supply_v: That goes on feeding it. [V]
        rated_v: Rated drain-source voltage, the smaller and so the worse breakdown voltage. [V]
        junction_c: Of the hottest switch, running and then heated during the delay; infinite where it does not settle before. [degC]
        stored_j: Half L I squared. [J]
        energy_j: The same with what the supply adds: into one switch. [J]
        allowed_j: What one switch bears at that current and temperature; None where the sheet does not say. [J]
    """

    prospective_a: float
    current_a: float
    inductance_h: float
    supply_v: float
    rated_v: float
    junction_c: float
    stored_j: float
    energy_j: float
    allowed_j: float | None


def running_c(case: Case, point: Point) -> float:
    """Hottest junction of the discharge bank before the fault, at its claimed current; infinite where it does not settle. [degC]."""
    bank = case.discharge
    return max(case.settle(bank, point, current_a=bank.claimed_a.most, low_switch=low).junctions_c[0] for low in {bank.switches > 1, False})


def turn_off(case: Case, point: Point, *, delay_s: float, inductance_h: float, before_c: float) -> TurnOff:
    """Everything that one switch of the discharge bank meets when a short circuit is broken hard.

    Args:
        case: With the loop's quantities.
        point: A number for each quantity.
        delay_s: From the fault to the switches' opening. [s]
        inductance_h: Of the loop. [H]
        before_c: Hottest junction before the fault. [degC]

    Returns:
        The moment.
    """
    bank = case.discharge
    loop = {"supply_v": supply_v(case, point), "loop_ohm": max(loop_ohm(case, point), 1e-6)}
    current = float(fault_current_a(**loop, inductance_h=inductance_h, time_s=delay_s))
    rated = point[bank.prefix + "drain_voltage"]
    junction = _junction_c(case, point, loop, delay_s, inductance_h, before_c)
    fed = inf
    if loop["supply_v"] < rated:
        fed = energy_with_supply_j(inductance_h=inductance_h, current_a=current, breakdown_v=rated, supply_v=loop["supply_v"])
    return TurnOff(
        prospective_a=prospective_current_a(**loop),
        current_a=current,
        inductance_h=inductance_h,
        supply_v=loop["supply_v"],
        rated_v=rated,
        junction_c=junction,
        stored_j=energy_without_supply_j(inductance_h=inductance_h, current_a=current),
        energy_j=fed,
        allowed_j=_allowed_j(case, point, current, junction),
    )


def moments(case: Case, point: Point, *, delay_s: float, least_h: float, most_h: float) -> Iterator[TurnOff]:
    """The same for a whole band of inductances, whose worst may lie anywhere.

    Args:
        case: With the loop's quantities.
        point: A number for each quantity.
        delay_s: From the fault to the switches' opening. [s]
        least_h: Lower end of the band. [H]
        most_h: Upper end of the band. [H]

    Yields:
        One moment a look, evenly in proportion.
    """
    before_c = running_c(case, point)
    looks = [least_h] if least_h == most_h else np.geomspace(least_h, most_h, _LOOKS).tolist()
    for inductance in looks:
        yield turn_off(case, point, delay_s=delay_s, inductance_h=inductance, before_c=before_c)


def avalanche_limit_c(case: Case, point: Point) -> float:
    """The junction limit of the rule set; a user's limit for hours says nothing of microseconds. [degC]."""
    return case.rules.junction_limit_c(point[case.discharge.prefix + "junction_max"])


def rated_energy(case: Case) -> RatedValue | None:
    """The sheet's single-pulse avalanche energy with its current, the smallest of several; never one without a current."""
    rows = [value for value in case.discharge.switch.of("eas", Limit.MAX) if value.cond.id is not None]
    return min(rows, key=lambda value: value.sourced.value, default=None)


def _junction_c(
    case: Case,
    point: Point,
    loop: dict[str, float],
    delay_s: float,
    inductance_h: float,
    running: float,
) -> float:
    """The running junction, heated by the fault current in its largest resistance while the case stays as it was."""
    bank = case.discharge
    settled_kpw = point.get(bank.prefix + "junction_case")
    if settled_kpw is None or running == inf:
        return inf
    hot_ohm = point[bank.prefix + "on_resistance"] * case.ratio(bank, point).value(running)
    times = np.linspace(0.0, delay_s, _STEPS + 1)
    heats = (fault_current_a(**loop, inductance_h=inductance_h, time_s=times) / bank.switches) ** 2 * hot_ohm  # type: ignore[arg-type]  # an array
    since = delay_s - (times[1:] + times[:-1]) / 2
    bound_kpw = min(point.get(bank.prefix + "transient_impedance", settled_kpw), settled_kpw)
    rises = case_impedance(bank.switch, settled_kpw=bound_kpw)(since)
    return running + float(np.diff(heats) @ rises)


def _allowed_j(case: Case, point: Point, current_a: float, junction_c: float) -> float | None:
    """Energy that one switch bears at its current and temperature: the printed one up to its current, the thermal form beyond."""
    limit = avalanche_limit_c(case, point)
    rated = rated_energy(case)
    if junction_c >= limit:
        return 0.0
    if rated is not None and current_a <= (rated.cond.id or 0.0):
        return _derated_j(case, point, rated, junction_c, limit)
    return _thermal_j(case, point, current_a, junction_c, limit) if has_impedance(case.discharge.switch) else None


def _derated_j(case: Case, point: Point, rated: RatedValue, junction_c: float, limit: float) -> float:
    """The printed energy at a warmer start: by the thermal form where the impedance is known, else straight with 12 % taken off.

    Why two limits: the printed energy takes the junction from 25 degC to the sheet's own limit, however little of it a rule set allows.
    """
    start, sheet_limit = max(junction_c, 25.0), point[case.discharge.prefix + "junction_max"]
    if has_impedance(case.discharge.switch) and rated.cond.id:
        hot, cold = (_thermal_j(case, point, rated.cond.id, *ends) for ends in ((start, limit), (25.0, sheet_limit)))
        if 0 < cold < inf:
            return rated.sourced.value * hot / cold
    return linear_energy_j(rated_j=rated.sourced.value, start_c=min(start + sheet_limit - limit, sheet_limit), limit_c=sheet_limit)


def _thermal_j(case: Case, point: Point, current_a: float, junction_c: float, limit: float) -> float:
    """The thermal form of the avalanche energy."""
    bank = case.discharge
    impedance = case_impedance(bank.switch, settled_kpw=point[bank.prefix + "junction_case"])
    return thermal_energy_j(
        start_c=junction_c,
        limit_c=limit,
        breakdown_v=REAL_OVER_RATED * point[bank.prefix + "drain_voltage"],
        current_a=current_a,
        impedance=lambda seconds: float(impedance(np.asarray(seconds))),
    )
