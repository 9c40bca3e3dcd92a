"""What a part would have to be: the least voltage rating and the largest on-resistance that would still do on a board."""

import math
from dataclasses import dataclass, replace

from service.derating.checks import CHECKS
from service.derating.open_case import open_case
from service.facts.board import Bank, Board
from service.facts.reading import Conditions, Limit
from service.facts.sourced import Known, Sourced
from service.facts.switch import RatedValue, Switch

# Why: the lower of the two usual ratings asks for the better part (Infineon AN_2112, section 3.3, has both for the same die).
JUNCTION_MAX_C = 150.0
GATE_V = 10.0
TRIAL_V, TRIAL_OHM = 100.0, 1e-3
LEAST_OHM, MOST_OHM = 1e-5, 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PartWanted:
    """What to look for in a datasheet.

    Attributes:
        drain_source_v: Least drain-source voltage rating, rounded up to a tenth. [V]
        on_resistance_ohm: Largest on-resistance at 25 degC that the sheet may guarantee, rounded down to two digits; None where none is small
            enough. [ohm]
        junction_max_c: Highest junction temperature that this supposes. [degC]
    """

    drain_source_v: float
    on_resistance_ohm: float | None
    junction_max_c: float


def part_wanted(board: Board) -> PartWanted:
    """Say what a part would have to be on a board whose part nobody knows.

    Args:
        board: As read; its parts are left aside, both banks get the part that is sought.

    Returns:
        The least voltage rating under the board's rule set, and the largest on-resistance at which the claimed current holds in the worst corner.
    """
    voltage = _least_voltage(board)
    low, high = math.log(LEAST_OHM), math.log(MOST_OHM)
    if not _carries(board, volt=voltage, ohm=LEAST_OHM):
        return PartWanted(drain_source_v=voltage, on_resistance_ohm=None, junction_max_c=JUNCTION_MAX_C)
    for _ in range(12):
        middle = (low + high) / 2
        low, high = (middle, high) if _carries(board, volt=voltage, ohm=math.exp(middle)) else (low, middle)
    return PartWanted(drain_source_v=voltage, on_resistance_ohm=_rounded_down(math.exp(low)), junction_max_c=JUNCTION_MAX_C)


def _least_voltage(board: Board) -> float:
    """The trial part's rating, less by the margin that it has to spare."""
    margins = _margins(_with(board, volt=TRIAL_V, ohm=TRIAL_OHM), "drain_source_voltage")
    return math.ceil(10 * TRIAL_V / min(margins) - 1e-9) / 10


def _carries(board: Board, *, volt: float, ohm: float) -> bool:
    """Whether the claimed current holds in the worst corner with a part."""
    return min(_margins(_with(board, volt=volt, ohm=ohm), "continuous_current")) >= 1


def _margins(board: Board, name: str) -> list[float]:
    """The worst margins of one check, of every bank; the other checks are left aside, because this asks many times."""
    case = open_case(board)
    findings = (finding for check in CHECKS if check.name == name for finding in check.run(case))
    return [finding.margin.worst for finding in findings if finding.margin is not None]


def _with(board: Board, *, volt: float, ohm: float) -> Board:
    """The board with a part of these figures in both banks."""
    switch = Switch(
        marking="the part that is sought",
        values=(
            _rated("vds_max", volt, "V"),
            _rated("tj_max", JUNCTION_MAX_C, "degC"),
            _rated("rds_on", ohm, "ohm", Conditions(vgs=GATE_V)),
        ),
        typed=True,
    )
    return replace(board, discharge_bank=_fitted(board.discharge_bank, switch), charge_bank=_fitted(board.charge_bank, switch))


def _fitted(bank: Bank, switch: Switch) -> Bank:
    """The bank with another part."""
    return replace(bank, switch=switch, part="", channel=None)


def _rated(key: str, value: float, unit: str, cond: Conditions | None = None) -> RatedValue:
    """A figure of the part that is sought."""
    return RatedValue(key=key, limit=Limit.MAX, sourced=Sourced(value=value, unit=unit, known=Known.TYPED), cond=cond or Conditions())


def _rounded_down(value: float) -> float:
    """Two digits, to the safe side."""
    scale = 10 ** (math.floor(math.log10(value)) - 1)
    return float(f"{math.floor(value / scale + 1e-9) * scale:.3g}")
