"""Laws that hold for every board that passes the door, whatever is known of it and whatever is not."""

import json
from importlib.resources import files

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from service.derating.assess import assess
from service.formats.board import read_board
from service.formats.json_text import json_bytes
from service.formats.report import report_json
from service.usecases.draw_judgement import pictures_json

SCHEMA = Draft202012Validator(json.loads(files("service.api").joinpath("schemas", "report.json").read_text(encoding="utf-8")))
ROWS = ({"typ": "1 mohm", "max": "1.3 mohm", "vgs": "10 V"}, {"typ": "2 mohm", "max": "4 mohm", "vgs": "4.5 V"}, {"max": "9 mohm", "vgs": "2.5 V"})


def some(**known: st.SearchStrategy) -> st.SearchStrategy:
    """A table in which each key may be missing."""
    return st.fixed_dictionaries({}, optional=known)


def one_of(*texts: str) -> st.SearchStrategy:
    """One of a few texts."""
    return st.sampled_from(texts)


PARTS = some(
    vds_max=one_of("30 V", "40 V", "80 V", "150 V").map(lambda text: {"max": text}),
    vgs_max=one_of("12 V", "20 V").map(lambda text: {"max": text}),
    rds_on=st.lists(st.sampled_from(ROWS), min_size=1, max_size=3, unique_by=lambda row: row["vgs"]),
    tj_max=one_of("150 °C", "175 °C").map(lambda text: {"max": text}),
    pd=one_of("125 W", "300 W").map(lambda text: [{"max": text, "tc": "25 °C"}]),
    rth_jc=one_of("0.4 K/W", "1.2 K/W").map(lambda text: {"max": text}),
    id_cont=st.just([{"max": "145 A", "tc": "25 °C", "limited_by": "silicon"}, {"max": "100 A", "tc": "25 °C", "limited_by": "package"}]),
    id_pulse=st.just({"max": "580 A"}),
    vsd=st.just({"max": "1.2 V"}),
    eas=st.just({"max": "300 mJ", "id": "50 A"}),
    zth_foster=st.just([["0.1 K/W", "0.3 ms"], ["0.3 K/W", "3 ms"]]),
)
COOLING = st.one_of(
    some(ambient=one_of("25 °C", "60 °C"), junction_to_air=one_of("20 K/W", "40 K/W to 60 K/W")),
    some(case_to_board=one_of("1 K/W", "4 K/W"), board_to_air=one_of("2 K/W", "1 K/W to 9 K/W"), board_heat_capacity=st.just("55 J/K")),
)
BOARDS = st.fixed_dictionaries(
    {
        "claim": st.fixed_dictionaries(
            {"continuous": one_of("10 A", "80 A", "300 A")},
            optional={"surge": one_of("160 A for 10 s", "400 A for 5 ms"), "packs_in_series": st.integers(1, 4)},
        ),
        "cells": st.fixed_dictionaries({"in_series": st.integers(1, 32)}),
        "discharge_bank": st.fixed_dictionaries({"part": st.just("typed:A"), "switches": st.integers(1, 20)}),
        "typed": st.fixed_dictionaries({"A": PARTS}),
        "cooling": COOLING,
        "rules": st.fixed_dictionaries({"set": one_of("maker", "trade-80", "eee-inst-002")}),
        "board": some(port=one_of("common", "separate"), gate_voltage=one_of("5 V", "8 V to 12 V"), shunt=st.just("0.25 mohm")),
    },
)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(written=BOARDS)
def test_every_board_is_judged_and_its_outcomes_agree_with_its_margins(written):
    """What holds has a margin of one or more in the worst corner, what fails has less in the favourable one; the report keeps to its schema."""
    report = json.loads(json_bytes(report_json(assess(read_board(written)))))

    SCHEMA.validate(report)
    for finding in report["findings"]:
        worst, favourable = ((finding["margin"] or {}).get(end) for end in ("worst", "favourable"))
        assert finding["outcome"] != "holds" or worst is None or worst >= 1 - 1e-6, finding["check"]
        assert finding["outcome"] != "fails" or favourable is None or favourable < 1 + 1e-6, finding["check"]
        assert finding["outcome"] != "not determined" or finding["missing"], finding["check"]


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(written=BOARDS)
def test_every_judged_board_can_be_drawn_and_kept(written):
    """No board breaks its pictures, and what is kept with it keeps to the schema."""
    report = assess(read_board(written))
    frozen = json.loads(json_bytes({**report_json(report), **pictures_json(report.board)}))

    SCHEMA.validate(frozen)
    assert frozen["curves"] or frozen["spread"] is None
