"""Units as sheets print them, by our own whitelist."""

import re
import unicodedata

SCALE: dict[str, float] = {
    "V": 1.0, "mV": 1e-3, "kV": 1e3,
    "A": 1.0, "mA": 1e-3, "uA": 1e-6, "nA": 1e-9,
    "W": 1.0, "mW": 1e-3, "kW": 1e3,
    "W/degC": 1.0, "mW/degC": 1e-3,
    "degC": 1.0, "K/W": 1.0, "K/mW": 1e3,
    "ohm": 1.0, "mohm": 1e-3,
    "J": 1.0, "mJ": 1e-3, "uJ": 1e-6,
    "nC": 1e-9, "pC": 1e-12, "uC": 1e-6,
    "pF": 1e-12, "nF": 1e-9, "uF": 1e-6,
    "s": 1.0, "ms": 1e-3, "us": 1e-6, "ns": 1e-9,
}  # fmt: skip
"""Factor to base units of every unit that a reading may carry."""

_NAMES = {name.lower(): name for name in SCALE} | {
    "c": "degC", "degc": "degC", "deg": "degC",
    "c/w": "K/W", "degc/w": "K/W", "k/w": "K/W", "deg/w": "K/W", "/w": "K/W", "c/mw": "K/mW", "degc/mw": "K/mW", "k/mw": "K/mW",
    "w/c": "W/degC", "w/": "W/degC", "w/degc": "W/degC", "w/k": "W/degC", "w/deg": "W/degC",
    "mw/c": "mW/degC", "mw/degc": "mW/degC", "mw/k": "mW/degC", "mw/deg": "mW/degC",
    "ohms": "ohm", "mohms": "mohm", "volts": "V", "volt": "V", "amps": "A", "amp": "A", "ampere": "A", "watts": "W", "watt": "W",
    "adc": "A", "apk": "A", "vdc": "V", "vpk": "V", "sec": "s", "secs": "s", "seconds": "s",
}  # fmt: skip


def unit_named(text: str) -> str | None:
    """The house name of a printed unit.

    Args:
        text: A unit token, footnote marks taken off.

    Returns:
        A key of :data:`SCALE`, or None where the whitelist has no such unit.
    """
    plain = unicodedata.normalize("NFKC", text.strip().replace("˚", "°").replace("º", "°").replace("(cid:176)", "°"))
    for old, new in (("μ", "u"), ("µ", "u"), ("Ω", "ohm"), ("ω", "ohm"), ("°", "deg"), ("˚", "deg"), ("º", "deg"), ("·", ""), ("⋅", ""), (" ", "")):
        plain = plain.replace(old, new)
    plain = plain.strip("()[]").replace("degdeg", "deg").replace("degK", "K")
    if plain[:1] == "M" and plain.lower() != "ma" and len(plain) > 1:
        return None
    plain = re.sub(r"(?:^|(?<=/))[oθq?\ufffd]C", "C", plain)
    return None if plain == "S" else _NAMES.get(plain.lower())
