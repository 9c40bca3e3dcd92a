"""How much would still hold in the worst corner: current, ambient, stack, surge time, number of switches; and what a part would have to be."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite

from service.derating.case import Case
from service.derating.checks import CHECKS
from service.derating.rule_set import RuleSet
from service.derating.rules import RULE_SETS
from service.facts.finding import Inverse

UNITS: Mapping[str, str] = {
    "continuous_a": "A",
    "ambient_degc": "degC",
    "packs_in_series": "1",
    "surge_s": "s",
    "switches": "1",
    "continuous_a_junction": "A",
}
# Of these the largest counts: every check needs at least its own number.
LEAST_OF_ALL = frozenset({"switches"})
# Two checks within a millionth limit alike; the earlier one in the report is named.
ALIKE = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class _Answer:
    """A value and the check that sets it."""

    value: float
    check: str


def inverses(case: Case) -> dict[str, Inverse]:
    """Every inverse answer of a board, under its own rule set and under each of the others.

    Args:
        case: The board under its rule set.

    Returns:
        By the report's keys.
    """
    return {key: _inverse(case, key, unit) for key, unit in UNITS.items()}


def _inverse(case: Case, key: str, unit: str) -> Inverse:
    """One answer."""
    found: dict[tuple[float, ...], _Answer | None] = {}
    answers: dict[str, _Answer | None] = {}
    for name, rules in RULE_SETS.items():
        bearing = _bearing(case, rules, key)
        if bearing not in found:
            found[bearing] = _answer(case.under(rules), key)
        answers[name] = found[bearing]
    own = answers[case.rules.name]
    by_rule_set = {name: _finite(answer) for name, answer in answers.items()}
    return Inverse(value=_finite(own), unit=unit, check=own.check if own else None, by_rule_set=by_rule_set)


def _bearing(case: Case, rules: RuleSet, key: str) -> tuple[float, ...]:
    """What of a rule set bears on an answer: rule sets that agree in it give the same one."""
    if key == "packs_in_series":
        return (rules.drain_voltage_factor,)
    limits = (rules.junction_limit_c(case.quantities[bank.prefix + "junction_max"].worst) for bank in case.banks)
    return (rules.gate_voltage_factor, rules.current_factor, rules.power_factor, *limits)


def _answer(case: Case, key: str) -> _Answer | None:
    """The check that binds: the smallest answer, or for a least number the largest."""
    sign = -1.0 if key in LEAST_OF_ALL else 1.0
    found: _Answer | None = None
    for check in CHECKS:
        value = check.inverses[key](case) if key in check.inverses and not check.scenario else None
        if value is not None and (found is None or sign * value < sign * found.value - ALIKE * abs(found.value)):
            found = _Answer(value=value, check=check.name)
    return found


def _finite(answer: _Answer | None) -> float | None:
    """The value, or None where there is none or no number is enough."""
    return answer.value if answer is not None and isfinite(answer.value) else None
