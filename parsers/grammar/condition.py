"""Conditions as sheets print them: ``VGS = 10 V, ID = 20 A, TJ = 125 °C`` and its many spellings."""

import re
from collections.abc import Iterator, Mapping
from typing import Any

from parsers.grammar.number import MINUS, plain_value, without_marks
from service.facts.reading import Conditions

_SIGNED = rf"(?P<sign>[{MINUS}+±]|\+/-)?\s?(?P<digits>\d{{1,5}}(?:\s?[.,]\s?\d{{1,5}})?|\.\d{{1,5}})"
_EQUALS = r"\s*(?:=|\uff1d|@|:|at|≤|<=|<|\bis\b)\s*"
_FROM = rf"[{MINUS}+]?\s?[\d.]+\s*V?\s*(?:to|/|~|\.\.\.?|…)\s*"
"""The first end of a swing: ``VGS = 0 V to 10 V`` speaks of 10 V."""
_DEGREE = r"\s*(?:°|˚|º|o|θ|q|℃|\?|\ufffd)?\s*[C\uff23]?(?![A-Za-z])"

_NAMES = {
    "vgs": r"V\s?GSS?(?:\s?[AB])?|V\s?\(GS\)|V\s?G(?:\s?S)?|Gate[- ]Source Voltage",
    "vds": r"V\s?DSS?|V\s?\(DS\)|V\s?DD",
    "id": r"I\s?D(?:\s?[12])?|I\s?DS|Drain Current",
    "is_": r"I\s?SD|I\s?S|I\s?F|I\s?DR",
}
_VOLTS = re.compile(rf"(?<![A-Za-z])(?P<name>{_NAMES['vgs']}|{_NAMES['vds']}){_EQUALS}(?:{_FROM})?{_SIGNED}\s*(?P<unit>mV|V)?", re.IGNORECASE)
_AMPS = re.compile(
    rf"(?<![A-Za-z])(?P<name>{_NAMES['id']}|{_NAMES['is_']}){_EQUALS}{_SIGNED}\s*(?P<unit>mA|[µμu\u03bc]\s?A|nA|A)?(?![A-Za-z])", re.IGNORECASE
)
_TEMPERATURE = re.compile(
    r"(?<![A-Za-z])T\s?\(?\s?(?P<name>case|amb|sp|mb|vj|ch|[cajlsCAJLS])\)?\s?"
    rf"(?:=|\uff1d|@|:|at)\s*{_SIGNED}{_DEGREE}",
    re.IGNORECASE,
)
_DIRECT = re.compile(r"(?<![\d.,])(?P<digits>\d{2,3})\s*(?:°|˚|º|℃)\s*C?\s*(?P<name>case|ambient|free air|T\s?C\b|T\s?A\b|T\s?J\b)", re.IGNORECASE)
_BARE_TEMPERATURE = re.compile(r"(?<![\d.,])(?P<digits>\d{2,3})\s*(?:°|˚|º|℃)\s*C?(?![A-Za-z/])")
_TIME = re.compile(
    r"(?<![A-Za-z])(?:t\s?p?|pw|pulse width|pulse)\s*(?:=|≤|<=|<|\?|\ufffd|£|:)?\s*"
    r"(?P<digits>\d{1,3}(?:\.\d+)?)\s*(?P<unit>s|sec|secs|seconds|ms|us|µs|μs)(?![A-Za-z])",
    re.IGNORECASE,
)
_LASTING = re.compile(r"(?<![A-Za-z\d.])(?P<digits>\d{1,2})\s?(?P<unit>s|sec|secs|seconds)(?![A-Za-z])", re.IGNORECASE)
_STEADY = re.compile(r"\bsteady\b", re.IGNORECASE)
_AMPERE = {"": 1.0, "a": 1.0, "ma": 1e-3, "ua": 1e-6, "na": 1e-9}
_SPOT = {"c": "tc", "case": "tc", "mb": "tc", "a": "ta", "amb": "ta", "sp": "tsp", "s": "tsp", "l": "tsp", "j": "tj", "vj": "tj", "ch": "tj"}


def conditions_in(text: str) -> Conditions:
    """Every condition that a text prints, under the name that it prints.

    Args:
        text: Any words of a row, a heading or a caption.

    Returns:
        The conditions; the first of a kind wins.
    """
    plain = without_marks(text)
    found: dict[str, float | str] = {}
    for name, value in (*_electric(plain), *_temperatures(plain), *_times(plain)):
        found.setdefault(name, value)
    return conditions_of(found)


def conditions_of(named: Mapping[str, float | str]) -> Conditions:
    """Conditions by the names of their fields."""
    values: Any = dict(named)
    return Conditions(**values)


def bare_temperature(text: str) -> float | None:
    """A temperature that stands without a name; None where there is none or more than one."""
    hits = [int(hit["digits"]) * 1.0 for hit in _BARE_TEMPERATURE.finditer(without_marks(text))]
    return hits[0] if len(hits) == 1 else None


def counts_of(text: str) -> dict[str, int]:
    """How many different values a text prints of each condition."""
    plain = without_marks(text)
    seen: dict[str, set[float | str]] = {}
    for name, value in (*_electric(plain), *_temperatures(plain), *_times(plain)):
        seen.setdefault(name, set()).add(value)
    return {name: len(values) for name, values in seen.items()}


def _electric(text: str) -> Iterator[tuple[str, float | str]]:
    for hit in _VOLTS.finditer(text):
        volts = _signed(hit) * (1e-3 if (hit["unit"] or "").lower() == "mv" else 1.0)
        gate = re.fullmatch(_NAMES["vgs"], hit["name"], re.IGNORECASE)
        yield ("vgs" if gate else "vds", volts)
    for hit in _AMPS.finditer(text):
        unit = re.sub(r"[µμ\u03bc]", "u", (hit["unit"] or "").lower().replace(" ", ""))
        drain = re.fullmatch(_NAMES["id"], hit["name"], re.IGNORECASE)
        yield ("id" if drain else "is_", round(_signed(hit) * _AMPERE[unit], 12))


def _temperatures(text: str) -> Iterator[tuple[str, float | str]]:
    for hit in _TEMPERATURE.finditer(text):
        yield _SPOT[hit["name"].lower()], _signed(hit)
    for hit in _DIRECT.finditer(text):
        name = hit["name"].lower().replace(" ", "")
        yield {"case": "tc", "tc": "tc", "tj": "tj"}.get(name, "ta"), int(hit["digits"]) * 1.0


def _times(text: str) -> Iterator[tuple[str, float | str]]:
    for pattern in (_TIME, _LASTING):
        for hit in pattern.finditer(text):
            unit = re.sub(r"[µμ]", "u", hit["unit"].lower())
            yield "t", f"{plain_value(hit['digits']):g} {'s' if unit.startswith('sec') else unit}"
    if _STEADY.search(text):
        yield "t", "steady"


def _signed(hit: re.Match[str]) -> float:
    value = plain_value(re.sub(r"\s", "", hit["digits"]))
    return -value if hit["sign"] and hit["sign"] in MINUS else value
