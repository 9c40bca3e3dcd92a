"""See a result: the frozen report, whether it is still up to date, and what a person has yet to look at."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from service.facts.result import Result
from service.usecases.compare_results import Comparison, compare_with_before
from service.usecases.ports import Store
from service.usecases.report_pictures import CurveTable, curve_tables
from service.usecases.report_view import (
    Answer,
    ClaimAnswer,
    Finding,
    OpenQuestion,
    answers,
    assumed,
    by_margin,
    claim_answers,
    not_judged,
    open_questions,
    scenarios,
)
from service.usecases.see_part import PrintedValue, printed_value
from service.usecases.working import Working, working

# Why three: more numbers than that are nodded through and not compared (common practice, no source).
MOST_AT_ONE_LOOK = 3


class UnknownResultError(LookupError):
    """No result has this identity."""

    def __init__(self, result_id: str) -> None:
        super().__init__(f"There is no result {result_id!r}; the bench lists the results.")


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultView:
    """A result as a person sees it today.

    Attributes:
        result: The frozen result.
        report: Its report, as the contract's JSON object.
        to_look_at: Printed values that it uses and that no person has settled yet, as they stand today.
        looks: The same, as many at a time as a person can compare at one look.
        settled: How many of the values that it uses a person has settled.
        provisional: Whether it waits for a person, or rests on a part without a sheet.
        compared: The same board judged before; None where this is the first result of it.
        claims: One answer a claim.
        answers: Largest and least values that still hold.
        by_margin: Findings that are no scenarios, the smallest margin first.
        scenarios: The what-ifs.
        not_judged: Findings that wait for a datum.
        open: What would decide an outcome.
        assumed: Every default that was used.
        workings: How each finding was reached, in the same order, the what-ifs last.
        curves: What its pictures show, in numbers, by kind.
        banks_differ: Whether its two banks are judged apart.
    """

    result: Result
    report: dict[str, Any]
    to_look_at: tuple[PrintedValue, ...]
    looks: tuple[tuple[PrintedValue, ...], ...]
    settled: int
    provisional: bool
    compared: Comparison | None
    claims: tuple[ClaimAnswer, ...]
    answers: tuple[Answer, ...]
    by_margin: list[Finding]
    scenarios: list[Finding]
    not_judged: list[Finding]
    open: tuple[OpenQuestion, ...]
    assumed: tuple[Mapping[str, Any], ...]
    workings: tuple[Working, ...]
    curves: dict[str, CurveTable]
    banks_differ: bool


def see_result(store: Store, *, result_id: str) -> ResultView:
    """Gather a result with the state of its inputs today.

    Args:
        store: Where things are kept.
        result_id: Its identity.

    Raises:
        UnknownResultError: There is none.
    """
    with store.looking() as shelf:
        result = shelf.results.find(result_id)
        if result is None:
            raise UnknownResultError(result_id)
        entries = [entry for reading_id in result.look_at if (entry := shelf.readings.find(reading_id))]
        waiting = tuple(printed_value(shelf, entry) for entry in entries if not entry.seen_by_a_person)
        compared = compare_with_before(shelf, result)
    report = json.loads(result.report)
    return ResultView(
        result=result,
        report=report,
        to_look_at=waiting,
        looks=looks_of(waiting),
        settled=len(entries) - len(waiting),
        provisional=result.typed or bool(waiting),
        compared=compared,
        claims=claim_answers(report),
        answers=answers(report),
        by_margin=by_margin(report),
        scenarios=scenarios(report),
        not_judged=not_judged(report),
        open=open_questions(report),
        assumed=assumed(report),
        workings=tuple(working(finding, report) for finding in by_margin(report) + scenarios(report)),
        curves=curve_tables(report),
        banks_differ=report["board"]["charge_bank"] != report["board"]["discharge_bank"],
    )


def looks_of(values: Iterable[PrintedValue]) -> tuple[tuple[PrintedValue, ...], ...]:
    """Part values into looks: neighbours on one page of one file, three at most.

    Args:
        values: In any order.

    Returns:
        The looks, in the order of the pages.
    """
    pages: dict[tuple[str, int], list[PrintedValue]] = {}
    for value in values:
        pages.setdefault((value.entry.sha256, value.entry.reading.page), []).append(value)
    looks: list[tuple[PrintedValue, ...]] = []
    for page in sorted(pages):
        rows = sorted(pages[page], key=lambda value: (value.entry.reading.bbox[1], value.entry.reading.bbox[0]))
        looks += [tuple(rows[first : first + MOST_AT_ONE_LOOK]) for first in range(0, len(rows), MOST_AT_ONE_LOOK)]
    return tuple(looks)
