"""The trade's rule: at most 80 % of the rated drain-source voltage, all else as the maker says."""

from service.derating.rule_set import RuleSet


def whole_c(junction_max_c: float) -> float:
    """The sheet's own limit: the trade's rule is about voltage.

    Args:
        junction_max_c: Highest junction temperature of the sheet. [degC]

    Returns:
        The same. [degC]
    """
    return junction_max_c


RULES = RuleSet(
    name="trade-80",
    title="80 % trade rule",
    # Why 0.80 and not 1/1.2: "20 % margin" can be read both ways; the stricter reading is taken.
    source="common practice, no source",
    drain_voltage_factor=0.80,
    gate_voltage_factor=1.0,
    current_factor=1.0,
    power_factor=1.0,
    junction_limit_c=whole_c,
)
