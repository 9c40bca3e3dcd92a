"""What a derating rule set says: how much of each rating may be used."""

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleSet:
    """One published rule set; rule sets are never blended within a row.

    Attributes:
        name: As boards name it.
        title: For people.
        source: Where it is printed, or that it is common practice.
        drain_voltage_factor: Share of the rated drain-source voltage. [1]
        gate_voltage_factor: Share of the rated gate-source voltage. [1]
        current_factor: Share of the current rating at the actual case temperature. [1]
        power_factor: Share of the power rating at the actual case temperature. [1]
        junction_limit_c: From the sheet's highest junction temperature to the one that may be used. [degC -> degC]
    """

    name: str
    title: str
    source: str
    drain_voltage_factor: float
    gate_voltage_factor: float
    current_factor: float
    power_factor: float
    junction_limit_c: Callable[[float], float]
