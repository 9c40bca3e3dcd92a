"""Numbers as a person reads them: rounded to the safe side, with a prefix where it helps."""

from math import ceil, floor, log10

PREFIXED = {
    "ohm": ((1e-3, "m\N{GREEK CAPITAL LETTER OMEGA}"), (1.0, "\N{GREEK CAPITAL LETTER OMEGA}")),
    "s": ((1e-6, "\N{MICRO SIGN}s"), (1e-3, "ms"), (1.0, "s")),
    "H": ((1e-6, "\N{MICRO SIGN}H"),),
    "J": ((1e-3, "mJ"), (1.0, "J")),
    "degC": ((1.0, "\N{DEGREE SIGN}C"),),
}
DIGITS = 4
# Thresholds are found closer than this; more would be rounding to the unsafe side.
HAIR = 5e-10


def rounded_down(value: float) -> float:
    """At most the value, with four digits: the safe side of "at most".

    Args:
        value: Any finite number.

    Returns:
        The largest number of four digits that is not above it.
    """
    return _rounded(value, up=False)


def rounded_up(value: float) -> float:
    """At least the value, with four digits: the safe side of "at least".

    Args:
        value: Any finite number.

    Returns:
        The least number of four digits that is not below it.
    """
    return _rounded(value, up=True)


def spoken(value: float, unit: str) -> str:
    """A number with its unit for a sentence.

    Args:
        value: In the house unit.
        unit: The house unit.

    Returns:
        Four digits at most, with the largest prefix that leaves a digit before the point: "4.957 mohm" with the ohm sign.
    """
    if unit in PREFIXED:
        scale, sign = next((pair for pair in reversed(PREFIXED[unit]) if abs(value) >= pair[0]), PREFIXED[unit][0])
        return f"{value / scale:.{DIGITS}g} {sign}"
    return f"{value:.{DIGITS}g}" if unit in ("", "1") else f"{value:.{DIGITS}g} {unit}"


def _rounded(value: float, *, up: bool) -> float:
    """Round to four digits in one direction; what is a whole step within a hair counts as that step."""
    if value == 0:
        return 0.0
    places = DIGITS - 1 - floor(log10(abs(value)))
    steps = value * 10.0**places
    near = round(steps)
    if abs(steps - near) < HAIR * max(abs(steps), 1.0):
        return round(near / 10.0**places, max(places, 0))
    return round((ceil(steps) if up else floor(steps)) / 10.0**places, max(places, 0))
