"""How numbers, units, checks and moments are written on a page."""

import re
from collections.abc import Mapping
from datetime import datetime
from typing import Any

from service.facts.kept_reading import Standing
from service.facts.parameter import PARAMETERS
from service.facts.reading import Limit
from service.usecases.explain_reading import explain_reading, flag_words
from service.usecases.see_part import conditions_in_words

SIGNS = {
    "ohm": "Ω",
    "mohm": "mΩ",
    "degC": "°C",
    "uA": "µA",
    "uJ": "µJ",
    "us": "µs",
    "W/degC": "W/°C",
    "mW/degC": "mW/°C",
    "mm2": "mm²",
    "1": "",
}
# Why only these: a page speaks of milliohms and microseconds, but never of kilokelvin.
PREFIXED = {"ohm": "Ω", "H": "H", "s": "s", "J": "J", "F": "F"}
PREFIXES = ((1e3, "k"), (1.0, ""), (1e-3, "m"), (1e-6, "µ"), (1e-9, "n"), (1e-12, "p"))

CHECKS = {
    "drain_source_voltage": "Voltage across the open switches",
    "gate_drive": "Gate drive",
    "continuous_current": "Current for hours",
    "current_sharing": "Sharing among the switches",
    "conduction_loss": "Heat and voltage drop",
    "power_rating": "Power rating",
    "package_current": "Package current",
    "pulsed_current": "Pulsed current",
    "surge_current": "Surge",
    "shunt": "Shunt",
    "short_circuit": "Short circuit",
    "body_diode": "Body diode while one bank is blocked",
}
BANKS = {"discharge": "discharge bank", "charge": "charge bank", "both": "both banks"}
LIMITS = {Limit.MIN: "at least", Limit.TYP: "typical", Limit.MAX: "at most"}
STANDINGS = {
    Standing.ACCEPTED: "evidence agrees",
    Standing.REVIEW: "wants your eye",
    Standing.CONFIRMED: "confirmed",
    Standing.CORRECTED: "corrected",
    Standing.REJECTED: "rejected",
}


def sign(unit: str) -> str:
    """Write a unit as people print it: ``mohm`` becomes ``mΩ``."""
    return SIGNS.get(unit, unit)


def amount(value: float | bool | None, unit: str = "", digits: int = 3) -> str:  # noqa: FBT001 - a threshold is a number or a yes/no fact
    """Write a number with its unit, with a prefix where a prefix is usual.

    Args:
        value: In the unit; None gives a dash, a yes/no fact its word.
        unit: ASCII unit.
        digits: Significant digits.
    """
    if value is None:
        return "–"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if unit in PREFIXED and value:
        # Why no kiloseconds: people count long times in plain seconds.
        prefixes = PREFIXES[1:] if unit == "s" else PREFIXES
        scale, prefix = next(((s, p) for s, p in prefixes if abs(value) >= s * 0.9995), PREFIXES[-1])
        return f"{_plain(value / scale, digits)} {prefix}{PREFIXED[unit]}"
    return f"{_plain(value, digits)} {sign(unit)}".rstrip()


def _plain(value: float, digits: int) -> str:
    """A number without exponent; whole numbers keep all their digits."""
    if abs(value) >= 10 ** (digits - 1):
        return f"{value:.0f}" if abs(value) >= 10**digits else f"{value:.1f}".removesuffix(".0")
    return f"{value:.{digits}g}"


def moment(when: str) -> str:
    """Write a moment of the history (ISO 8601) to the minute."""
    return datetime.fromisoformat(when).strftime("%Y-%m-%d %H:%M %Z").strip()


def check_name(name: str) -> str:
    """What a check is called on a page."""
    return CHECKS.get(name, name.replace("_", " ").capitalize())


def share(part: float) -> str:
    """A share in percent; almost all and almost none are not written as all and none."""
    if 0.999 <= part < 1:
        return "more than 99.9 %"
    if 0 < part <= 0.001:
        return "less than 0.1 %"
    return f"{100 * part:.1f}".removesuffix(".0") + " %"


def asked(finding: Mapping[str, Any]) -> str:
    """What a finding asks of the board; where nothing settles there is no number to ask."""
    if finding["demand"]:
        return amount(finding["demand"]["value"], finding["demand"]["unit"])
    return "never settles" if finding["limit"] else "–"


def allowed(finding: Mapping[str, Any]) -> str:
    """What a finding allows; nothing left is a word, and so is a limit that nobody stated."""
    if finding["limit"]:
        return amount(finding["limit"]["value"], finding["limit"]["unit"]) if finding["limit"]["value"] else "nothing"
    return "not stated" if finding["demand"] else "–"


RULES = {"maker": "the maker's limits", "trade-80": "80 % of the rated voltage (trade rule)", "eee-inst-002": "NASA EEE-INST-002"}
CORNERS = {"worst": "worst case", "favourable": "at its best"}
KNOWN = {"class_default": "default of its class"}


def printed_number(value: float) -> str:
    """Write a printed number without a trailing zero or an exponent."""
    return f"{value:.10f}".rstrip("0").rstrip(".")


QUANTITIES = {
    "ambient": "air around the board",
    "board_heat_capacity": "heat that the board holds",
    "board_limit": "hottest that the board may get",
    "board_to_air": "board to the air",
    "case_to_board": "case to board, each switch",
    "cell_resistance": "resistance of a cell",
    "charge_voltage": "charge voltage of a cell",
    "charger_reversed": "charger the wrong way round",
    "current_spread": "difference among the switches",
    "fault_voltage": "cell voltage in a short circuit",
    "gate_stress": "largest gate voltage",
    "joints": "joints and tracks",
    "junction_case": "junction to case",
    "junction_max": "hottest junction that the sheet allows",
    "junction_to_air": "each switch to the air",
    "lead_resistance": "resistance of the leads",
    "loop_inductance": "inductance of the loop",
    "on_resistance": "on-resistance of a switch",
    "on_resistance_exponent": "growth of the on-resistance with heat",
    "package_current": "current that the package carries",
    "protection_delay": "delay of the protection",
    "recloses_on_current": "re-closes a blocked bank when current flows",
    "shunt_resistance": "shunt",
    "track_asymmetry": "difference among their tracks",
    "transient_impedance": "heating of the chip in a short time",
}
FIGURE_UNIT = re.compile(r"_(?:degc|a|w|v|j|s|h|ohm|a2s)$")


def quantity_words(name: str) -> str:
    """What a quantity of a report is called on a page; one that belongs to a bank says so."""
    key = name.rpartition(".")[2]
    for bank in ("discharge", "charge"):
        own = key.removeprefix(f"{bank}_")
        if own != key and own in QUANTITIES:
            return f"{QUANTITIES[own]}, {BANKS[bank]}"
    return QUANTITIES.get(key, key.replace("_", " "))


FILTERS = {
    "printed_number": printed_number,
    "rules_word": lambda name: RULES.get(name, name),
    "parameter_words": lambda key: PARAMETERS[key].words if key in PARAMETERS else key,
    "cond_words": conditions_in_words,
    "capitalize_first": lambda text: text[:1].upper() + text[1:],
    "corner_word": lambda corner: CORNERS.get(corner, corner),
    "known_word": lambda name: KNOWN.get(name, name),
    "quantity_words": quantity_words,
    "figure_words": lambda name: FIGURE_UNIT.sub("", name).replace("_", " "),
    "flag_words": flag_words,
    "sign": sign,
    "amount": amount,
    "asked": asked,
    "share": share,
    "allowed": allowed,
    "moment": moment,
    "check_name": check_name,
    "bank_name": lambda bank: BANKS.get(bank, bank),
    "limit_word": lambda limit: LIMITS[limit],
    "standing_word": lambda standing: STANDINGS[standing],
    "explained": explain_reading,
    "file_size": lambda size: f"{size / 1e6:.1f} MB" if size >= 1e5 else f"{size / 1e3:.0f} kB",
}
