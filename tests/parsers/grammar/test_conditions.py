"""Conditions in the many ways in which sheets print them."""

from dataclasses import fields

import pytest

from parsers.grammar.channel import channel_named
from parsers.grammar.condition import bare_temperature, conditions_in
from service.facts.reading import Conditions


def said(text):
    """The conditions of a text that are given."""
    found = conditions_in(text)
    return {field.name: value for field in fields(Conditions) if (value := getattr(found, field.name)) is not None}


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("VGS = 10 V, ID = 20 A", {"vgs": 10, "id": 20}),
        ("VGS=-4.5V, ID=-2.8A", {"vgs": -4.5, "id": -2.8}),
        ("VGS = \u20134.5 V, ID = \u20131.3 A", {"vgs": -4.5, "id": -1.3}),
        ("ID @ TC = 100°C Continuous Drain Current, VGS @ 10V", {"tc": 100, "vgs": 10}),
        ("VGS = 10 V; ID = 500 mA; Tj = 150 °C; see Figure 6", {"vgs": 10, "id": 0.5, "tj": 150}),
        ("Tmb = 25 °C", {"tc": 25}),
        ("Tsp = 25 °C", {"tsp": 25}),
        ("Tamb = 70 °C", {"ta": 70}),
        ("T C = 25 o C, V GS = 10V", {"tc": 25, "vgs": 10}),
        ("(Ta=25℃ unless otherwise noted)", {"ta": 25}),
        ("VDS = VGS, ID = 250 µA", {"id": 0.00025}),
        ("t ≤ 10 s", {"t": "10 s"}),
        ("Steady-State", {"t": "steady"}),
        ("VGS = 0 V to 10 V", {"vgs": 10}),
        ("VGS = 0/18 V", {"vgs": 18}),
        ("ISD = 17A", {"is_": 17}),
        ("25 °C ≤ Tj ≤ 150 °C", {}),
    ],
)
def test_a_condition_reads_under_the_name_that_it_prints(text, expected):
    """Case, ambient and solder point are three temperatures."""
    assert {name: pytest.approx(value) if isinstance(value, float | int) else value for name, value in expected.items()} == said(text)


def test_a_temperature_without_a_name_is_bare_only_when_it_is_alone():
    """Two temperatures without names say nothing."""
    assert bare_temperature("at 100 °C") == 100
    assert bare_temperature("-55 °C to 150 °C") is None


@pytest.mark.parametrize(
    ("text", "channel"), [("Q1", "Q1"), ("VGS = 10 V N-Ch", "Q1"), ("P-Channel", "Q2"), ("N-Ch P-Ch", None), ("Q15", None), ("", None)]
)
def test_a_channel_is_named_when_one_is(text, channel):
    """The N-channel switch of a mixed part is the first; two names are none."""
    assert channel_named(text) == channel
