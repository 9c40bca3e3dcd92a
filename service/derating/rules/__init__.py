"""Published derating rule sets, one a file; the table gives the order in which a report names them."""

from service.derating.rule_set import RuleSet
from service.derating.rules import eee_inst_002, maker_limit, trade_80

RULE_SETS: dict[str, RuleSet] = {rules.name: rules for rules in (maker_limit.RULES, trade_80.RULES, eee_inst_002.RULES)}


def rule_set(name: str) -> RuleSet:
    """The rule set of that name.

    Args:
        name: maker, trade-80 or eee-inst-002.

    Returns:
        The rule set.

    Raises:
        ValueError: Nobody knows that name; names those that exist.
    """
    if name not in RULE_SETS:
        raise ValueError(f"rule set {name!r} is not known; known are {', '.join(RULE_SETS)}")
    return RULE_SETS[name]
