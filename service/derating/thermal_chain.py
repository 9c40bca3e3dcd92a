"""The way of the heat from the hottest junction to the air, link by link with the temperature between: for a picture."""

from service.derating.case import BankCase, Case, Corner
from service.derating.first_to_pass import first_to_pass, largest_worst_a
from service.derating.formulas.settling import Settled
from service.derating.quantity import Point, Quantity
from service.derating.spoken import spoken
from service.derating.thermal import limits_of
from service.facts.drawn import HeatStep, ThermalChain

JUST_BELOW = 0.999


def thermal_chain(case: Case) -> ThermalChain | None:
    """Follow the heat of the bank that passes its limit first, in the worst corner.

    Args:
        case: The board under one rule set.

    Returns:
        The links; None where a bank's heat has no bound, or where not even an idle board keeps its limits.
    """
    bank = first_to_pass(case, case.banks)
    if bank is None:
        return None
    point = case.point(Corner.WORST)
    claimed_a = current_a = case.claimed_a(bank, point)
    settled, note = case.settle(bank, point, current_a=claimed_a), ""
    if not settled.exists:
        # Why a little less: exactly at the largest current a fold may lie.
        current_a = JUST_BELOW * largest_worst_a(case, bank)
        settled = case.settle(bank, point, current_a=current_a)
        note = f"At the claimed {spoken(claimed_a, 'A')} the temperature never settles in the worst case, so this is the largest current that does."
    if current_a <= 0 or not settled.exists:
        return None
    steps = _over_board(case, bank, point, settled) if case.is_chain else _alone(case, bank, point, settled)
    limits = limits_of(case, bank, point)
    return ThermalChain(bank=bank.name, current_a=current_a, limit_c=limits.junction_c, board_limit_c=limits.board_c, steps=steps, note=note)


def _over_board(case: Case, bank: BankCase, point: Point, settled: Settled) -> tuple[HeatStep, ...]:
    """Junction, case, board, air: the first two links carry the heat of one switch, the last that of all."""
    own_w, board_c = settled.losses_w[0], settled.board_c
    case_c = board_c + point["case_to_board"] * own_w
    shared = case.quantities["board_to_air"]
    all_w = (board_c - point["ambient"]) / shared.worst
    return (
        _step("junction", "case", settled.junctions_c[0], case_c, own_w, case.quantities[bank.prefix + "junction_case"]),
        _step("case", "board", case_c, board_c, own_w, case.quantities["case_to_board"]),
        _step("board", "air", board_c, point["ambient"], all_w, shared),
    )


def _alone(case: Case, bank: BankCase, point: Point, settled: Settled) -> tuple[HeatStep, ...]:
    """Each switch on its own: junction to air, parted at the case where the sheet tells the first link."""
    own_w, junction_c = settled.losses_w[0], settled.junctions_c[0]
    whole, inner = case.quantities["junction_to_air"], case.quantities.get(bank.prefix + "junction_case")
    if inner is None or inner.worst >= min(whole.worst, whole.favourable):
        return (_step("junction", "air", junction_c, point["ambient"], own_w, whole),)
    case_c = junction_c - inner.worst * own_w
    outer = HeatStep(
        start="case",
        end="air",
        start_c=case_c,
        end_c=point["ambient"],
        heat_w=own_w,
        favourable_kpw=whole.favourable - inner.favourable,
        worst_kpw=whole.worst - inner.worst,
        sourced=whole.sourced,
    )
    return (_step("junction", "case", junction_c, case_c, own_w, inner), outer)


def _step(start: str, end: str, start_c: float, end_c: float, heat_w: float, link: Quantity) -> HeatStep:
    """One link."""
    return HeatStep(
        start=start,
        end=end,
        start_c=start_c,
        end_c=end_c,
        heat_w=heat_w,
        favourable_kpw=link.favourable,
        worst_kpw=link.worst,
        sourced=link.sourced,
    )
