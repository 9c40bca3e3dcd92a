"""Arrange a report for a person: one answer a claim, the smallest margin first, what is open, what was assumed.

Everything here works on the report's JSON object (schema switchbank.report/1), so that a frozen result of an older engine can be shown too.
"""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

Finding = Mapping[str, Any]

# From the one that matters most: a claim is as good as the worst finding about it, and a threshold says more than a missing datum.
WORST_FIRST = ("fails", "holds if", "not determined", "holds")

CURRENT = ("continuous_current", "package_current", "power_rating", "gate_drive", "current_sharing", "shunt")
SURGE = ("surge_current", "pulsed_current")
STACK = ("drain_source_voltage",)


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimAnswer:
    """What is said of one claim.

    Attributes:
        words: The claim.
        outcome: The worst outcome of the checks that bear on it.
        sentence: What the deciding check says.
        check: The deciding check.
    """

    words: str
    outcome: str
    sentence: str
    check: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A largest or least value that still holds.

    Attributes:
        words: What it is.
        value: In the unit; None where none can be given.
        unit: Its unit.
        because: The check that limits it.
    """

    words: str
    value: float | None
    unit: str
    because: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Measurable:
    """Where a measurement of an open quantity goes.

    Attributes:
        key: Key of the board document.
        example: How the answer is written.
    """

    key: str
    example: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenQuestion:
    """A quantity that would decide an outcome.

    Attributes:
        text: The condition in words.
        quantity: Its name.
        how: How to measure it or look it up, as the engine says; empty where it says nothing.
        measurable: Where the measurement goes; None where it is not typed here.
    """

    text: str
    quantity: str
    how: str
    measurable: Measurable | None


ANSWERS = (
    ("continuous_a", "largest current for hours", "A"),
    ("continuous_a_junction", "by the junction limit alone", "A"),
    ("ambient_degc", "hottest air", "degC"),
    ("packs_in_series", "packs in series, as far as the switches go", ""),
    ("surge_s", "claimed surge lasts", "s"),
    ("switches", "switches per bank needed", ""),
)

# No pack is used in colder air; an answer below it says that none is cold enough.
COLDEST_AIR_C = -50.0

MEASURABLE = {
    "junction_to_air": Measurable(
        key="cooling.junction_to_air",
        example="47 K/W",
    ),
    "case_to_board": Measurable(
        key="cooling.case_to_board",
        example="4 K/W",
    ),
    "board_to_air": Measurable(
        key="cooling.board_to_air",
        example="2.5 K/W",
    ),
    "board_heat_capacity": Measurable(
        key="cooling.board_heat_capacity",
        example="55 J/K",
    ),
    "ambient": Measurable(key="cooling.ambient", example="45 °C"),
    "gate_voltage": Measurable(
        key="board.gate_voltage",
        example="10.5 V",
    ),
    "protection_delay": Measurable(
        key="fault.protection_delay",
        example="250 us",
    ),
    "loop_inductance": Measurable(
        key="fault.loop_inductance",
        example="1.2 uH",
    ),
    "recloses_on_current": Measurable(
        key="board.recloses_on_current",
        example="yes",
    ),
    "charger_voltage": Measurable(key="board.charger_voltage", example="29.4 V"),
    "shunt": Measurable(key="board.shunt", example="0.25 mohm"),
}


def claim_answers(report: Mapping[str, Any]) -> tuple[ClaimAnswer, ...]:
    """One answer a claim: current for hours, surge, packs in series."""
    claim = report["board"]["claim"]
    surge = ((f"{_plain(claim['surge'])} surge", SURGE),) if "surge" in claim else ()
    asked = ((f"{_plain(claim['continuous'])} for hours", CURRENT), *surge, (_stack(claim), STACK))
    return tuple(answer for words, checks in asked if (answer := _claim_answer(report, words, checks)))


def _claim_answer(report: Mapping[str, Any], words: str, checks: tuple[str, ...]) -> ClaimAnswer | None:
    """The worst finding about a claim; None where no check bears on it."""
    about = [f for f in report["findings"] if f["check"] in checks and f["outcome"] and not f.get("scenario") and not _not_described(f)]
    if not about:
        return None
    worst = min(about, key=lambda f: _deciding(f, checks))
    condition = worst.get("condition")
    sentence = condition["text"] if worst["outcome"] == "holds if" and condition else _without_outcome(worst)
    return ClaimAnswer(words=words, outcome=worst["outcome"], sentence=sentence, check=worst["check"])


def _deciding(finding: Finding, checks: tuple[str, ...]) -> tuple[int, float]:
    """Order findings by how much they decide; where all hold, the claim's own question answers for them."""
    outcome = WORST_FIRST.index(finding["outcome"])
    return outcome, checks.index(finding["check"]) if finding["outcome"] == "holds" else _margin(finding)


def _without_outcome(finding: Finding) -> str:
    """A finding's sentence without the outcome that stands before it on the page."""
    text = str(finding.get("text") or "").removesuffix(f": {finding['outcome']}")
    return text[:1].upper() + text[1:]


def _not_described(finding: Finding) -> bool:
    """Whether a finding only says that a part of the board was not described; it is listed apart and hides no answer about the switches."""
    return (finding["check"], finding["outcome"]) == ("shunt", "not determined")


def not_judged(report: Mapping[str, Any]) -> list[Finding]:
    """Findings that wait for a datum, what-ifs too."""
    return _alike_once(f for f in report["findings"] if f["outcome"] == "not determined")


def by_margin(report: Mapping[str, Any]) -> list[Finding]:
    """Findings that are no scenarios, the smallest margin first; those without a margin last."""
    return sorted(_alike_once(f for f in report["findings"] if not f.get("scenario")), key=_margin)


def scenarios(report: Mapping[str, Any]) -> list[Finding]:
    """The what-ifs, in the order of the report."""
    return _alike_once(f for f in report["findings"] if f.get("scenario"))


def _alike_once(findings: Iterable[Finding]) -> list[Finding]:
    """Say once what is said of both banks alike."""
    said: dict[str, Finding] = {}
    for finding in findings:
        figures = [finding["check"], *(finding.get(name) for name in ("outcome", "demand", "limit", "margin", "missing"))]
        alike = json.dumps(figures, sort_keys=True)
        said[alike] = {**said[alike], "bank": "both"} if alike in said else finding
    return list(said.values())


def answers(report: Mapping[str, Any]) -> tuple[Answer, ...]:
    """The largest and least values that still hold."""
    inverse = report.get("inverse") or {}
    return tuple(
        Answer(words=words, value=_thinkable(name, inverse[name]["value"]), unit=unit, because=inverse[name].get("check"))
        for name, words, unit in ANSWERS
        if name in inverse and inverse[name]["value"] is not None
    )


def _thinkable(name: str, value: float) -> float | None:
    """A value, or none where nothing on earth is enough."""
    return None if name == "ambient_degc" and value < COLDEST_AIR_C else value


def open_questions(report: Mapping[str, Any]) -> tuple[OpenQuestion, ...]:
    """What would decide an outcome, each quantity once: in the order in which the engine would measure, then by the smallest margin."""
    texts: dict[str, str] = {}
    for finding in by_margin(report) + scenarios(report):
        for condition in ([finding["condition"]] if finding.get("condition") else []) + list(finding.get("conditions") or []):
            texts.setdefault(condition["quantity"], condition["text"])
    how = {one["quantity"]: one["how"] for one in report.get("measure_next") or []}
    order = [name for name in how if name in texts] + [name for name in texts if name not in how]
    return tuple(OpenQuestion(text=texts[name], quantity=name, how=how.get(name, ""), measurable=MEASURABLE.get(name)) for name in order)


def assumed(report: Mapping[str, Any]) -> tuple[Mapping[str, Any], ...]:
    """Every default that was used, once, with the nearest value at which an outcome flips."""
    found: dict[str, Mapping[str, Any]] = {}
    for finding in report["findings"]:
        for item in finding.get("assumptions") or []:
            before = found.get(item["name"])
            if before is None or _distance(item) < _distance(before):
                found[item["name"]] = item
    return tuple(found.values())


def _distance(item: Mapping[str, Any]) -> float:
    """How near an assumption stands to the value at which an outcome flips."""
    return float("inf") if item.get("flips_at") is None else abs(item["flips_at"] - item["used"])


def _margin(finding: Finding) -> float:
    """The worst margin, infinite where there is none."""
    margin = finding.get("margin")
    return float("inf") if not margin or margin["worst"] is None else float(margin["worst"])


def _plain(quantity: object) -> str:
    """A quantity of a board document as it was written."""
    return str(quantity.get("value")) if isinstance(quantity, Mapping) else str(quantity)


def _stack(claim: Mapping[str, Any]) -> str:
    """The stacking claim in words."""
    packs = claim.get("packs_in_series", 1)
    return "one pack alone" if packs == 1 else f"{packs} packs in series"
