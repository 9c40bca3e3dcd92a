"""One bank blocked, the other on: the current takes the body diodes of the blocked bank and heats them.

The diodes of a bank are taken to share equally and to keep the forward voltage of the sheet; warm ones drop a little less and share
a little worse. Where a board is shared, the other bank, shunt and joints warm it as well.
"""

from dataclasses import replace
from math import inf

import numpy as np
from scipy.optimize import brentq

from service.derating.assembly import Assembly, Kind, Sink, State
from service.derating.case import BankCase, Case
from service.derating.case_impedance import case_impedance
from service.derating.formulas.body_diode import safe_diode_current_a
from service.derating.formulas.network import Die
from service.derating.quantity import Point
from service.derating.warming import Surge

_BRIEFEST_S, _LONGEST_S = 1e-6, 1e5


class BlockedBank:
    """A bank whose channels are off while a current passes its diodes, at one point.

    Args:
        case: The board under one rule set.
        bank: The blocked one.
        point: A number for each quantity, with the diode's forward voltage.
    """

    def __init__(self, case: Case, bank: BankCase, point: Point) -> None:
        self._case, self._bank, self._point = case, bank, point
        self._diode_v = point[bank.prefix + "diode_voltage"]

    @property
    def limit_c(self) -> float:
        """The junction limit for hours. [degC]."""
        return self._case.junction_limit_c(self._bank, self._point)

    def junction_c(self, current_a: float) -> float:
        """Where the blocked junctions settle; infinite where the other bank runs away. [degC]."""
        return self._on_diodes().settled(current_a).junction_c[0]

    def board_c(self, current_a: float) -> float | None:
        """Where a shared board settles. [degC]."""
        return self._on_diodes().settled(current_a).sink_c[0] if self._case.is_chain else None

    def slack_k(self, current_a: float) -> float:
        """What is left to the nearer of the limits of junction and board once settled. [K]."""
        state = self._on_diodes().settled(current_a)
        return self._left_k(state)

    def largest_a(self) -> float:
        """Largest current for hours through the whole blocked bank. [A]."""
        if not self._case.is_chain:
            rise_k = max(self.limit_c - self._point["ambient"], 0.0)
            kpw = self._point["junction_to_air"]
            return self._bank.switches * safe_diode_current_a(allowed_rise_k=rise_k, resistance_kpw=kpw, diode_v=self._diode_v)
        if self.slack_k(0.0) <= 0:
            return 0.0
        low, high = 0.0, 1.0
        while self.slack_k(high) > 0:
            low, high = high, 2 * high
        return float(brentq(lambda current_a: max(self.slack_k(current_a), -1e3), low, high, rtol=1e-10))

    def seconds_to_limit(self, current_a: float) -> float | None:
        """How long the current may flow after the bank was on and settled; infinite for ever, None where no heat capacity is known. [s]."""
        if self.slack_k(current_a) >= 0:
            return inf
        if self._case.board.cooling.board_heat_jpk is None:
            return None
        before = self._assembly(diode_v=0.0).settled(current_a)
        if self._left_k(before) <= 0:
            return 0.0

        def spare(log_s: float) -> float:
            course = Surge(self._on_diodes(), running_a=current_a, seconds=float(np.exp(log_s)), start=before)
            return max(self._left_k(course.end(current_a)), -1e3)

        if spare(np.log(_BRIEFEST_S)) < 0:
            return 0.0
        return float(np.exp(brentq(spare, np.log(_BRIEFEST_S), np.log(_LONGEST_S), xtol=1e-6)))

    def _left_k(self, state: State) -> float:
        """What is left to the nearer limit in a state."""
        left = [self.limit_c - state.junction_c[0]]
        if self._case.is_chain:
            left.append(self._point["board_limit"] - state.sink_c[0])
        return min(left)

    def _on_diodes(self) -> Assembly:
        """The board with the bank blocked."""
        return self._assembly(diode_v=self._diode_v)

    def _assembly(self, *, diode_v: float) -> Assembly:
        """The board with the bank's diodes, or with its channels for a forward voltage of zero."""
        network = self._case.network(self._bank, self._point)
        banks = self._case.conducting(self._bank)
        kinds = tuple(self._kind(die, banks[die.bank], diode_v if die.bank == 0 else 0.0) for die in network.dies)
        heat = self._point.get("board_heat_capacity", 0.0)
        if self._case.is_chain:
            sink = Sink(to_air_kpw=network.board_to_air_kpw, heat_jpk=heat, resistor_ohm=network.board_ohm)
            return Assembly(kinds=kinds, sinks=(sink,), ambient_c=network.ambient_c)
        share = heat / sum(bank.switches for bank in self._case.banks)
        copper = Sink(to_air_kpw=max(kinds[0].to_sink_kpw, 1e-6), heat_jpk=share)
        alone = replace(kinds[0], to_sink_kpw=0.0, warming=(1.0,))
        return Assembly(kinds=(alone,), sinks=(copper,), ambient_c=network.ambient_c)

    def _kind(self, die: Die, bank: BankCase, diode_v: float) -> Kind:
        """Equal switches of one bank."""
        to_case = min(self._point.get(bank.prefix + "junction_case", 0.0), die.to_board_kpw)
        return Kind(
            bank=die.bank,
            switches=die.count,
            cold_ohm=die.cold_resistance_ohm,
            ratio=die.ratio,
            to_case_kpw=to_case,
            impedance=case_impedance(bank.switch, settled_kpw=to_case),
            to_sink_kpw=die.to_board_kpw - to_case,
            sink=0,
            warming=(die.count,),
            diode_v=diode_v,
        )
