"""The card of a check, and how to write one.

A check answers one question. It lives in one file of ``checks/`` and ends with its card::

    CHECK = Check(name="gate_drive", question="...?", method="...", source="...", needs=("switch.vgs_max", ...), run=run)

``run`` takes a :class:`~service.derating.case.Case` and gives findings, normally one a bank. It follows four steps:

1. Ask for what it needs. A missing datum without a safe bound ends in ``not_determined(...)`` of ``weighing.py``.
2. Write the margin as a plain function of a *point* (a number for each quantity): limit over demand, or for a thermal check the
   largest current over the claimed one. The function may rest on ``case.settle(...)`` and on formulas; it must not fall as a
   quantity moves to its favourable end.
3. Call ``weigh(case, margin=..., uses=(...))``. It compares both ends, seeks the threshold of each open quantity with the others
   at their worst, and notes each default with the value at which the outcome would flip.
4. Turn the weighing into a finding: ``weighed.finding(check=..., bank=..., text=..., ...)``.

A quantity that only one check knows is added with ``case.with_quantities(...)``. Answers to "how much would still hold?" go into
the card's ``inverses``: by the key of the report's ``inverse`` (continuous_a, ambient_degc, packs_in_series, surge_s, switches) a
function from a case to a number; None says that this check sets no bound. The report takes the smallest (for switches the largest)
over all checks that are no scenario.

Why the card: the report, the pages and the documents all walk one list of cards, so nothing is said twice.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from service.derating.case import BankCase, Case
from service.derating.quantity import Point
from service.facts.finding import Finding


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One question of the report.

    Attributes:
        name: As the report names it.
        question: What it answers, as a person would ask.
        method: How it answers, in a sentence or two.
        source: What the method rests on: keys of ``service/facts/references.py`` with place, or "own" with its reason.
        needs: Facts that it rests on, dotted.
        run: From a case to its findings.
        scenario: Whether it is a what-if that never names the limiting check.
        margin: From a bank and a point to limit over demand, for a check that settles temperatures; None where data are
            missing. Lets others ask what would help.
        inverses: Largest (or least) values that still hold in the worst corner, by the key of the report.
    """

    name: str
    question: str
    method: str
    source: str
    needs: tuple[str, ...]
    run: Callable[[Case], tuple[Finding, ...]]
    scenario: bool = False
    margin: Callable[[Case, BankCase, Point], float | None] | None = None
    inverses: Mapping[str, Callable[[Case], float | None]] = field(default_factory=dict)
