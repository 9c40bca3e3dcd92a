"""Invented boards of many kinds, as a person would write them, for laws that hold for every board."""

from hypothesis import strategies as st

from service.facts.board import Board
from service.formats.board import read_board


@st.composite
def parts(draw):
    """A typed part: from all figures stated down to what a person can type in a minute."""
    ohm = draw(st.floats(0.8, 12.0))
    typical = ohm / draw(st.floats(1.05, 1.6))
    kinds = draw(st.sampled_from(["both", "max", "typ"]))
    row = {"vgs": "10 V"}
    if kinds != "typ":
        row["max"] = f"{ohm:.4f} mohm"
    if kinds != "max":
        row["typ"] = f"{typical:.4f} mohm"
    rows = [row]
    if draw(st.booleans()):
        rows.append({"vgs": "4.5 V", "typ": f"{typical * 1.4:.4f} mohm", "max": f"{ohm * 1.5:.4f} mohm"})
    part = {"vds_max": {"max": f"{draw(st.sampled_from([30, 40, 60, 75, 80, 100]))} V"}, "rds_on": rows}
    part["rth_jc"] = {"max": f"{draw(st.floats(0.3, 2.0)):.4f} K/W"}
    if draw(st.booleans()):
        part["tj_max"] = {"max": f"{draw(st.sampled_from([150, 175]))} °C"}
    if draw(st.booleans()):
        part["rds_on_vs_tj"] = [[-40, 0.70], [25, 1.0], [100, 1.52], [175, 2.20]]
    if draw(st.booleans()):
        part["vgs_max"] = {"max": "20 V"}
    if draw(st.booleans()):
        part["id_cont"] = [{"max": f"{draw(st.floats(60, 250)):.4f} A", "tc": "25 °C", "limited_by": "silicon"}]
    return part


@st.composite
def coolings(draw):
    """The simple form, known or not, or the chain, whole or with a gap."""
    ambient = f"{draw(st.floats(-20, 50)):.4f} °C"
    kind = draw(st.sampled_from(["default", "band", "known", "chain", "board only"]))
    if kind == "default":
        return {"ambient": ambient}
    low = draw(st.floats(15, 60))
    if kind == "band":
        return {"ambient": ambient, "junction_to_air": f"{low:.4f} K/W to {low * draw(st.floats(1.1, 2.0)):.4f} K/W"}
    if kind == "known":
        return {"ambient": ambient, "junction_to_air": f"{low:.4f} K/W"}
    air = {"ambient": ambient, "board_to_air": f"{draw(st.floats(0.5, 5)):.4f} K/W"}
    return air if kind == "board only" else {**air, "case_to_board": f"{draw(st.floats(0.5, 10)):.4f} K/W"}


@st.composite
def boards(draw) -> Board:
    """A whole board."""
    tables = {
        "claim": {"continuous": f"{draw(st.floats(10, 150)):.4f} A"},
        "cells": {"in_series": draw(st.integers(4, 16))},
        "discharge_bank": {"part": "typed:A", "switches": draw(st.integers(1, 14))},
        "cooling": draw(coolings()),
        "typed": {"A": draw(parts())},
        "board": {"port": draw(st.sampled_from(["common", "separate"]))},
    }
    if draw(st.booleans()):
        tables["charge_bank"] = {"part": draw(st.sampled_from(["typed:A", "typed:B"])), "switches": draw(st.integers(1, 14))}
        tables["typed"]["B"] = draw(parts())
    if draw(st.booleans()):
        tables["board"]["gate_voltage"] = "10 V"
    if draw(st.booleans()):
        tables["board"]["shunt"] = f"{draw(st.floats(0.1, 1.0)):.4f} mohm"
    return read_board(tables)
