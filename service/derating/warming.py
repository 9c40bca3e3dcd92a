"""How switch banks warm through a surge: from the settled running state, by superposition, with the on-resistance following the junction.

Every change of power is a step of its own: it warms the junction over its case by the transient impedance, the case over its sink
at once, and the sinks by their own resistances and heat capacities. A heat capacity of zero puts a sink at its settled temperature
straight away (the safe bound where nobody knows it); an infinite one leaves it where it was (the favourable end).

Temperatures are linear in the heats, and each heat depends on the temperatures of its own moment alone. So the whole course is one
system of equations: how all temperatures answer to all heats is worked out once for a length of time, and the course of any current is
found with it by Newton's method at each moment, over and over until the moments agree with each other.
"""

from functools import lru_cache
from typing import Any

import numpy as np

from service.derating.assembly import BEYOND_ALL_C, Array, Assembly, State

# Steps grow in proportion to the time since the surge began; with these the end differs from a fine integration by less than 0.02 %.
_STEPS = 40
_SHORTEST = 1e-6
_CLOSE_K = 1e-8
# A course is found in a handful of rounds, or leaves for good.
_MOST_ROUNDS = 100
_COLDEST_C = -273.0


class Surge:
    """The course of an assembly from one settled current into another one, for a fixed time.

    Args:
        assembly: Switches and what they sit on.
        running_a: Settled current before. [A]
        seconds: How long the other current flows. [s]
        start: Where everything stood before, where that is not the settled state of the same assembly (a bank that was on and is off now).
    """

    def __init__(self, assembly: Assembly, *, running_a: float, seconds: float, start: State | None = None) -> None:
        self._assembly = assembly
        self._start = start or assembly.settled(running_a)
        if not self._start.ran_away:
            self._heat = _Heat(assembly)
            self._answer = _Answer(assembly, self._start, running_a=running_a, seconds=seconds)

    def end(self, surge_a: float) -> State:
        """Where everything stands when the surge ends.

        Args:
            surge_a: Current of the surge. [A]

        Returns:
            The last state; infinite where it ran away on the way, or never settled before.
        """
        if self._start.ran_away:
            return self._start
        answer = self._answer
        fixed = answer.rest_c + surge_a**2 * answer.to_resistors
        course = np.repeat(np.array(self._start.junction_c)[:, None], _STEPS, axis=1)
        for _ in range(_MOST_ROUNDS):
            heat, growth = self._heat.at(surge_a, course)
            stiff = answer.one - np.einsum("ikm,mni->ikn", answer.at_once, growth)
            move = np.linalg.solve(stiff, (fixed + answer.to(heat) - course).T[..., None])[..., 0].T
            course = course + move
            if not (course.max() <= BEYOND_ALL_C and course.min() >= _COLDEST_C):
                break
            if abs(move).max() < _CLOSE_K:
                return self._last(surge_a, course)
        return self._assembly.run_away()

    def _last(self, surge_a: float, course: Array) -> State:
        """The state at the end of a course."""
        junction_c = course[:, -1].tolist()
        shares, losses = self._assembly.losses(surge_a, junction_c)
        sinks = self._answer.sinks_c(surge_a, self._heat.at(surge_a, course)[0])
        return State(junction_c=tuple(junction_c), sink_c=tuple(sinks), current_a=tuple(shares), loss_w=tuple(losses))


class _Heat:
    """The heat of one switch of each kind at each time, and how it grows with the temperatures of that time."""

    def __init__(self, assembly: Assembly) -> None:
        kinds = assembly.kinds
        bank = np.array([kind.bank for kind in kinds])
        self._together = (bank[:, None] == bank).astype(float)
        self._cold_ohm, self._switches, self._diode_v = np.array([[k.cold_ohm, k.switches, k.diode_v] for k in kinds]).T[..., None]
        self._on_diode = self._diode_v > 0
        # Why twice in the channel: its heat is the square of its share.
        self._power = np.where(self._on_diode, 1.0, 2.0)
        self._alike = [(model, [k for k, kind in enumerate(kinds) if kind.ratio == model]) for model in {kind.ratio: 0 for kind in kinds}]

    def at(self, current_a: float, course: Array) -> tuple[Array, Array]:
        """Heat [W], and its growth with the temperature of each kind of the same bank [W/K]."""
        ratio, slope = np.empty_like(course), np.empty_like(course)
        for model, rows in self._alike:
            warm: Any = course[rows]
            ratio[rows], slope[rows] = model.value(warm), model.slope_per_k(warm)
        ohms, relative = self._cold_ohm * ratio, slope / ratio
        flows = self._switches / ohms
        whole = np.einsum("kn,nj->kj", self._together, flows)
        share = current_a / (ohms * whole)
        heat = share * np.where(self._on_diode, self._diode_v, share * ohms)
        pull = self._power * heat
        # What growing resistance sends away from one kind all others of its bank take.
        growth = self._together[:, :, None] * (pull / whole)[:, None] * (relative * flows)
        own = np.where(self._on_diode, -heat, heat - pull) * relative
        diagonal = np.einsum("kkj->kj", growth)
        diagonal += own
        return heat, growth


class _Answer:
    """How temperatures answer to heats, over one length of time."""

    def __init__(self, assembly: Assembly, start: State, *, running_a: float, seconds: float) -> None:
        kinds, since = assembly.kinds, _since(seconds)
        places = [kind.sink for kind in kinds]
        before_w = np.array(start.loss_w)
        air = np.tril(assembly.sink_impedances(since))
        known = {kind.bank: np.tril(kind.impedance(since)) for kind in kinds}
        case = np.array([known[kind.bank] for kind in kinds])
        self._warming = np.array([kind.warming for kind in kinds])
        self._resistor_ohm = np.array([sink.resistor_ohm for sink in assembly.sinks])
        self._sink_levels = _to_levels(air)
        self._sink_rest_c = np.array(start.sink_c)[:, None] - np.einsum("abi,b->ai", air[..., 0], assembly.sink_heat(running_a, start.loss_w))
        to_heat = np.einsum("mb,kbij->kimj", self._warming, self._sink_levels[places])
        on_top = np.array([[[kind.to_sink_kpw]] for kind in kinds]) * np.eye(_STEPS) + _to_levels(case)
        np.einsum("kikj->kij", to_heat)[...] += on_top
        self._to_heat = to_heat.reshape(len(kinds) * _STEPS, -1)
        settled = np.array([[kind.to_case_kpw] for kind in kinds])
        self.rest_c = self._sink_rest_c[places] + (settled - case[..., 0]) * before_w[:, None]
        self.to_resistors = np.einsum("kbi,b->ki", air[places][..., 0], self._resistor_ohm)
        self.at_once = np.einsum("kimi->ikm", to_heat)
        self.one = np.eye(len(kinds))

    def to(self, heat: Array) -> Array:
        """Rise of every kind at every time under the heat of one switch of every kind at every time. [K]."""
        # Why no product of matrices: its library would start threads for it, and wait for them on a busy machine.
        rise: Array = np.einsum("ab,b->a", self._to_heat, heat.ravel()).reshape(heat.shape)
        return rise

    def sinks_c(self, current_a: float, heat: Array) -> list[float]:
        """Every sink at the end. [degC, ...]."""
        heats = np.einsum("kb,kj->bj", self._warming, heat) + (current_a**2 * self._resistor_ohm)[:, None]
        ends: list[float] = (self._sink_rest_c[:, -1] + np.einsum("abj,bj->a", self._sink_levels[:, :, -1], heats)).tolist()
        return ends


def _to_levels(steps: Array) -> Array:
    """From the answer to changes of heat to the answer to the heats themselves."""
    levels = steps.copy()
    levels[..., :-1] -= steps[..., 1:]
    return levels


@lru_cache(maxsize=64)
def _since(seconds: float) -> Array:
    """Time that has passed, at each time looked at, since each change of heat. [s].

    The first step is the jump of the current itself, at once; every later change is taken to come half way between two times.
    """
    times = np.concatenate(([0.0], np.geomspace(seconds * _SHORTEST, seconds, _STEPS)))
    begins = np.concatenate(([0.0], (times[2:] + times[1:-1]) / 2))
    since: Array = np.maximum(times[1:, None] - begins[None, :], times[1])
    return since
