"""What the pictures of a result show: curves and the way of the heat, computed with the judgement and kept with it."""

from dataclasses import dataclass

from service.facts.sourced import Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class Axis:
    """What is drawn along one side.

    Attributes:
        quantity: current, temperature or time.
        unit: House unit in ASCII.
        scale: linear or log.
    """

    quantity: str
    unit: str
    scale: str = "linear"


@dataclass(frozen=True, slots=True, kw_only=True)
class Series:
    """One line of a curve.

    Attributes:
        label: What it is: junction, board, largest surge.
        corner: favourable or worst.
        points: Pairs in the units of both axes; the line ends where nothing settles any more.
    """

    label: str
    corner: str
    points: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A limit or a claim within a curve: a line where one place is given, a spot where both are.

    Attributes:
        label: What it is.
        x: Along the first axis.
        y: Along the second axis.
    """

    label: str
    x: float | None = None
    y: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """A figure over another one in both corners.

    Attributes:
        kind: temperature_vs_current or surge_current_vs_time.
        bank: Which bank; of two the one that passes its limit first.
        x: First axis.
        y: Second axis.
        series: Its lines.
        marks: Limits and claims.
        note: What a person has to know to read it; empty where that is nothing.
    """

    kind: str
    bank: str
    x: Axis
    y: Axis
    series: tuple[Series, ...]
    marks: tuple[Mark, ...]
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatStep:
    """One thermal resistance between two places, in the worst corner.

    Attributes:
        start: The hotter place: junction, case, board.
        end: The cooler one.
        start_c: How hot the first is. [degC]
        end_c: How hot the second is. [degC]
        heat_w: Heat that passes. [W]
        favourable_kpw: Resistance at its favourable end. [K/W]
        worst_kpw: At its worst end. [K/W]
        sourced: What it rests on.
    """

    start: str
    end: str
    start_c: float
    end_c: float
    heat_w: float
    favourable_kpw: float
    worst_kpw: float
    sourced: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class ThermalChain:
    """The way of the heat from the hottest junction to the air.

    Attributes:
        bank: Which bank; of two the one that passes its limit first.
        current_a: Through the bank: the claimed one, or the largest that settles where the claimed one never does. [A]
        limit_c: Junction limit. [degC]
        board_limit_c: Limit of the board; None where none is shared. [degC]
        steps: In the order of the heat.
        note: Why it is not drawn at the claimed current; empty where it is.
    """

    bank: str
    current_a: float
    limit_c: float
    board_limit_c: float | None
    steps: tuple[HeatStep, ...]
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """All that is drawn of one judgement; nothing where a bank's heat has no bound."""

    curves: tuple[Curve, ...] = ()
    chain: ThermalChain | None = None
