"""What a surge warms, built from a case: dies, their ways to the board or to copper of their own, and the heat that these hold."""

from dataclasses import replace

import numpy as np

from service.derating.assembly import Assembly, Kind, Sink
from service.derating.case import BankCase, Case
from service.derating.case_impedance import Impedance, case_impedance, has_impedance
from service.derating.formulas.network import Die
from service.derating.quantity import Point


def surge_assembly(case: Case, bank: BankCase, point: Point, *, low_switch: bool) -> Assembly | None:
    """What a surge warms.

    Args:
        case: With surge quantities.
        bank: Under examination.
        point: A number for each quantity.
        low_switch: Whether one switch of that bank is low and all others are high.

    Returns:
        The assembly; None where nothing has any mass, so that the surge is at its settled state at once.
    """
    network = case.network(bank, point, low_switch=low_switch)
    banks = case.conducting(bank)
    heat = point["board_heat_capacity"]
    massless = all(_is_massless(item, point) for item in {die.bank: banks[die.bank] for die in network.dies}.values())
    knows_case = bank.prefix + "junction_case" in case.quantities
    if not knows_case or (heat == 0 and massless):
        return None
    if case.is_chain:
        board = Sink(to_air_kpw=network.board_to_air_kpw, heat_jpk=heat, resistor_ohm=network.board_ohm)
        shared = tuple(_kind(die, banks[die.bank], point, sink=0, warming=(die.count,)) for die in network.dies)
        return Assembly(kinds=shared, sinks=(board,), ambient_c=network.ambient_c)
    # Why a share for every switch on the board: that is the least heat that one switch can find in the copper around it.
    share = heat / sum(item.switches for item in case.banks)
    alone = np.eye(len(network.dies)).tolist()
    kinds = tuple(_kind(die, bank, point, sink=i, warming=tuple(alone[i])) for i, die in enumerate(network.dies))
    # Why a floor: a way to the air that ends at the case would leave the sink without any resistance.
    coppers = tuple(Sink(to_air_kpw=max(kind.to_sink_kpw, 1e-6), heat_jpk=share) for kind in kinds)
    return Assembly(kinds=tuple(replace(kind, to_sink_kpw=0.0) for kind in kinds), sinks=coppers, ambient_c=network.ambient_c)


def _kind(die: Die, bank: BankCase, point: Point, *, sink: int, warming: tuple[float, ...]) -> Kind:
    """Equal switches with their way to their sink."""
    to_case = min(point[bank.prefix + "junction_case"], die.to_board_kpw)
    return Kind(
        bank=die.bank,
        switches=die.count,
        cold_ohm=die.cold_resistance_ohm,
        ratio=die.ratio,
        to_case_kpw=to_case,
        impedance=_impedance(bank, point, to_case),
        to_sink_kpw=die.to_board_kpw - to_case,
        sink=sink,
        warming=warming,
    )


def _impedance(bank: BankCase, point: Point, settled_kpw: float) -> Impedance:
    """Known impedance, or what the point holds for it at any time."""
    bound = point.get(bank.prefix + "transient_impedance", settled_kpw)
    return case_impedance(bank.switch, settled_kpw=min(bound, settled_kpw))


def _is_massless(bank: BankCase, point: Point) -> bool:
    """Whether the junction of a part follows its heat at once."""
    settled = point.get(bank.prefix + "junction_case", 0.0)
    return not has_impedance(bank.switch) and point.get(bank.prefix + "transient_impedance", settled) >= settled
