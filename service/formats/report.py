"""A report as switchbank.report/1."""

from service.facts.finding import Assumption, BothEnds, Condition, Figure, Finding, Input, Inverse, Measure, Report
from service.facts.source import Source
from service.facts.sourced import Attestation, Sourced
from service.formats.board_json import board_json
from service.formats.json_text import finite

SCHEMA = "switchbank.report/1"
Written = dict[str, object]


def report_json(report: Report) -> Written:
    """Write a report in the order of the contract.

    Args:
        report: All findings of one board.

    Returns:
        Plain tables; no times, hosts or paths.
    """
    return {
        "schema": SCHEMA,
        "engine_version": report.engine_version,
        "rule_set": report.rule_set,
        "board": board_json(report.board),
        "findings": [finding_json(finding) for finding in report.findings],
        "limiting": report.limiting,
        "provisional": {"value": report.provisional.value, "look_at": list(report.provisional.look_at)},
        "inverse": {name: _inverse(inverse) for name, inverse in report.inverse.items()},
        "cautions": list(report.cautions),
        "measure_next": [_measure(measure) for measure in report.measure_next],
    }


def finding_json(finding: Finding) -> Written:
    """Write one finding in the order of the contract."""
    margin = finding.margin
    return {
        "check": finding.check,
        "bank": finding.bank,
        "scenario": finding.scenario,
        "outcome": finding.outcome.value if finding.outcome else None,
        "text": finding.text,
        "demand": _figure(finding.demand),
        "limit": _figure(finding.limit),
        "margin": None if margin is None else {"worst": finite(margin.worst), "favourable": finite(margin.favourable)},
        "condition": None if finding.condition is None else _condition(finding.condition),
        "conditions": [_condition(condition) for condition in finding.conditions],
        "missing": list(finding.missing),
        "formula": finding.formula,
        "inputs": [_input(used) for used in finding.inputs],
        "assumptions": [_assumption(assumption) for assumption in finding.assumptions],
        "values": {name: _both_ends(value) for name, value in finding.values.items()},
    }


def _figure(figure: Figure | None) -> Written | None:
    """A named quantity."""
    return None if figure is None else {"quantity": figure.quantity, "value": finite(figure.value), "unit": figure.unit}


def _condition(condition: Condition) -> Written:
    """What decides a *holds if*."""
    value = condition.value if isinstance(condition.value, bool) else finite(condition.value)
    return {
        "quantity": condition.quantity,
        "relation": condition.relation.value,
        "value": value,
        "unit": condition.unit,
        "text": condition.text,
    }


def _input(used: Input) -> Written:
    """A fact with how it is known and where it stands."""
    fact = used.sourced
    return {"name": used.name, "value": finite(fact.value), "unit": fact.unit, **known_json(fact)}


def known_json(fact: Sourced) -> Written:
    """How a fact is known, and where it stands."""
    return {"known": fact.known.value, "source": None if fact.source is None else _source(fact.source), **_further(fact)}


def _further(fact: Sourced) -> Written:
    """The band, the person and the basis of a fact, where it has them."""
    attested = fact.attested or Attestation()
    further = {
        "low": fact.low,
        "high": fact.high,
        "by": attested.by,
        "on": attested.on,
        "with": attested.instrument,
        "basis": fact.name or None,
    }
    return {name: value for name, value in further.items() if value is not None}


def _source(source: Source) -> Written:
    """A place on a page."""
    return {
        "sha256": source.sha256,
        "page": source.page,
        "bbox": list(source.bbox),
        "quote": source.quote,
        "reading": source.reading,
    }


def _assumption(assumption: Assumption) -> Written:
    """A default, its band, and where it would flip the outcome."""
    return {
        "name": assumption.name,
        "used": finite(assumption.used),
        "low": finite(assumption.low),
        "high": finite(assumption.high),
        "unit": assumption.unit,
        "flips_at": finite(assumption.flips_at),
        "basis": assumption.basis,
    }


def _both_ends(value: BothEnds) -> Written:
    """A figure in both corners."""
    return {"favourable": finite(value.favourable), "worst": finite(value.worst), "unit": value.unit}


def _inverse(inverse: Inverse) -> Written:
    """A largest or least value that still holds."""
    return {
        "value": finite(inverse.value),
        "unit": inverse.unit,
        "check": inverse.check,
        "by_rule_set": {name: finite(value) for name, value in inverse.by_rule_set.items()},
    }


def _measure(measure: Measure) -> Written:
    """Something open that is worth measuring."""
    return {
        "quantity": measure.quantity,
        "low": finite(measure.low),
        "high": finite(measure.high),
        "unit": measure.unit,
        "decides": finite(measure.decides),
        "how": measure.how,
    }
