"""From a board as stated to a case that checks can work on."""

from dataclasses import replace

from service.derating import conduction_figures as conduction
from service.derating.case import CHARGE, DISCHARGE, BankCase, Case
from service.derating.figures import larger_is_worse
from service.derating.fill_in import filled_in
from service.derating.measured_switch import as_measured
from service.derating.quantities import of_bank, of_board, quantity
from service.derating.quantity import DEFAULTS, Quantity
from service.derating.rules import rule_set
from service.facts.board import Bank, Board, Port
from service.facts.sourced import Sourced
from service.facts.switch import RatedValue, Switch


def open_case(board: Board, *, rules: str | None = None) -> Case:
    """A board ready to be judged.

    Args:
        board: As stated.
        rules: Name of a rule set; the board's own where none is named.

    Returns:
        The case, with every default filled in.

    Raises:
        ValueError: Nobody knows the rule set.
    """
    whole = filled_in(board)
    alike = _part(whole.discharge_bank) == _part(whole.charge_bank)
    prefixes = ("", "") if alike else (f"{DISCHARGE}_", f"{CHARGE}_")
    found = {item.key: item for item in (*of_board(whole), *_unclaimed_charge(whole))}
    banks = []
    for name, bank, prefix in zip((DISCHARGE, CHARGE), (whole.discharge_bank, whole.charge_bank), prefixes, strict=True):
        one = replace(bank, switch=as_measured(narrowed(bank), bank, gate_v=whole.gate_v))
        drive = _drive(one.switch, whole)
        found.update({item.key: item for item in of_bank(one, drive, prefix=prefix)})
        banks.append(_bank_case(name, one, whole, drive, prefix))
    return Case(board=whole, rules=rule_set(rules or whole.rule_set), banks=(banks[0], banks[1]), quantities=found)


def _part(bank: Bank) -> tuple[Switch, Sourced | None]:
    """What makes two banks' parts alike: the sheet, and what was measured of it."""
    return bank.switch, bank.on_resistance_ohm


def known_gate_v(board: Board) -> Sourced | None:
    """The gate voltage where somebody states it; a default counts as unknown [V]."""
    return None if board.gate_v is None or board.gate_v.known in DEFAULTS else board.gate_v


def narrowed(bank: Bank) -> Switch:
    """The part with the figures of its own number and channel alone, where its sheet covers several.

    Args:
        bank: The bank.

    Returns:
        The part; figures that name neither stay, and so do all where none fits.
    """
    values = bank.switch.values
    for field, wanted in (("part", bank.switch.marking), ("ch", bank.channel)):
        own = tuple(value for value in values if _fits(value, field, wanted))
        values = own or values
    return replace(bank.switch, values=values)


def _fits(value: RatedValue, field: str, wanted: str | None) -> bool:
    """Whether a figure speaks of the part or channel that is wanted, or of all of them."""
    said = getattr(value.cond, field)
    return said is None or wanted is None or said.upper() == wanted.upper()


def _unclaimed_charge(board: Board) -> tuple[Quantity, ...]:
    """The charge current as an open quantity, where it has a port of its own and nobody claims it."""
    charge = board.claim.continuous_charge_a
    if charge is None or board.port is Port.COMMON or charge.known not in DEFAULTS:
        return ()
    return (quantity("charge_current", larger_is_worse(charge)),)


def _drive(switch: Switch, board: Board) -> conduction.GateDrive | None:
    """Which on-resistance rows count on this board."""
    return conduction.gate_drive(switch, known_gate_v(board), empty_pack_v=board.cells.in_series * board.cells.empty_v.least)


def _bank_case(name: str, bank: Bank, board: Board, drive: conduction.GateDrive | None, prefix: str) -> BankCase:
    """One bank with what its claim and its sheet say."""
    return BankCase(
        name=name,
        switch=bank.switch,
        switches=bank.switches,
        claimed_a=_claimed(name, board),
        prefix=prefix,
        curve=conduction.printed_curve(bank.switch),
        drive=drive,
    )


def _claimed(name: str, board: Board) -> Sourced:
    """The largest continuous current that is claimed through a bank; on a common port both directions pass both banks."""
    discharge, charge = board.claim.continuous_a, board.claim.continuous_charge_a or board.claim.continuous_a
    if board.port is Port.COMMON:
        return max(discharge, charge, key=lambda sourced: sourced.most)
    return discharge if name == DISCHARGE else charge
