"""Every quantity that a board's judgement rests on, with its ends: what the board says, else the named default."""

from collections.abc import Iterator

from service.derating import conduction_figures as conduction
from service.derating import figures
from service.derating.figures import Ends
from service.derating.quantity import Quantity
from service.derating.wordings import WORDINGS
from service.facts.board import Bank, Board
from service.facts.sourced import Sourced

# Moving the first moves the second along.
FOLLOWS = {"on_resistance": "gate_voltage"}


def quantity(name: str, ends: Ends, *, prefix: str = "") -> Quantity:
    """A quantity under its public name.

    Args:
        name: Public name.
        ends: Its figures and what they rest on.
        prefix: ``discharge_`` or ``charge_`` where the banks' parts differ.

    Returns:
        The quantity, with its wording where there is one.
    """
    return Quantity(
        key=prefix + name,
        name=name,
        unit=ends.sourced.unit,
        favourable=ends.favourable,
        nominal=ends.nominal,
        worst=ends.worst,
        sourced=ends.sourced,
        wording=WORDINGS.get(name),
        follows=prefix + FOLLOWS[name] if name in FOLLOWS else None,
    )


def of_board(board: Board) -> Iterator[Quantity]:
    """Quantities of the board itself.

    Args:
        board: With its defaults filled in.

    Yields:
        What is known or assumed about cooling, path and voltages.
    """
    cooling = board.cooling
    rising: tuple[tuple[str, Sourced | None], ...] = (
        ("ambient", cooling.ambient_c),
        ("junction_to_air", cooling.junction_to_air_kpw),
        ("case_to_board", cooling.case_to_board_kpw),
        ("board_to_air", cooling.board_to_air_kpw),
        ("shunt_resistance", board.shunt_ohm),
        ("joints", board.joints_ohm),
        ("charge_voltage", board.cells.charge_v),
    )
    for name, sourced in rising:
        if sourced is not None:
            yield quantity(name, figures.larger_is_worse(sourced))
    for name, sourced in (("board_limit", cooling.board_limit_c), ("board_heat_capacity", cooling.board_heat_jpk)):
        if sourced is not None:
            yield quantity(name, figures.smaller_is_worse(sourced))


def of_bank(bank: Bank, drive: conduction.GateDrive | None, *, prefix: str) -> Iterator[Quantity]:
    """Quantities of a bank's part.

    Args:
        bank: The bank.
        drive: Which on-resistance rows count; None where no bound exists.
        prefix: Of the keys.

    Yields:
        What the part's sheet says, and the defaults of its class where it is silent.
    """
    drain = figures.drain_voltage(bank.switch)
    found: list[tuple[str, Ends | None]] = [
        ("drain_voltage", None if drain is None else figures.single(drain)),
        ("junction_max", figures.junction_max(bank.switch)),
        ("junction_case", figures.junction_case(bank.switch)),
        ("package_current", figures.package_current(bank.switch)),
    ]
    if drive is not None:
        row = drive.row(drive.volts.worst)
        found += [
            ("gate_voltage", drive.volts),
            ("on_resistance", drive.on_resistance()),
            ("current_spread", conduction.spread(row)),
            ("on_resistance_exponent", conduction.exponent(bank.switch, row, drive.rows)),
        ]
    for name, ends in found:
        if ends is not None:
            yield quantity(name, ends, prefix=prefix)
