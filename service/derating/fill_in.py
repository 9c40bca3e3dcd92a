"""The board with every default that it leaves open filled in, each named as what it is."""

from dataclasses import replace

from service.facts.board import Board, Cooling
from service.facts.sourced import Known, Sourced

JUNCTION_TO_AIR = Sourced(
    value=50.0,
    unit="K/W",
    known=Known.CLASS_DEFAULT,
    low=40.0,
    high=60.0,
    name="one switch on its own copper, without mutual heating",
)
CASE_TO_BOARD = Sourced(
    value=5.0,
    unit="K/W",
    known=Known.ASSUMED,
    low=0.5,
    high=12.0,
    name="from a soldered tab to one on a plastic-insulated pad; own estimate",
)
BOARD_TO_AIR = Sourced(
    value=6.0,
    unit="K/W",
    known=Known.ASSUMED,
    low=2.0,
    high=20.0,
    name="from a large dark plate to a small bare board; own estimate",
)
# Why assumed at all: laminate chars long before silicon fails, and the sheets of the switches do not speak of it.
BOARD_LIMIT_C = Sourced(value=130.0, unit="degC", known=Known.CLASS_DEFAULT, low=120.0, high=140.0, name="glass-epoxy laminate")


def filled_in(board: Board) -> Board:
    """The board with its defaults.

    Args:
        board: As stated.

    Returns:
        The same with cooling and charge current complete; what has no default stays open.
    """
    claim = board.claim
    if claim.continuous_charge_a is None:
        discharge_a = claim.continuous_a.value
        name = "at most the discharge claim, since nothing is said; seldom below a tenth of it"
        charge = Sourced(value=discharge_a, unit="A", known=Known.ASSUMED, low=0.1 * discharge_a, high=discharge_a, name=name)
        claim = replace(claim, continuous_charge_a=charge)
    return replace(board, claim=claim, cooling=_cooling(board.cooling))


def _cooling(cooling: Cooling) -> Cooling:
    """A whole chain where one link of it is known, else the simple form."""
    if cooling.case_to_board_kpw is None and cooling.board_to_air_kpw is None:
        return cooling if cooling.junction_to_air_kpw else replace(cooling, junction_to_air_kpw=JUNCTION_TO_AIR)
    return replace(
        cooling,
        junction_to_air_kpw=None,
        case_to_board_kpw=cooling.case_to_board_kpw or CASE_TO_BOARD,
        board_to_air_kpw=cooling.board_to_air_kpw or BOARD_TO_AIR,
        board_limit_c=cooling.board_limit_c or BOARD_LIMIT_C,
    )
