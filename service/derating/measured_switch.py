"""A part whose on-resistance was measured on the board: the measured band takes the place of every printed row."""

from dataclasses import replace

from service.facts.board import Bank
from service.facts.reading import Conditions, Limit
from service.facts.sourced import Sourced
from service.facts.switch import RatedValue, Switch


def as_measured(switch: Switch, bank: Bank, *, gate_v: Sourced | None) -> Switch:
    """The part as its sheet and the bench describe it.

    Args:
        switch: As its sheet describes it.
        bank: That carries it; the measured on-resistance is that of one switch at 25 degC.
        gate_v: Of the board, at which it was measured. [V]

    Returns:
        The same, with the band's ends as typical and largest on-resistance where somebody measured.
    """
    measured = bank.on_resistance_ohm
    if measured is None:
        return switch
    cond = Conditions(vgs=gate_v.least if gate_v else None)
    rows = tuple(
        RatedValue(key="rds_on", limit=limit, sourced=replace(measured, value=value, low=None, high=None), cond=cond)
        for limit, value in ((Limit.TYP, measured.least), (Limit.MAX, measured.most))
    )
    return replace(switch, values=(*(value for value in switch.values if value.key != "rds_on"), *rows))
