"""A network of switch banks as heat sees it, and what an ampere squared makes of it at given junction temperatures.

Switches of a bank lie in parallel, banks carry the same current one after the other, each switch sheds its heat through a resistance of
its own to one board, and the board sheds all of it to the air. With ``board_to_air_kpw`` zero every switch has its own way to the air
and none warms another.

All heat grows as the square of the current when temperatures are held, so the rise of each die is I^2 times a *warmth* that depends on
the temperatures alone. Everything works on plain numbers and on arrays (one entry a board).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from service.derating.formulas.ratio_model import RatioModel


@dataclass(frozen=True, slots=True, kw_only=True)
class Die:
    """Equal switches of one bank.

    Attributes:
        bank: Number of the bank that they belong to.
        count: How many.
        cold_resistance_ohm: On-resistance of one at 25 degC. [ohm]
        to_board_kpw: From one junction to the board, or to the air where nothing is shared. [K/W]
        ratio: Resistance against junction temperature.
        track_ohm: Resistance of its own way on the board, which does not heat the die. [ohm]
    """

    bank: int
    count: float
    cold_resistance_ohm: float
    to_board_kpw: float
    ratio: RatioModel
    track_ohm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Network:
    """All dies that carry the current, and what they sit on.

    Attributes:
        dies: Kinds of equal switches.
        ambient_c: Air around the board. [degC]
        board_to_air_kpw: Shared by all; zero where each switch has its own way to the air. [K/W]
        board_ohm: Shunt and joints that heat the board. [ohm]
    """

    dies: tuple[Die, ...]
    ambient_c: float
    board_to_air_kpw: float
    board_ohm: float = 0.0


class Warmth(NamedTuple):
    """Rise for an ampere squared, at given junction temperatures.

    Attributes:
        dies: Of one junction of each kind over the air. [K/A2, ...]
        board: Of the board. [K/A2]
        losses: Heat of one switch of each kind. [W/A2, ...]
        shares: Share of the current in one switch of each kind. [1, ...]
        banks_ohm: Resistance of each bank. [ohm, ...]
        hot_ohm: On-resistance of one switch of each kind. [ohm, ...]
    """

    dies: tuple[float, ...]
    board: float
    losses: tuple[float, ...]
    shares: tuple[float, ...]
    banks_ohm: tuple[float, ...]
    hot_ohm: tuple[float, ...]


def network_loop_gain(network: Network, *, current_a: float, junctions_c: Sequence[float]) -> float:
    """How much of a small rise comes back as further rise; the state is stable below 1.

    Args:
        network: What carries the current and where its heat goes.
        current_a: Through all banks. [A]
        junctions_c: Of each kind of die. [degC, ...]

    Returns:
        Largest gain over all ways in which temperatures can move together. [1]

    Valid for one board, not for arrays.

    Source: own, largest eigenvalue of the heat balance's Jacobian; an2112 section 6.4 for one switch.
    """
    rows = jacobian_of(network, current_a**2, junctions_c, warmth_of(network, junctions_c))
    return float(np.max(np.real(np.linalg.eigvals(np.asarray(rows, dtype=float)))))


def warmth_of(network: Network, junctions_c: Sequence[float]) -> Warmth:
    """Rises and losses for an ampere squared at given junction temperatures."""
    hot = [die.cold_resistance_ohm * die.ratio.value(t) for die, t in zip(network.dies, junctions_c, strict=True)]
    branches = [ohm + die.track_ohm for die, ohm in zip(network.dies, hot, strict=True)]
    banks = [0.0] * (1 + max(die.bank for die in network.dies))
    for die, ohm in zip(network.dies, branches, strict=True):
        banks[die.bank] = banks[die.bank] + die.count / ohm
    shares = [1 / (ohm * banks[die.bank]) for die, ohm in zip(network.dies, branches, strict=True)]
    losses = [share**2 * ohm for share, ohm in zip(shares, hot, strict=True)]
    heat = sum((die.count * loss for die, loss in zip(network.dies, losses, strict=True)), network.board_ohm)
    board = network.board_to_air_kpw * heat
    return Warmth(
        dies=tuple(board + die.to_board_kpw * loss for die, loss in zip(network.dies, losses, strict=True)),
        board=board,
        losses=tuple(losses),
        shares=tuple(shares),
        banks_ohm=tuple(1 / bank for bank in banks),
        hot_ohm=tuple(hot),
    )


def jacobian_of(network: Network, square: float, junctions_c: Sequence[float], warmth: Warmth) -> list[list[float]]:
    """How each settled-for temperature answers to each assumed one."""
    dies = network.dies
    rows: list[list[float]] = [[] for _ in dies]
    for j, (source, t, hot) in enumerate(zip(dies, junctions_c, warmth.hot_ohm, strict=True)):
        growth = source.cold_resistance_ohm * source.ratio.slope_per_k(t)
        relative = growth / (hot + source.track_ohm)
        pull = 2 * source.count * warmth.shares[j] * relative
        losses = [pull * loss if die.bank == source.bank else 0.0 for die, loss in zip(dies, warmth.losses, strict=True)]
        losses[j] = losses[j] + warmth.losses[j] * (growth / hot - 2 * relative)
        heat = 0.0
        for die, loss in zip(dies, losses, strict=True):
            heat = heat + die.count * loss
        for row, die, loss in zip(rows, dies, losses, strict=True):
            row.append(square * (network.board_to_air_kpw * heat + die.to_board_kpw * loss))
    return rows
