"""Switches and what they sit on as heat sees them: kinds of equal switches, the sinks that they warm, and where all of it settles."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import inf

import numpy as np
from numpy.typing import NDArray

from service.derating.formulas.ratio_model import RatioModel

Array = NDArray[np.float64]

# No switch lives here: what gets so hot has run away.
BEYOND_ALL_C = 1000.0
# What stands for no heat capacity and for one without end, so that both are plain numbers to the solver. [J/K]
_NO_HEAT, _ENDLESS_HEAT = 1e-9, 1e15


@dataclass(frozen=True, slots=True, kw_only=True)
class Sink:
    """What switches give their heat to: the board they share, a plate behind it, or the copper of one switch alone.

    Attributes:
        to_air_kpw: From it to the air; infinite where it only touches other sinks. [K/W]
        heat_jpk: Its heat capacity; zero and infinity are allowed. [J/K]
        resistor_ohm: Shunt and joints whose heat it takes as well, at the whole current. [ohm]
    """

    to_air_kpw: float
    heat_jpk: float
    resistor_ohm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """Switches of one bank that run alike.

    Attributes:
        bank: Number of the bank whose current they share.
        switches: How many they are.
        cold_ohm: On-resistance of one at 25 degC. [ohm]
        ratio: On-resistance over its cold value, against junction temperature.
        to_case_kpw: Junction to case, settled. [K/W]
        impedance: Junction to case over time; never above the settled value. [s -> K/W]
        to_sink_kpw: Case to sink of one switch, without mass. [K/W]
        sink: Number of the sink that they sit on.
        warming: How many of them warm each sink, in the order of the sinks.
        diode_v: Forward voltage where the channel is off and the current takes the body diode; zero for the channel. [V]
    """

    bank: int
    switches: float
    cold_ohm: float
    ratio: RatioModel
    to_case_kpw: float
    impedance: Callable[[Array], Array]
    to_sink_kpw: float
    sink: int
    warming: tuple[float, ...]
    diode_v: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """Where everything stands at one moment.

    Attributes:
        junction_c: Of each kind; infinite where it has run away. [degC]
        sink_c: Of each sink. [degC]
        current_a: Through one switch of each kind. [A]
        loss_w: Heat of one switch of each kind. [W]
    """

    junction_c: tuple[float, ...]
    sink_c: tuple[float, ...]
    current_a: tuple[float, ...]
    loss_w: tuple[float, ...]

    @property
    def ran_away(self) -> bool:
        """Whether there is no such state at all."""
        return self.junction_c[0] == inf


@dataclass(frozen=True, slots=True, kw_only=True)
class Assembly:
    """Switches and what they sit on.

    Attributes:
        kinds: All switches that carry the current.
        sinks: What they give their heat to.
        links: Pairs of sinks that touch, with the resistance between them. [1, 1, K/W]
        ambient_c: Air around. [degC]
    """

    kinds: tuple[Kind, ...]
    sinks: tuple[Sink, ...]
    ambient_c: float
    links: tuple[tuple[int, int, float], ...] = ()

    def losses(self, current_a: float, junction_c: Sequence[float]) -> tuple[list[float], list[float]]:
        """Current and heat of one switch of each kind at given junction temperatures. [A, ...] [W, ...]."""
        ohms = [kind.cold_ohm * kind.ratio.value(warm) for kind, warm in zip(self.kinds, junction_c, strict=True)]
        conductance: dict[int, float] = {}
        for kind, ohm in zip(self.kinds, ohms, strict=True):
            conductance[kind.bank] = conductance.get(kind.bank, 0.0) + kind.switches / ohm
        shares = [current_a / ohm / conductance[kind.bank] for kind, ohm in zip(self.kinds, ohms, strict=True)]
        heats = [share * (kind.diode_v or share * ohm) for kind, ohm, share in zip(self.kinds, ohms, shares, strict=True)]
        return shares, heats

    def sink_heat(self, current_a: float, losses_w: Sequence[float]) -> list[float]:
        """Heat into each sink. [W, ...]."""
        return [
            current_a**2 * sink.resistor_ohm + sum(kind.warming[s] * loss for kind, loss in zip(self.kinds, losses_w, strict=True))
            for s, sink in enumerate(self.sinks)
        ]

    def conductances(self) -> Array:
        """Heat flow out of each sink for a kelvin of each sink over the air. [W/K]."""
        flows = np.diag([1 / sink.to_air_kpw for sink in self.sinks])
        for a, b, between in self.links:
            flows[[a, b], [a, b]] += 1 / between
            flows[[a, b], [b, a]] -= 1 / between
        return flows

    def settled(self, current_a: float) -> State:
        """Where everything settles at a constant current; infinite where it never does."""
        rises: list[list[float]] = np.linalg.inv(self.conductances()).tolist()
        junction = [self.ambient_c] * len(self.kinds)
        for _ in range(1000):
            shares, losses = self.losses(current_a, junction)
            heats = self.sink_heat(current_a, losses)
            sinks = [self.ambient_c + sum(rise * heat for rise, heat in zip(row, heats, strict=True)) for row in rises]
            warmer = [sinks[kind.sink] + (kind.to_sink_kpw + kind.to_case_kpw) * loss for kind, loss in zip(self.kinds, losses, strict=True)]
            moved = max(abs(new - old) for new, old in zip(warmer, junction, strict=True))
            junction = warmer
            if max(junction) > BEYOND_ALL_C:
                break
            if moved < 1e-8:
                return State(junction_c=tuple(junction), sink_c=tuple(sinks), current_a=tuple(shares), loss_w=tuple(losses))
        return self.run_away()

    def run_away(self) -> State:
        """The state that is no state."""
        endless = (inf,) * len(self.kinds)
        return State(junction_c=endless, sink_c=(inf,) * len(self.sinks), current_a=endless, loss_w=endless)

    def sink_impedances(self, since: Array) -> Array:
        """Rise of each sink after a watt into each sink, over time. [K/W]."""
        root = np.sqrt([min(max(sink.heat_jpk, _NO_HEAT), _ENDLESS_HEAT) for sink in self.sinks])
        rates, modes = np.linalg.eigh(self.conductances() / np.outer(root, root))
        shape = modes / root[:, None]
        grown = -np.expm1(-since[..., None] * rates) / rates
        impedances: Array = np.einsum("am,bm,...m->ab...", shape, shape, grown)
        return impedances
