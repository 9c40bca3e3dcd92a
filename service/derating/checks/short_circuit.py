"""What happens when the protection breaks a short circuit?"""

from collections.abc import Callable
from dataclasses import replace
from math import inf, isfinite

from service.derating.case import Case, Corner
from service.derating.case_impedance import has_impedance
from service.derating.check import Check
from service.derating.fault_loop import inductance_h, loop_quantities
from service.derating.figures import Ends, default, larger_is_worse, least_of
from service.derating.quantity import Point, Quantity, Wording
from service.derating.spoken import rounded_down, spoken
from service.derating.thresholds import Search
from service.derating.turn_off import TurnOff, avalanche_limit_c, moments, rated_energy
from service.derating.turn_off_figures import gentle_fall_s, power_line_a, turn_off_figures
from service.derating.weighing import Weighing, not_determined, weigh
from service.facts.finding import Assumption, BothEnds, Figure, Finding, Input, Outcome
from service.facts.sourced import Sourced

NAME = "short_circuit"
# Steps of two monitor ICs, from the fastest to the slowest (TI SLUUBY1B and SLUUCJ0).
FASTEST_DELAY_S, SLOWEST_DELAY_S = 15e-6, 7.797e-3
# What is thinkable at all.
SHORTEST_DELAY_S, LONGEST_DELAY_S = 1e-9, 1.0


def run(case: Case) -> tuple[Finding, ...]:
    """Judge the discharge bank, which breaks a short circuit at the terminals."""
    bank = case.discharge
    lacking = _lacking(case)
    if lacking:
        return (not_determined(check=NAME, bank=bank.name, text=_subject(case), missing=lacking, scenario=True),)
    return (_judge(_with_own(case)),)


def _judge(case: Case) -> Finding:
    """The discharge bank with everything at hand that makes a bound."""
    loop_h = inductance_h(case)

    def worst_of(point: Point) -> TurnOff:
        found = moments(case, point, delay_s=point["protection_delay"], least_h=loop_h.least, most_h=loop_h.most)
        return min(found, key=lambda moment: _margin(case, point, moment))

    weighed = weigh(case, lambda point: _margin(case, point, worst_of(point)))
    best, worst = (worst_of(case.point(corner)) for corner in (Corner.FAVOURABLE, Corner.WORST))
    longest_s = _longest_delay_s(case, worst_of)
    unknown = _undecided(case, weighed, best, worst)
    weighed = replace(weighed, assumptions=(*weighed.assumptions, *_of_the_loop(loop_h)))
    if unknown:
        weighed = replace(weighed, outcome=Outcome.NOT_DETERMINED, conditions=())
    finding = weighed.finding(
        check=NAME,
        bank=case.discharge.name,
        text=f"{_subject(case)}: {_said(case, worst)}{_would_hold(weighed, longest_s)}",
        demand=_figure("turn_off_energy_j", worst.energy_j),
        limit=_figure("allowed_energy_j", worst.allowed_j),
        formula="i = V/R x (1 - exp(-t R/L)); E = 1/2 L i^2 x BV/(BV - V) into one switch <= EAS at that current and temperature",
        values={**turn_off_figures(case, best, worst), "longest_delay_s": BothEnds(favourable=None, worst=longest_s, unit="s")},
        inputs=_inputs(case, loop_h),
        missing=unknown,
        scenario=True,
    )
    return replace(finding, margin=None, text=f"{finding.text}, for want of {unknown[0]}") if unknown else finding


def _margin(case: Case, point: Point, moment: TurnOff) -> float:
    """The smaller of allowed over demanded energy and allowed over real rise; zero where nothing is proven."""
    ambient = point["ambient"]
    rise = (avalanche_limit_c(case, point) - ambient) / max(moment.junction_c - ambient, 1e-9)
    if moment.allowed_j is None or not isfinite(moment.energy_j):
        return 0.0
    return max(0.0, min(rise, moment.allowed_j / max(moment.energy_j, 1e-12), 1e6))


def _undecided(case: Case, weighed: Weighing, best: TurnOff, worst: TurnOff) -> tuple[str, ...]:
    """What is missing where no bound on the energy exists, at the favourable end or wherever the delay is a known one."""
    point = case.point(Corner.FAVOURABLE)
    too_hot = best.junction_c > avalanche_limit_c(case, point) or best.energy_j == inf
    if weighed.outcome is Outcome.HOLDS or too_hot:
        return ()
    if best.allowed_j is None or (worst.allowed_j is None and not weighed.conditions):
        # Why the favourable moment for an unknown delay: at the worst one it has let the current rise beyond all sense.
        lacking = best if best.allowed_j is None and case.quantities["protection_delay"].is_default else worst
        return (f"{case.discharge.name}: eas at {lacking.current_a:.0f} A, or zth",)
    return ()


def _longest_delay_s(case: Case, worst_of: Callable[[Point], TurnOff]) -> float | None:
    """The longest delay that holds in the worst corner; None where none does, or where even a second would. [s]."""
    search = Search(case=case, left=lambda point: _margin(case, point, worst_of(point)) - 1)
    return search.crossing(case.quantities["protection_delay"], Corner.WORST, SHORTEST_DELAY_S, LONGEST_DELAY_S)


def _would_hold(weighed: Weighing, longest_s: float | None) -> str:
    """The longest delay that would hold, where the finding itself does not name it."""
    if longest_s is None or weighed.outcome is Outcome.HOLDS or any(item.quantity == "protection_delay" for item in weighed.conditions):
        return ""
    fastest = f", and the fastest published step is {spoken(FASTEST_DELAY_S, 's')}" if longest_s < FASTEST_DELAY_S else ""
    return f"; a protection that acts within {spoken(rounded_down(longest_s), 's')} would do{fastest}"


def _said(case: Case, moment: TurnOff) -> str:
    """The worst moment in words."""
    bank = case.discharge
    each = moment.current_a / bank.switches
    energy = f"{spoken(moment.energy_j, 'J')} into one switch" if isfinite(moment.energy_j) else "the string alone passes the rating of the switch"
    allowed = "" if moment.allowed_j is None else f" of {spoken(moment.allowed_j, 'J')}"
    if moment.allowed_j == 0:
        allowed = ", whose junction is past its limit already"
    pulse = least_of(bank.switch, "id_pulse")
    outside = "; more than the sheet's pulsed current, so outside the sheet" if pulse and each > pulse.value else ""
    fall, line_a = gentle_fall_s(moment), power_line_a(case, case.point(Corner.WORST), moment)
    area = ""
    if fall and line_a is not None:
        area = f"; a fall slower than {spoken(fall, 's')} avoids avalanche, but the power line of one switch bears {spoken(line_a, 'A')} there"
    return f"{moment.current_a:.0f} A when the switches open, {energy}{allowed}{outside}{area}"


def _lacking(case: Case) -> tuple[str, ...]:
    """Data without which nothing can be said of a short circuit."""
    bank = case.discharge
    wanted = (("drain_voltage", "vds_max"), ("junction_case", "rth_jc"))
    own = tuple(f"{bank.name}: {key}" for name, key in wanted if bank.prefix + name not in case.quantities)
    return (*own, *(item for item in case.lacks_conduction(bank) if item not in own))


def _with_own(case: Case) -> Case:
    """The case with the loop, the delay and, where nobody knows it, the impedance at that time."""
    bank = case.discharge
    more = [*loop_quantities(case), _delay(case.board.fault.protection_delay_s)]
    if not has_impedance(bank.switch):
        more.append(_impedance(case.quantities[bank.prefix + "junction_case"], bank.prefix))
    return case.with_quantities(more)


def _delay(stated: Sourced | None) -> Quantity:
    """From the fault to the opening of the switches; from the fastest to the slowest published step where nobody states it."""
    name = "from the fastest to the slowest step of two monitor ICs"
    guess = default(SLOWEST_DELAY_S, "s", name, low=FASTEST_DELAY_S, high=SLOWEST_DELAY_S)
    ends = Ends(favourable=FASTEST_DELAY_S, nominal=FASTEST_DELAY_S, worst=SLOWEST_DELAY_S, sourced=guess)
    if stated:
        ends = larger_is_worse(stated)
    return Quantity(
        key="protection_delay",
        name="protection_delay",
        unit="s",
        favourable=ends.favourable,
        nominal=ends.nominal,
        worst=ends.worst,
        sourced=ends.sourced,
        wording=Wording(
            phrase="the protection acts, gates included, within {value}",
            how="Find the protection IC's short-circuit delay in its sheet and add the time that the gates take to fall.",
            effort=2,
            lowest=SHORTEST_DELAY_S,
            highest=LONGEST_DELAY_S,
        ),
    )


def _impedance(settled: Quantity, prefix: str) -> Quantity:
    """Transient impedance during the delay, which nobody stated."""
    guess = default(settled.worst, "K/W", "RthJC is a safe upper bound at any time", low=0.0, high=settled.worst)
    return Quantity(
        key=prefix + "transient_impedance",
        name="transient_impedance",
        unit="K/W",
        favourable=0.0,
        nominal=settled.nominal,
        worst=settled.worst,
        sourced=guess,
        wording=Wording(
            phrase="the transient impedance from junction to case during the protection's delay is {value} or less",
            how="Read the curve of transient thermal impedance in the datasheet at the delay, or type a few of its points.",
            effort=3,
            lowest=0.0,
            highest=1e3,
        ),
    )


def _of_the_loop(loop_h: Sourced) -> tuple[Assumption, ...]:
    """The loop's inductance where it was assumed."""
    if not loop_h.is_band:
        return ()
    return (Assumption(name="loop_inductance", used=loop_h.value, low=loop_h.least, high=loop_h.most, unit="H", basis=loop_h.name),)


def _inputs(case: Case, loop_h: Sourced) -> tuple[Input, ...]:
    """Facts beside the quantities."""
    rated = rated_energy(case)
    known = () if loop_h.is_band else (Input(name="loop_inductance", sourced=loop_h),)
    return (*known, *((Input(name=case.discharge.prefix + "avalanche_energy", sourced=rated.sourced),) if rated else ()))


def _figure(quantity: str, value: float | None) -> Figure | None:
    """A figure, where there is a finite one."""
    return None if value is None or not isfinite(value) else Figure(quantity=quantity, value=value, unit="J")


def _subject(case: Case) -> str:
    """What is looked at."""
    packs = case.board.claim.packs_in_series
    where = "the pack" if packs == 1 else f"a string of {packs} packs"
    return f"Short circuit of {where}, broken hard by the discharge bank"


CHECK = Check(
    name=NAME,
    question="What happens when the protection breaks a short circuit?",
    method="Current at the end of the protection's delay from the smallest resistances, heating meanwhile from the largest, and the loop's "
    "energy with what the supply adds against what one switch bears at that current and temperature.",
    source="own, RL circuit; toshiba-avalanche and fairchild-2002 note 4 for the energy; an1005 as printed in irfr3806 Fig 15-16; an936 "
    "section 4; sluaao2 eq. 17-18",
    needs=("cells.resistance_ohm", "cells.fault_v", "leads", "fault.protection_delay_s", "fault.loop_inductance_h", "switch.eas", "switch.zth"),
    run=run,
    scenario=True,
)
