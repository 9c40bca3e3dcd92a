"""From a test on the bench to figures that replace defaults, each with the uncertainty that the test leaves.

Why bands: a probe sits on a surface and not in the silicon, it reads low, and one on-resistance of the sheet is typical and one is
the largest. A thermal resistance found with the typical one and used with the largest is on the safe side.
"""

from dataclasses import dataclass, replace
from enum import StrEnum

from service.derating.case import DISCHARGE, BankCase, Case, Corner
from service.derating.formulas.bench_test import (
    cold_switch_resistance_ohm,
    current_from_test_a,
    resistance_from_drop_ohm,
    resistance_from_rise_kpw,
)
from service.facts.board import Board
from service.facts.sourced import Known, Sourced

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


def junction_to_air(case: Case, bank: BankCase, test: HeatTest) -> Sourced:
    """Thermal resistance of one switch to the air, while its whole bank runs, from a heat test.

    Args:
        case: The board as it was before the test.
        bank: That carried the current.
        test: What was seen.

    Returns:
        K/W with its band; its name says what the test covered.

    Raises:
        ValueError: The spot was no warmer than the air, so the test says nothing.
    """
    least_k, most_k = _proven(test)
    low = _resistance_kpw(case, bank, test, current_a=test.current_a.most, rise_k=least_k, corner=Corner.WORST)
    high = _resistance_kpw(case, bank, test, current_a=test.current_a.least, rise_k=most_k, corner=Corner.FAVOURABLE)
    return _measured(test, low, high, "K/W", _covered(test))


def board_to_air(case: Case, bank: BankCase, test: HeatTest) -> Sourced:
    """Thermal resistance from a shared board to the air, from a heat test; the board's own limit is still judged with it.

    Args:
        case: The board as it was before the test; its switches share a board.
        bank: Whose switches were looked at.
        test: What was seen.

    Returns:
        K/W with its band; its name says what the test covered.

    Raises:
        ValueError: No board is shared, or the spot was no warmer than the air.
    """
    if not case.is_chain:
        raise ValueError("nobody says that the switches share a board; a heat test gives junction to air")
    least_k, most_k = _proven(test)
    low = _board_kpw(case, bank, test, current_a=test.current_a.most, rise_k=least_k, corner=Corner.WORST)
    high = _board_kpw(case, bank, test, current_a=test.current_a.least, rise_k=most_k, corner=Corner.FAVOURABLE)
    return _measured(test, low, high, "K/W", _covered(test))


def with_measured_air(board: Board, measured: Sourced) -> Board:
    """The board with a measured resistance to the air in place of what stood there, so that it can be judged again."""
    cooling = replace(board.cooling, junction_to_air_kpw=measured, case_to_board_kpw=None, board_to_air_kpw=None)
    return replace(board, cooling=cooling)


def with_measured_switches(board: Board, bank: str, measured: Sourced) -> Board:
    """The board with a measured on-resistance in place of the sheet's, so that it can be judged again.

    Args:
        board: As it was before the test.
        bank: discharge or charge.
        measured: One switch at 25 degC, with its band, at the gate voltage that the board really has. [ohm]

    Returns:
        The same with the measurement in the place of what that bank's part prints.
    """
    if bank == DISCHARGE:
        return replace(board, discharge_bank=replace(board.discharge_bank, on_resistance_ohm=measured))
    return replace(board, charge_bank=replace(board.charge_bank, on_resistance_ohm=measured))


def path_resistance(*, drop_v: Sourced, current_a: Sourced) -> Sourced:
    """Resistance between two points from millivolts at a known current.

    Args:
        drop_v: With the meter's uncertainty as a band. [V]
        current_a: With its own. [A]

    Returns:
        Resistance with its band. [ohm]
    """
    low, value, high = (
        resistance_from_drop_ohm(drop_v=volts, current_a=amperes)
        for volts, amperes in ((drop_v.least, current_a.most), (drop_v.value, current_a.value), (drop_v.most, current_a.least))
    )
    name = f"{drop_v.value * 1e3:g} mV at {current_a.value:g} A"
    return Sourced(value=value, unit="ohm", known=Known.MEASURED, low=low, high=high, attested=drop_v.attested, name=name)


def switch_resistance(case: Case, bank: BankCase, *, drop_v: Sourced, current_a: Sourced, junction_c: Sourced) -> Sourced:
    """On-resistance of one switch at 25 degC from the drop over its bank.

    Args:
        case: For how the on-resistance grows.
        bank: That carried the current.
        drop_v: Across the bank. [V]
        current_a: Through it. [A]
        junction_c: Of the switches during the test. [degC]

    Returns:
        On-resistance with its band. [ohm]
    """
    path = path_resistance(drop_v=drop_v, current_a=current_a)
    ends = ((path.least, junction_c.most), (path.value, junction_c.value), (path.most, junction_c.least))
    ratios = [case.ratio(bank, case.point(corner)) for corner in (Corner.WORST, Corner.NOMINAL, Corner.FAVOURABLE)]
    low, value, high = (
        cold_switch_resistance_ohm(drop_v=ohm, current_a=1.0, switches=bank.switches, ratio=ratio.value(warm))
        for (ohm, warm), ratio in zip(ends, ratios, strict=True)
    )
    return replace(path, value=value, low=low, high=high, name=f"{path.name} over {bank.switches} switches at {junction_c.value:g} degC")


def allowed_current(case: Case, bank: BankCase, test: HeatTest, *, limit_c: float) -> Sourced:
    """What a test at a smaller current allows for the whole: the current at which the junction would just reach its limit.

    Args:
        case: For how the on-resistance grows, and for the air that the board will really have.
        bank: That carried the current.
        test: What was seen.
        limit_c: Junction limit. [degC]

    Returns:
        Current with its band; the lower end is what the test proves. [A]

    Raises:
        ValueError: The spot was no warmer than the air, so the test says nothing.
    """
    least_k, most_k = _proven(test)
    low = _allowed_a(case, bank, test, limit_c, tested_a=test.current_a.least, rise_k=most_k, corner=Corner.WORST)
    high = _allowed_a(case, bank, test, limit_c, tested_a=test.current_a.most, rise_k=least_k, corner=Corner.FAVOURABLE)
    name = f"scaled from {test.current_a.value:g} A by the square of the current and the growth of the on-resistance"
    return _measured(test, low, high, "A", name)


def _proven(test: HeatTest) -> tuple[float, float]:
    """Least and largest rise of a test that says something. [K, K]."""
    least_k, most_k = test.rise_k
    if least_k <= 0:
        raise ValueError(f"a rise of {least_k:.1f} K within the uncertainty says nothing; test with more current or wait longer")
    return least_k, most_k


def _covered(test: HeatTest) -> str:
    """What the test says something of."""
    air = "closed case, to the air outside" if test.lid_on else "open case: the air inside the closed one must be taken as ambient"
    return f"probe on {test.spot}, {test.current_a.value:g} A, {air}"


def _measured(test: HeatTest, low: float, high: float, unit: str, name: str) -> Sourced:
    """A figure with its band, as the test attests it."""
    return Sourced(value=(low + high) / 2, unit=unit, known=Known.MEASURED, low=low, high=high, attested=test.probe_c.attested, name=name)


def _allowed_a(
    case: Case,
    bank: BankCase,
    test: HeatTest,
    limit_c: float,
    *,
    tested_a: float,
    rise_k: float,
    corner: Corner,
) -> float:
    """The scaled current at one end."""
    point = case.point(corner)
    loss = _loss_w(case, bank, current_a=tested_a, junction_c=test.air_c.value + rise_k, corner=corner)
    junction_rise = rise_k + _inside_kpw(case, bank, test.spot, corner) * loss
    ratio = case.ratio(bank, point)
    return current_from_test_a(
        tested_a=tested_a,
        tested_rise_k=junction_rise,
        tested_ratio=ratio.value(test.air_c.value + junction_rise),
        allowed_rise_k=max(limit_c - point["ambient"], 0.0),
        allowed_ratio=ratio.value(limit_c),
    )


def _resistance_kpw(
    case: Case,
    bank: BankCase,
    test: HeatTest,
    *,
    current_a: float,
    rise_k: float,
    corner: Corner,
) -> float:
    """Junction to air at one end: the spot over the air, and the junction over the spot."""
    loss = _tested_loss_w(case, bank, test, current_a=current_a, rise_k=rise_k, corner=corner)
    # Why the other corner inside: the band of what was not seen must widen the band of the answer, not narrow it.
    inside = _inside_kpw(case, bank, test.spot, Corner.FAVOURABLE if corner is Corner.WORST else Corner.WORST)
    return resistance_from_rise_kpw(rise_k=rise_k, loss_w=loss) + inside


def _board_kpw(
    case: Case,
    bank: BankCase,
    test: HeatTest,
    *,
    current_a: float,
    rise_k: float,
    corner: Corner,
) -> float:
    """Board to air at one end: the board's own rise over the heat of all that it sheds."""
    point = case.point(corner)
    losses = {one.name: _tested_loss_w(case, one, test, current_a=current_a, rise_k=rise_k, corner=corner) for one in case.conducting(bank)}
    heat = sum(one.switches * losses[one.name] for one in case.conducting(bank)) + current_a**2 * case.network(bank, point).board_ohm
    # Why the corner's own way to the board: a long one makes the board cooler, which belongs to the end of the small resistance.
    above = 0.0 if test.spot is Spot.BOARD else point["case_to_board"] * losses[bank.name]
    return resistance_from_rise_kpw(rise_k=max(rise_k - above, 0.0), loss_w=heat)


def _tested_loss_w(
    case: Case,
    bank: BankCase,
    test: HeatTest,
    *,
    current_a: float,
    rise_k: float,
    corner: Corner,
) -> float:
    """Heat of one switch at one end; its junction stands above the spot by what the same end puts between them."""
    inside, loss = _inside_kpw(case, bank, test.spot, corner), 0.0
    for _ in range(AROUND):
        loss = _loss_w(case, bank, current_a=current_a, junction_c=test.air_c.value + rise_k + inside * loss, corner=corner)
    return loss


def _loss_w(case: Case, bank: BankCase, *, current_a: float, junction_c: float, corner: Corner) -> float:
    """Heat of one switch during the test."""
    point = case.point(corner)
    hot_ohm = point[bank.prefix + "on_resistance"] * case.ratio(bank, point).value(junction_c)
    return (current_a / bank.switches) ** 2 * hot_ohm


def _inside_kpw(case: Case, bank: BankCase, spot: Spot, corner: Corner) -> float:
    """From the spot to the junction; at the favourable end a probe may as well have touched the silicon."""
    if corner is Corner.FAVOURABLE:
        return 0.0
    point = case.point(Corner.WORST)
    to_case = point.get(bank.prefix + "junction_case", 0.0)
    return {Spot.TAB: to_case, Spot.TOP: max(JUNCTION_TO_TOP_KPW, to_case), Spot.BOARD: to_case + point.get("case_to_board", 5.0)}[spot]
