"""What heat over time needs and nobody may know: the heat that the board holds, and the impedance before it has settled.

Where nobody knows the heat that the board holds, none is the safe bound: the board stands at its settled surge temperature at once.
Where nobody knows the transient impedance, the settled resistance from junction to case is the safe bound at any time.
"""

from service.derating.case import BankCase, Case
from service.derating.case_impedance import has_impedance
from service.derating.figures import Ends, default
from service.derating.quantities import quantity
from service.derating.quantity import Quantity, Wording

# Beyond this time the impedance to the case has settled (NXP/Nexperia AN11158 rev 4, p.24).
SETTLED_AFTER_S = 0.1
# As good as endless for a board that a person can lift. [J/K]
MOST_BOARD_HEAT_JPK = 1e5


def with_surge_quantities(case: Case, *, seconds: float) -> Case:
    """The case with the two quantities that only heat over time knows, where they are not stated.

    Args:
        case: The board under one rule set.
        seconds: How long the surge lasts. [s]

    Returns:
        The same with the board's heat capacity and each part's transient impedance.
    """
    more = {} if "board_heat_capacity" in case.quantities else {"board_heat_capacity": _unknown_heat()}
    for bank in case.banks:
        settled = case.quantities.get(bank.prefix + "junction_case")
        if settled is not None and not has_impedance(bank.switch):
            more[bank.prefix + "transient_impedance"] = _unknown_impedance(bank, settled, seconds)
    return case.with_quantities(more.values())


def _unknown_heat() -> Quantity:
    """A board whose heat capacity nobody knows."""
    name = "nobody knows how much heat the board holds; none is the safe bound"
    guess = default(0.0, "J/K", name, low=0.0, high=MOST_BOARD_HEAT_JPK)
    return quantity("board_heat_capacity", Ends(favourable=MOST_BOARD_HEAT_JPK, nominal=0.0, worst=0.0, sourced=guess))


def _unknown_impedance(bank: BankCase, settled: Quantity, seconds: float) -> Quantity:
    """A part whose transient impedance nobody knows: between nothing and the settled resistance, the latter after a tenth of a second."""
    low = 0.0 if seconds < SETTLED_AFTER_S else settled.favourable
    guess = default(settled.worst, "K/W", "RthJC is a safe upper bound at any time", low=low, high=settled.worst)
    return Quantity(
        key=bank.prefix + "transient_impedance",
        name="transient_impedance",
        unit="K/W",
        favourable=low,
        nominal=settled.nominal,
        worst=settled.worst,
        sourced=guess,
        wording=Wording(
            phrase=f"the transient impedance from junction to case after {seconds:g} s is {{value}} or less",
            how="Read the curve of transient thermal impedance in the datasheet at that time, or type a few of its points.",
            effort=2,
            lowest=0.0,
            highest=1e3,
        ),
    )
