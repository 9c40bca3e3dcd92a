"""From a board to a report: every check in order, the one that limits, how much would still hold, and what nobody should forget."""

from service.derating.case import Case
from service.derating.checks import CHECKS
from service.derating.inverse import ALIKE, inverses
from service.derating.measure_next import ranked
from service.derating.open_case import open_case
from service.derating.version import ENGINE_VERSION
from service.facts.board import Board
from service.facts.finding import Finding, Provisional, Report

CAUTIONS = (
    "A calculation, not a certificate: it knows only what was read, counted, measured or assumed above.",
    "Opening a pack and working on live cells can burn, blind and kill: cells cannot be switched off. Remove jewellery, cover what you do not touch.",
    "Nothing here replaces the maker's instructions, the local code or the judgement of a licensed person.",
    "Counterfeit and relabelled switches do not keep the sheet of the name that they bear.",
)
STACKED = "Packs in series: every part that sees the string's voltage must bear it, and a maker who forbids stacking has the last word."


def assess(board: Board, *, rule_set: str | None = None) -> Report:
    """Judge a board.

    Args:
        board: As stated; what it leaves open is filled with named defaults or stays open.
        rule_set: maker, trade-80 or eee-inst-002; the board's own where none is named.

    Returns:
        All findings with the check that limits, the inverse answers and the cautions.

    Raises:
        ValueError: Nobody knows the rule set.
    """
    case = open_case(board, rules=rule_set)
    findings = tuple(finding for check in CHECKS for finding in check.run(case))
    return Report(
        engine_version=ENGINE_VERSION,
        rule_set=case.rules.name,
        board=case.board,
        findings=findings,
        limiting=limiting(findings),
        provisional=_provisional(board),
        inverse=inverses(case),
        cautions=_cautions(case),
        measure_next=ranked(case, findings),
    )


def limiting(findings: tuple[Finding, ...]) -> str | None:
    """The check with the smallest margin in the worst corner; of equal ones the first in the report.

    Args:
        findings: In the order of the report.

    Returns:
        Its name; None where no finding has a margin. Scenarios never limit.
    """
    least: float | None = None
    name: str | None = None
    for finding in findings:
        margin = None if finding.scenario or finding.margin is None else finding.margin.worst
        if margin is not None and (least is None or margin < least - ALIKE * abs(least)):
            least, name = margin, finding.check
    return name


def _provisional(board: Board) -> Provisional:
    """Whether a part was typed, or readings still wait for a person."""
    switches = (board.discharge_bank.switch, board.charge_bank.switch)
    waiting = tuple(dict.fromkeys(reading for switch in switches for reading in switch.look_at))
    return Provisional(value=bool(waiting) or any(switch.typed for switch in switches), look_at=waiting)


def _cautions(case: Case) -> tuple[str, ...]:
    """What holds for every result, and what holds for this one."""
    return (*CAUTIONS, STACKED) if case.board.claim.packs_in_series > 1 else CAUTIONS
