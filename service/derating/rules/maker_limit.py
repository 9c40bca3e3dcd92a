"""The maker's own limits, without any margin."""

from service.derating.rule_set import RuleSet


def whole_c(junction_max_c: float) -> float:
    """The sheet's own limit.

    Args:
        junction_max_c: Highest junction temperature of the sheet. [degC]

    Returns:
        The same. [degC]
    """
    return junction_max_c


RULES = RuleSet(
    name="maker",
    title="Maker's limits",
    source="the part's own datasheet",
    drain_voltage_factor=1.0,
    gate_voltage_factor=1.0,
    current_factor=1.0,
    power_factor=1.0,
    junction_limit_c=whole_c,
)
