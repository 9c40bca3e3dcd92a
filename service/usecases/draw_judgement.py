"""Draw a judgement: what its pictures and its spread show, computed once and kept with the result."""

from math import isfinite

from service.derating.open_case import open_case
from service.derating.spread import BankSpread, spread
from service.derating.surge_over_time import surge_over_time
from service.derating.temperature_curve import temperature_curve
from service.derating.thermal_chain import thermal_chain
from service.facts.board import Board
from service.facts.drawn import Drawn
from service.formats.drawn import chain_json, curve_json, rounded

Written = dict[str, object]


def drawn(board: Board) -> Drawn:
    """Compute what is drawn of a board.

    Args:
        board: As judged, with the figures of its parts.

    Returns:
        Temperature over current, surge over time and the thermal chain; empty where a bank's heat has no bound.
    """
    case = open_case(board)
    curves = (temperature_curve(case), surge_over_time(case))
    return Drawn(curves=tuple(curve for curve in curves if curve), chain=thermal_chain(case))


def pictures_json(board: Board) -> Written:
    """What a frozen report holds besides its findings, so that its page never has to compute anything again."""
    found = drawn(board)
    chain = None if found.chain is None else chain_json(found.chain)
    return {"curves": [curve_json(curve) for curve in found.curves], "thermal_chain": chain, **drawn_boards_json(board)}


def drawn_boards_json(board: Board) -> Written:
    """How often the board would hold if its unknowns fell anywhere within their bands; nothing where a bank's heat has no bound."""
    found = spread(board)
    if found is None:
        return {"spread": None}
    banks = [_bank_json(bank) for bank in found.banks]
    return {"spread": {"boards": found.boards, "seed": found.seed, "holds": found.holds, "banks": banks}}


def _bank_json(bank: BankSpread) -> Written:
    """One bank over many boards."""
    low, middle, high = (rounded(c) if isfinite(c) else None for c in bank.junction_c)
    return {
        "bank": bank.bank,
        "settles": bank.settles,
        "holds": bank.holds,
        "junction_holds": bank.junction_holds,
        "board_holds": bank.board_holds,
        "junction_degc": {"5 %": low, "50 %": middle, "95 %": high},
        "ranking": [{"quantity": key, "correlation": round(value, 3)} for key, value in bank.ranking],
    }
