"""How switch banks warm through a surge: from the settled running state, by superposition, with the on-resistance following the junction.

Every change of power is a step of its own: it warms the junction over its case by the transient impedance, the case over its sink
at once, and the sinks by their own resistances and heat capacities. A heat capacity of zero puts a sink at its settled temperature
straight away (the safe bound where nobody knows it); an infinite one leaves it where it was (the favourable end).
"""

from collections.abc import Sequence
from math import inf

import numpy as np

from service.derating.assembly import BEYOND_ALL_C, Assembly, State

# Steps grow in proportion to the time since the surge began; with these the end differs from a fine integration by less than 0.02 %.
_STEPS = 40
_SHORTEST = 1e-6
_CLOSE_K = 1e-5


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
        self._running_a = running_a
        self._start = start or assembly.settled(running_a)
        times = np.concatenate(([0.0], np.geomspace(seconds * _SHORTEST, seconds, _STEPS)))
        # The first step is the jump of the current itself, at once; every later change is taken to come half way between two times.
        begins = np.concatenate(([0.0], (times[2:] + times[1:-1]) / 2))
        since = np.maximum(times[1:, None] - begins[None, :], times[1])
        self._to_case = [kind.impedance(since) for kind in assembly.kinds]
        self._to_air = assembly.sink_impedances(since)
        # What a change of heat does within its own step, as plain numbers: it is asked for again and again.
        self._case_now: list[list[float]] = np.array([np.diagonal(row) for row in self._to_case]).T.tolist()
        self._air_now: list[list[list[float]]] = np.moveaxis(np.diagonal(self._to_air, axis1=2, axis2=3), -1, 0).tolist()

    def end(self, surge_a: float) -> State:
        """Where everything stands when the surge ends.

        Args:
            surge_a: Current of the surge. [A]

        Returns:
            The last state; infinite where it ran away on the way, or never settled before.
        """
        start = state = self._start
        walk = _Walk(start=start, running_heat=self._assembly.sink_heat(self._running_a, start.loss_w), steps=_STEPS)
        for i in range(_STEPS):
            if state.ran_away:
                break
            state = self._step(i, walk, state.junction_c, surge_a)
            walk.remember(i, state, self._assembly.sink_heat(surge_a, state.loss_w))
        return state

    def _step(self, i: int, walk: "_Walk", junction_c: Sequence[float], surge_a: float) -> State:
        """One step on: the junctions at which heat and temperature agree."""
        assembly, case_now, air_now = self._assembly, self._case_now[i], self._air_now[i]
        rest_c = [
            kind.to_case_kpw * loss + float(row[i, :i] @ walk.loss_steps[k, :i]) - case_now[k] * walk.losses[k]
            for k, (kind, loss, row) in enumerate(zip(assembly.kinds, walk.start.loss_w, self._to_case, strict=True))
        ]
        past_c = np.array(walk.start.sink_c) + np.einsum("abj,bj->a", self._to_air[:, :, i, :i], walk.heat_steps[:, :i])
        junction, moved, widest = list(junction_c), None, inf
        for _ in range(200):
            shares, losses = assembly.losses(surge_a, junction)
            fresh = [now - old for now, old in zip(assembly.sink_heat(surge_a, losses), walk.heats, strict=True)]
            sinks = [float(past) + sum(a * b for a, b in zip(row, fresh, strict=True)) for past, row in zip(past_c, air_now, strict=True)]
            warmer = [
                sinks[kind.sink] + rest_c[k] + (kind.to_sink_kpw + case_now[k]) * loss
                for k, (kind, loss) in enumerate(zip(assembly.kinds, losses, strict=True))
            ]
            moves = [new - old for new, old in zip(warmer, junction, strict=True)]
            wide = max(map(abs, moves))
            if wide < _CLOSE_K:
                return State(junction_c=tuple(warmer), sink_c=tuple(sinks), current_a=tuple(shares), loss_w=tuple(losses))
            # Why on plain moves only: they grow where heat outruns its way out; a followed row may overshoot once.
            if max(warmer) > BEYOND_ALL_C or (moved is not None and wide > widest):
                break
            junction, moved, widest = _further(warmer, moves, moved), moves if moved is None else None, wide
        return assembly.run_away()


def _further(warmer: Sequence[float], moves: Sequence[float], before: Sequence[float] | None) -> list[float]:
    """Where a row of ever smaller moves leads: every second time it is followed to its end (Aitken)."""
    if before is None:
        return list(warmer)
    shrink = [min(max(now / past, 0.0), 0.9) if past else 0.0 for now, past in zip(moves, before, strict=True)]
    return [warm + move * by / (1 - by) for warm, move, by in zip(warmer, moves, shrink, strict=True)]


class _Walk:
    """What the steps leave behind: every change of heat so far, and where it started."""

    def __init__(self, *, start: State, running_heat: Sequence[float], steps: int) -> None:
        self.start = start
        self.losses, self.heats = list(start.loss_w), list(running_heat)
        self.loss_steps = np.zeros((len(start.loss_w), steps))
        self.heat_steps = np.zeros((len(start.sink_c), steps))

    def remember(self, i: int, state: State, heats: Sequence[float]) -> None:
        """Note the changes of one step."""
        self.loss_steps[:, i] = np.subtract(state.loss_w, self.losses)
        self.heat_steps[:, i] = np.subtract(heats, self.heats)
        self.losses, self.heats = list(state.loss_w), list(heats)
