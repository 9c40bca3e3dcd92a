"""Facts that a finding shows beside the quantities it read: the claim, the count, printed values that only one end uses, a prolonged curve."""

from math import inf

from service.derating.case import BankCase, Case, Corner
from service.derating.formulas.ratio_model import Curve
from service.derating.spoken import spoken
from service.facts.finding import Input
from service.facts.sourced import Known, Sourced


def stated(bank: BankCase) -> tuple[Input, ...]:
    """What was claimed of a bank and counted on it.

    Args:
        bank: The bank.

    Returns:
        Claimed current, number of switches, and the printed typical on-resistance where there is one.
    """
    counted = Sourced(value=float(bank.switches), unit="1", known=Known.COUNTED)
    found = [Input(name="claimed_current", sourced=bank.claimed_a), Input(name=f"{bank.name}_switches", sourced=counted)]
    if bank.drive is not None:
        row = bank.drive.row(bank.drive.volts.favourable)
        if row.typical and row.largest:
            found.append(Input(name=bank.prefix + "on_resistance_typical", sourced=row.typical.sourced))
    return tuple(found)


def prolonged(case: Case, bank: BankCase, junction_c: float) -> str:
    """A warning where a junction is hotter than the sheet's curve of on-resistance reaches.

    Args:
        case: The board under one rule set.
        bank: Whose part it is.
        junction_c: Hottest junction of the finding; infinite where nothing settles. [degC]

    Returns:
        A clause to put behind the sentence; empty where the curve reaches, or where none is used.
    """
    ratio = case.ratio(bank, case.point(Corner.WORST))
    if not isinstance(ratio, Curve) or not ratio.last_c < junction_c < inf:
        return ""
    return f"; extrapolated, because the sheet's curve of on-resistance ends at {spoken(ratio.last_c, 'degC')}"
