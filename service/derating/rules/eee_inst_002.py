"""NASA EEE-INST-002, Section S1, Table 4: power MOSFETs."""

from service.derating.formulas.elementwise import lesser
from service.derating.rule_set import RuleSet


def derated_junction_c(junction_max_c: float) -> float:
    """0.80 of the rated junction temperature, and not above 125 degC or 40 K below the rating.

    Args:
        junction_max_c: Highest junction temperature of the sheet. [degC]

    Returns:
        The least of the three. [degC]

    Source: eee-inst-002 section S1, Table 4 and its note 2; 0.80 is a fraction of degrees Celsius, not of the rise.
    """
    return lesser(lesser(0.80 * junction_max_c, junction_max_c - 40.0), 125.0)


RULES = RuleSet(
    name="eee-inst-002",
    title="NASA EEE-INST-002",
    source="EEE-INST-002 (May 2003), Section S1, Table 4",
    drain_voltage_factor=0.75,
    gate_voltage_factor=0.60,
    current_factor=0.75,
    power_factor=0.60,
    junction_limit_c=derated_junction_c,
)
