"""What a judgement takes from a switch: the printed value where there is one, else the named default of its class."""

import re
from dataclasses import dataclass

from service.derating.formulas.rating import junction_case_kpw
from service.facts.reading import Limit
from service.facts.sourced import Known, Sourced
from service.facts.switch import RatedValue, Switch

LOWER_COMMON_JUNCTION_C, UPPER_COMMON_JUNCTION_C = 150.0, 175.0
SMALL_PACKAGE = re.compile(r"(?<![A-Z0-9])(?:I?D-?PAK|TO-?25[12]|SOT-?\d+|SO-?8|SOIC|TSSOP)")
LEADLESS = re.compile(r"POWER|PPAK|LFPAK|DFN|QFN")


@dataclass(frozen=True, slots=True, kw_only=True)
class Ends:
    """One figure at its three ends, with what it rests on."""

    favourable: float
    nominal: float
    worst: float
    sourced: Sourced


def single(sourced: Sourced) -> Ends:
    """A figure that is one number at every end."""
    return Ends(favourable=sourced.value, nominal=sourced.value, worst=sourced.value, sourced=sourced)


def smaller_is_worse(sourced: Sourced) -> Ends:
    """A fact whose lower end hurts the board."""
    return Ends(favourable=sourced.most, nominal=sourced.value, worst=sourced.least, sourced=sourced)


def larger_is_worse(sourced: Sourced) -> Ends:
    """A fact whose upper end hurts the board."""
    return Ends(favourable=sourced.least, nominal=sourced.value, worst=sourced.most, sourced=sourced)


def default(value: float, unit: str, name: str, *, low: float | None = None, high: float | None = None) -> Sourced:
    """A default of its class, banded and named."""
    return Sourced(value=value, unit=unit, known=Known.CLASS_DEFAULT, low=low, high=high, name=name)


def least_of(switch: Switch, key: str, limit: Limit = Limit.MAX) -> Sourced | None:
    """The smallest figure of a key and limit: of several ratings the one that binds.

    Args:
        switch: The part.
        key: What it is.
        limit: Which limit.

    Returns:
        Magnitude with its place, or None where the sheet is silent.
    """
    return _smallest(switch.of(key, limit))


def drain_voltage(switch: Switch) -> Sourced | None:
    """Rated drain-source voltage; the breakdown voltage's minimum stands in for it [V]."""
    return least_of(switch, "vds_max") or least_of(switch, "vbr_dss", Limit.MIN)


def junction_max(switch: Switch) -> Ends:
    """Highest junction temperature; the lower common value where the sheet is silent [degC]."""
    printed = least_of(switch, "tj_max")
    if printed:
        return single(printed)
    name = "150 degC, the lower of the two common values"
    guess = default(LOWER_COMMON_JUNCTION_C, "degC", name, low=LOWER_COMMON_JUNCTION_C, high=UPPER_COMMON_JUNCTION_C)
    return smaller_is_worse(guess)


def rated_power_at_case(switch: Switch) -> RatedValue | None:
    """The rated power at a named case temperature, the coolest case first; never one at an ambient [W]."""
    at_case = [value for value in switch.of("pd", Limit.MAX) if value.cond.tc is not None]
    return min(at_case, key=lambda value: (value.cond.tc or 0.0, value.sourced.value), default=None)


def junction_case(switch: Switch) -> Ends | None:
    """Thermal resistance from junction to case; from the rated power where it is not printed [K/W]."""
    printed, typical = switch.of("rth_jc", Limit.MAX), least_of(switch, "rth_jc", Limit.TYP)
    if printed:
        largest = max((value.sourced for value in printed), key=lambda sourced: sourced.value)
        low = min(typical.value, largest.value) if typical else largest.value
        return Ends(favourable=low, nominal=low, worst=largest.value, sourced=largest)
    power = rated_power_at_case(switch)
    if power:
        return single(_implied_resistance(switch, power))
    if typical:
        worst = typical.value * 1.25
        name = "1.25 times the typical value: one sheet that prints both has 1.16"
        guess = default(worst, "K/W", name, low=typical.value, high=worst)
        return Ends(favourable=typical.value, nominal=typical.value, worst=worst, sourced=guess)
    return None


def _implied_resistance(switch: Switch, power: RatedValue) -> Sourced:
    """The thermal resistance that a rated power implies, on the 175 degC basis where the limit is not printed."""
    printed = least_of(switch, "tj_max")
    limit_c = printed.value if printed else UPPER_COMMON_JUNCTION_C
    kpw = junction_case_kpw(power_w=power.sourced.value, junction_max_c=limit_c, case_c=power.cond.tc or 0.0)
    name = f"(Tjmax - Tc) / PD from {power.sourced.value:g} W at a case of {power.cond.tc:g} degC"
    return default(kpw, "K/W", name)


def silicon_current(switch: Switch) -> RatedValue | None:
    """Rated continuous current of the silicon at a named case temperature, the coolest case first [A]."""
    rows = [value for value in switch.of("id_cont", Limit.MAX) if value.cond.tc is not None and value.cond.limited_by != "package"]
    return min(rows, key=lambda value: (value.cond.tc or 0.0, value.sourced.value), default=None)


def package_current(switch: Switch) -> Ends | None:
    """Current that the package carries: printed, or the named cap of its kind, or None where nothing is known [A]."""
    printed = _smallest(tuple(value for value in switch.of("id_cont", Limit.MAX) if value.cond.limited_by == "package"))
    return single(printed) if printed else _cap_of_package(switch)


def _cap_of_package(switch: Switch) -> Ends | None:
    """A cap for packages that often limit without saying so; its upper end is what the sheet's silicon allows."""
    package = (switch.package or "").upper().replace("\N{SUPERSCRIPT TWO}", "2")
    headline = max((value.sourced.value for value in switch.of("id_cont", Limit.MAX)), default=0.0)
    if re.search(r"TO-?220", package):
        name = "75 A, printed in footnotes of TO-220 sheets; this sheet prints no package limit"
        return smaller_is_worse(default(75.0, "A", name, low=75.0, high=max(75.0, headline)))
    if SMALL_PACKAGE.search(package) and not LEADLESS.search(package):
        name = "20 to 40 A for small packages with leads; this sheet prints no package limit"
        return smaller_is_worse(default(30.0, "A", name, low=20.0, high=40.0))
    return None


def _smallest(values: tuple[RatedValue, ...]) -> Sourced | None:
    """The smallest of several figures."""
    return min((value.sourced for value in values), key=lambda sourced: sourced.value, default=None)
