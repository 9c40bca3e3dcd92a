"""Which bank passes its temperature limit first: the one that pictures show."""

from service.derating.case import BankCase, Case, Corner
from service.derating.thermal import largest_current_a, limits_of


def first_to_pass(case: Case, banks: tuple[BankCase, ...]) -> BankCase | None:
    """The bank with the smallest margin on its claimed current in the worst corner.

    Args:
        case: The board under one rule set.
        banks: Which of its banks to look at.

    Returns:
        The bank, of equal ones the hotter one; None where a bank's heat has no bound.
    """
    if any(case.lacks_conduction(bank) for bank in banks):
        return None
    return min(banks, key=lambda bank: _rank(case, bank))


def largest_worst_a(case: Case, bank: BankCase) -> float:
    """Largest current of a bank for hours in the worst corner [A]."""
    point = case.point(Corner.WORST)
    return largest_current_a(case.network(bank, point), limits_of(case, bank, point))


def _rank(case: Case, bank: BankCase) -> tuple[float, float]:
    """Order banks by their margin, and where a shared board gives both the same one by their junction."""
    point = case.point(Corner.WORST)
    current_a = case.claimed_a(bank, point)
    margin = largest_worst_a(case, bank) / current_a
    return round(margin, 6), -case.settle(bank, point, current_a=current_a).junctions_c[0]
