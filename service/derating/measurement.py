"""From a test on the bench to figures that replace defaults, each with the uncertainty that the test leaves."""

from dataclasses import replace

from service.derating.case import DISCHARGE, BankCase, Case, Corner
from service.derating.formulas.bench_test import cold_switch_resistance_ohm, resistance_from_drop_ohm
from service.derating.heat_test import HeatTest, ends
from service.facts.board import Board
from service.facts.sourced import Known, Sourced

# A small rise over the heat of the largest on-resistance is the least that a thermal resistance may be.
COUNTED = (Corner.WORST, Corner.FAVOURABLE)
# Scaled to another current, a small rise is the better the less the on-resistance grows.
SCALED = (Corner.FAVOURABLE, Corner.WORST)


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
    small, large = ends(case, bank, test, corners=COUNTED)
    return _measured(test, small.to_air_kpw, large.to_air_kpw, "K/W", _covered(test))


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
    small, large = ends(case, bank, test, corners=COUNTED)
    return _measured(test, small.board_to_air_kpw, large.board_to_air_kpw, "K/W", _covered(test))


def with_measured_air(board: Board, measured: Sourced) -> Board:
    """The board with a measured resistance to the air in place of what stood there, so that it can be judged again."""
    cooling = replace(board.cooling, junction_to_air_kpw=measured, case_to_board_kpw=None, board_to_air_kpw=None)
    return replace(board, cooling=cooling)


def with_measured_board(board: Board, measured: Sourced) -> Board:
    """The board with a measured way of the shared board to the air; each switch's own way to it, and the board's limit, stay."""
    return replace(board, cooling=replace(board.cooling, board_to_air_kpw=measured, junction_to_air_kpw=None))


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
    kind, harsh = ends(case, bank, test, corners=SCALED)
    name = f"scaled from {test.current_a.value:g} A by the square of the current and the growth of the on-resistance"
    return _measured(test, harsh.allowed_a(limit_c), kind.allowed_a(limit_c), "A", name)


def _covered(test: HeatTest) -> str:
    """What the test says something of."""
    air = "closed case, to the air outside" if test.lid_on else "open case: the air inside the closed one must be taken as ambient"
    return f"probe on {test.spot}, {test.current_a.value:g} A, {air}"


def _measured(test: HeatTest, low: float, high: float, unit: str, name: str) -> Sourced:
    """A figure with its band, as the test attests it."""
    return Sourced(value=(low + high) / 2, unit=unit, known=Known.MEASURED, low=low, high=high, attested=test.probe_c.attested, name=name)
