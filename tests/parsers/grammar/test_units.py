"""Units by our own whitelist; NIST SP 811 for the prefixes."""

import pytest

from parsers.grammar.unit import SCALE, unit_named


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("mΩ", "mohm"),
        ("m\u2126", "mohm"),
        ("Ω", "ohm"),
        ("µA", "uA"),
        ("\u03bcA", "uA"),
        ("℃", "degC"),
        ("°C", "degC"),
        ("˚C", "degC"),
        ("oC", "degC"),
        ("℃/W", "K/W"),
        ("K/W", "K/W"),
        ("W/°C", "W/degC"),
        ("mW/℃", "mW/degC"),
        ("nC", "nC"),
        ("PF", "pF"),
        ("mJ", "mJ"),
    ],
)
def test_a_printed_unit_has_one_name(text, name):
    """Ohm and micro have two code points each, the degree five spellings."""
    assert unit_named(text) == name


@pytest.mark.parametrize("text", ["MΩ", "MW", "MV", "V/ns", "ms/V", "S", "", "Ohm-cm"])
def test_other_units_are_refused(text):
    """M is mega, not milli: a factor of a thousand million is no matter of taste."""
    assert unit_named(text) is None


def test_prefixes_are_those_of_the_international_system():
    """NIST SP 811, table 5."""
    prefixes = {"k": 1e3, "m": 1e-3, "u": 1e-6, "n": 1e-9, "p": 1e-12}

    assert SCALE["mohm"] == SCALE["ohm"] * prefixes["m"]
    assert SCALE["kV"] == prefixes["k"]
    assert SCALE["uA"] == prefixes["u"]
    assert SCALE["nC"] == prefixes["n"]
    assert SCALE["pF"] == prefixes["p"]
