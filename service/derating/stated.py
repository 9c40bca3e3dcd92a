"""Facts that a finding shows beside the quantities it read: the claim, the count, and printed values that only the favourable end uses."""

from service.derating.case import BankCase
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
