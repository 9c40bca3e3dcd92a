"""One judgement for both banks where they are alike: equal parts, equal counts, equal currents."""

from collections.abc import Callable
from dataclasses import replace

from service.derating.case import CHARGE, DISCHARGE, BankCase, Case
from service.facts.finding import Finding


def each_bank(case: Case, judge: Callable[[Case, BankCase], Finding]) -> tuple[Finding, ...]:
    """A finding for each bank; banks that are alike are judged once.

    Args:
        case: The board under one rule set.
        judge: From a bank to its finding; its text speaks of "the discharge bank" or "the charge bank".

    Returns:
        Discharge, then charge.
    """
    first = judge(case, case.discharge)
    return first, _of_charge(first) if case.banks_alike else judge(case, case.charge)


def _of_charge(finding: Finding) -> Finding:
    """The same finding in the name of the charge bank."""
    inputs = tuple(replace(item, name=item.name.replace(DISCHARGE, CHARGE)) for item in finding.inputs)
    missing = tuple(item.replace(DISCHARGE, CHARGE) for item in finding.missing)
    return replace(finding, bank=CHARGE, text=finding.text.replace(DISCHARGE, CHARGE), inputs=inputs, missing=missing)
