"""What a test on the bench says: resistances from drops and rises, and from a smaller current what a larger one would do."""


def resistance_from_drop_ohm(*, drop_v: float, current_a: float) -> float:
    """Resistance between two points.

    Args:
        drop_v: Between them. [V]
        current_a: Through them. [A]

    Returns:
        Resistance. [ohm]

    Valid for direct current and probes apart from the current's own contacts.

    Source: own, Ohm's law.
    """
    return drop_v / current_a


def cold_switch_resistance_ohm(*, drop_v: float, current_a: float, switches: float, ratio: float) -> float:
    """On-resistance at 25 degC of one of several equal switches, from the drop over the warm bank.

    Args:
        drop_v: Across the bank. [V]
        current_a: Through the bank. [A]
        switches: How many share it. [1]
        ratio: On-resistance over its 25 degC value at the junction temperature of the test. [1]

    Returns:
        On-resistance of one switch at 25 degC. [ohm]

    Valid for equal switches.

    Source: own, Ohm's law for resistors in parallel.
    """
    return drop_v / current_a * switches / ratio


def resistance_from_rise_kpw(*, rise_k: float, loss_w: float) -> float:
    """Thermal resistance from a settled rise.

    Args:
        rise_k: Over the air. [K]
        loss_w: Heat of one switch. [W]

    Returns:
        Of one switch, while all its neighbours run alike. [K/W]

    Valid once settled.

    Source: own, definition.
    """
    return rise_k / loss_w


def current_from_test_a(*, tested_a: float, tested_rise_k: float, tested_ratio: float, allowed_rise_k: float, allowed_ratio: float) -> float:
    """Current that would just reach an allowed rise, from a test at another current on the same board.

    Args:
        tested_a: Current of the test. [A]
        tested_rise_k: Settled rise of the test. [K]
        tested_ratio: On-resistance ratio at the test's junction temperature. [1]
        allowed_rise_k: Rise up to the limit. [K]
        allowed_ratio: On-resistance ratio at the limit. [1]

    Returns:
        Current. [A]

    Valid for a path to the air that does not change; it gets better with temperature, so the answer is a little too small.

    Source: own, rise over I^2 k(T) is the same for both currents; neither on-resistance nor K/W need be known.
    """
    root: float = (allowed_rise_k / allowed_ratio * tested_ratio / tested_rise_k) ** 0.5
    return tested_a * root
