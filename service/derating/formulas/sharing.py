"""How unequal switches in parallel share a current, before heat evens it out."""


def low_switch_share(*, spread: float, switches: float) -> float:
    """Share of the bank's current that one low switch takes among equal others.

    Args:
        spread: On-resistance of the others over that of the low one. [1]
        switches: In the bank, the low one included. [1]

    Returns:
        Share of the whole current. [1]

    Valid at equal temperatures.

    Source: own, conductances in parallel.
    """
    return spread / (spread + switches - 1)


def switches_for_share(*, share: float, spread: float) -> float:
    """How many switches a bank needs for its low one to take a given share of the current.

    Args:
        share: Of the whole current, at most 1. [1]
        spread: On-resistance of the others over that of the low one. [1]

    Returns:
        Number of switches, the low one included, as it comes out; the next whole number keeps the share. [1]

    Valid at equal temperatures.

    Source: own, inverse of conductances in parallel.
    """
    return 1 + spread * (1 / share - 1)


def low_switch_current_ratio(*, spread: float, switches: float) -> float:
    """Current of one low switch over the mean of the bank.

    Args:
        spread: On-resistance of the others over that of the low one. [1]
        switches: In the bank, the low one included. [1]

    Returns:
        Ratio to the mean. [1]

    Valid at equal temperatures.

    Source: own, conductances in parallel.
    """
    return switches * low_switch_share(spread=spread, switches=switches)


def low_switch_loss_ratio(*, spread: float, switches: float) -> float:
    """Heat of one low switch over that of a switch in a bank whose switches are all high.

    Args:
        spread: On-resistance of the others over that of the low one. [1]
        switches: In the bank, the low one included. [1]

    Returns:
        Ratio; largest at a spread of switches - 1. [1]

    Valid at equal temperatures.

    Source: own, conductances in parallel.
    """
    return switches**2 * spread / (spread + switches - 1) ** 2


def branch_current_a(*, total_a: float, branch_ohm: float, others_ohm: float) -> float:
    """Current of one branch beside others in parallel.

    Args:
        total_a: Through all of them. [A]
        branch_ohm: Of the branch. [ohm]
        others_ohm: All others in parallel together. [ohm]

    Returns:
        Current of the branch. [A]

    Valid for direct current.

    Source: own, current divider.
    """
    return total_a * others_ohm / (branch_ohm + others_ohm)
