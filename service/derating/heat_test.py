"""A temperature at a known current: what was seen, and the two ends of what it may mean.

Why bands: a probe sits on a surface and not in the silicon, it reads low, and one on-resistance of the sheet is typical and one is
the largest. A thermal resistance found with the typical one and used with the largest is on the safe side.
"""

from dataclasses import dataclass
from enum import StrEnum

from service.derating.case import BankCase, Case, Corner
from service.derating.fill_in import CASE_TO_BOARD
from service.derating.formulas.bench_test import current_from_test_a, resistance_from_rise_kpw
from service.derating.formulas.conduction import switch_loss_w
from service.facts.sourced import Sourced

# How much of a rise a probe on a surface may miss; common practice, no source.
PROBE_MISSES = 0.10
# From the junction to the top of a small plastic package (onsemi AND90146). [K/W]
JUNCTION_TO_TOP_KPW = 1.0
# Heat and junction agree within a thousandth after as many rounds; the junction stands little above the spot.
AROUND = 5


class Spot(StrEnum):
    """Where the probe sat."""

    TAB = "tab"
    TOP = "package top"
    BOARD = "board beside the switches"


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatTest:
    """A temperature at a known current, once settled.

    Attributes:
        current_a: Through the bank, with the meter's uncertainty as a band. [A]
        probe_c: Hottest spot found, with the thermometer's uncertainty as a band. [degC]
        air_c: Air that the rise is counted from. [degC]
        spot: Where the probe sat.
        lid_on: Whether the case was closed and ``air_c`` is the air outside it.
    """

    current_a: Sourced
    probe_c: Sourced
    air_c: Sourced
    spot: Spot
    lid_on: bool

    @property
    def rise_k(self) -> tuple[float, float]:
        """Least and largest rise of the spot; the largest allows for what the probe misses. [K, K]."""
        least = self.probe_c.least - self.air_c.most
        return least, (self.probe_c.most - self.air_c.least) / (1 - PROBE_MISSES)


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """One end of what a heat test may mean.

    Attributes:
        case: The board as it was before the test.
        bank: That was looked at.
        test: What was seen.
        current_a: The end of the meter's band. [A]
        rise_k: The end of the thermometer's and the probe's band. [K]
        corner: Which on-resistance heats the switches.
    """

    case: Case
    bank: BankCase
    test: HeatTest
    current_a: float
    rise_k: float
    corner: Corner

    @property
    def to_air_kpw(self) -> float:
        """Junction to air: the spot over the air, and the junction over the spot. [K/W]."""
        # Why the other corner inside: the band of what was not seen must widen the band of the answer, not narrow it.
        inside = self._inside_kpw(Corner.FAVOURABLE if self.corner is Corner.WORST else Corner.WORST)
        return resistance_from_rise_kpw(rise_k=self.rise_k, loss_w=self._loss_w(self.bank)) + inside

    @property
    def board_to_air_kpw(self) -> float:
        """Board to air: the board's own rise over the heat of all that it sheds. [K/W]."""
        banks, point = self.case.conducting(self.bank), self.case.point(self.corner)
        heat = sum(bank.switches * self._loss_w(bank) for bank in banks) + self.current_a**2 * self.case.network(self.bank, point).board_ohm
        # Why the corner's own way to the board: a long one makes the board cooler, which belongs to the end of the small resistance.
        above = 0.0 if self.test.spot is Spot.BOARD else point["case_to_board"] * self._loss_w(self.bank)
        return resistance_from_rise_kpw(rise_k=max(self.rise_k - above, 0.0), loss_w=heat)

    def allowed_a(self, limit_c: float) -> float:
        """Current at which the junction would just reach a limit. [A]."""
        point, ratio = self.case.point(self.corner), self.case.ratio(self.bank, self.case.point(self.corner))
        rise_k = self.rise_k + self._inside_kpw(self.corner) * self._loss_w(self.bank)
        return current_from_test_a(
            tested_a=self.current_a,
            tested_rise_k=rise_k,
            tested_ratio=ratio.value(self.test.air_c.value + rise_k),
            allowed_rise_k=max(limit_c - point["ambient"], 0.0),
            allowed_ratio=ratio.value(limit_c),
        )

    def _loss_w(self, bank: BankCase) -> float:
        """Heat of one switch during the test; its junction stands above the spot by what this end puts between them."""
        point, inside, loss = self.case.point(self.corner), self._inside_kpw(self.corner), 0.0
        for _ in range(AROUND):
            ratio = self.case.ratio(bank, point).value(self.test.air_c.value + self.rise_k + inside * loss)
            loss = switch_loss_w(current_a=self.current_a / bank.switches, on_resistance_ohm=point[bank.prefix + "on_resistance"] * ratio)
        return loss

    def _inside_kpw(self, corner: Corner) -> float:
        """From the spot to the junction; at the favourable end a probe may as well have touched the silicon. [K/W]."""
        if corner is Corner.FAVOURABLE:
            return 0.0
        point = self.case.point(Corner.WORST)
        to_case = point.get(self.bank.prefix + "junction_case", 0.0)
        beside = to_case + point.get("case_to_board", CASE_TO_BOARD.value)
        return {Spot.TAB: to_case, Spot.TOP: max(JUNCTION_TO_TOP_KPW, to_case), Spot.BOARD: beside}[self.test.spot]


def ends(case: Case, bank: BankCase, test: HeatTest, *, corners: tuple[Corner, Corner]) -> tuple[End, End]:
    """Both ends of a test that says something.

    Args:
        case: The board as it was before the test.
        bank: That was looked at.
        test: What was seen.
        corners: Which on-resistance goes with the small rise, and which with the large one.

    Returns:
        The largest current with the least rise, and the smallest current with the largest one.

    Raises:
        ValueError: The spot was no warmer than the air, so the test says nothing.
    """
    least_k, most_k = test.rise_k
    if least_k <= 0:
        raise ValueError(f"a rise of {least_k:.1f} K within the uncertainty says nothing; test with more current or wait longer")
    return (
        End(case=case, bank=bank, test=test, current_a=test.current_a.most, rise_k=least_k, corner=corners[0]),
        End(case=case, bank=bank, test=test, current_a=test.current_a.least, rise_k=most_k, corner=corners[1]),
    )
