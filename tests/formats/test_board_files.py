"""A board file gives the facts that it states; everything wrong in it is said at once, and nothing else is taken from it."""

import json
import tomllib
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.facts.board import Port
from service.facts.reading import Limit
from service.facts.sourced import Attestation, Known
from service.formats.board import read_board
from service.formats.board_json import board_json
from service.formats.errors import BoardError
from service.formats.toml_text import toml_text


def problems_of(written: dict[str, object]) -> dict[str, str]:
    """Each problem's line by its key."""
    with pytest.raises(BoardError) as caught:
        read_board(written)
    return {problem.key: str(problem) for problem in caught.value.problems}


def test_every_key_of_the_contract_arrives_in_house_units(every_key):
    """Each quantity that the file writes stands on the board in V, A, ohm, W, s, H, m, K/W and degrees Celsius."""
    board = read_board(every_key)

    assert (board.claim.continuous_a.value, board.claim.surge_a.value, board.claim.surge_s.value) == (90.0, 180.0, 5.0)
    assert (board.claim.continuous_charge_a.value, board.claim.packs_in_series) == (45.0, 2)
    assert (board.cells.in_series, board.cells.resistance_ohm.value, board.cells.fault_v.value) == (8, 0.0004, 3.3)
    assert (board.discharge_bank.part, board.discharge_bank.switches, board.charge_bank.switches) == ("AB75N40", 10, 7)
    assert (board.port, board.gate_v.value, board.charger_v.value) == (Port.COMMON, 12.0, 29.4)
    assert (board.shunt_ohm.value, board.shunt_rating_w.value, board.joints_ohm.value) == (0.00025, 5.0, 0.0002)
    assert (board.shunt_on_board, board.recloses_on_current, board.rule_set) == (True, True, "maker")
    assert (board.cooling.ambient_c.value, board.cooling.case_to_board_kpw.value, board.cooling.board_heat_jpk.value) == (35.0, 4.0, 55.0)
    assert (board.cooling.junction_to_air_kpw, board.cooling.board_limit_c.value) == (None, 110.0)
    assert (board.junction_limit_c.value, board.junction_surge_limit_c.value) == (120.0, 150.0)
    assert (board.leads.length_m.value, board.leads.spacing_m.value, board.leads.size_text) == (0.3, 0.025, "2 AWG")
    assert (board.fault.protection_delay_s.value, board.fault.loop_inductance_h.value) == (0.00025, 1.2e-6)


def test_a_measured_quantity_keeps_who_when_and_with_what(every_key):
    """The table form carries how a fact is known."""
    measured = read_board(every_key).cooling.board_to_air_kpw

    assert (measured.value, measured.known) == (2.5, Known.MEASURED)
    assert measured.attested == Attestation(by="R. Vell", on="2026-11-02", instrument="thermocouple")


def test_a_typed_part_carries_its_figures_as_magnitudes(every_key):
    """Keys, limits and conditions of a typed part are those of a reading; it is marked as typed."""
    switch = read_board(every_key).charge_bank.switch

    low, high = switch.of("rds_on", Limit.MAX)
    assert switch.typed
    assert (switch.polarity, switch.package) == ("N", "TO-263")
    assert (low.sourced.value, low.cond.vgs, high.sourced.value, high.cond.vgs) == (0.004, 10.0, 0.0056, 6.0)
    assert [value.cond.limited_by for value in switch.of("id_cont")] == ["silicon", "package"]
    assert (switch.of("eas")[0].sourced.value, switch.of("eas")[0].cond.id) == (0.3, 50.0)
    assert switch.on_resistance_curve == ((-40.0, 0.7), (25.0, 1.0), (100.0, 1.52), (175.0, 2.2))
    assert switch.transient_foster == ((0.1, 0.0003), (0.3, 0.003), (0.4, 0.02))


def test_a_p_channel_part_may_be_typed_with_its_printed_signs(least):
    """A switch is judged in magnitudes, whichever way its sheet prints them."""
    typed = {"Q": {"polarity": "P", "vds_max": {"max": "-40 V"}, "rds_on": {"max": "5 mohm", "vgs": "-10 V"}}}
    switch = read_board(least | {"discharge_bank": {"part": "typed:Q", "switches": 6}, "typed": typed}).discharge_bank.switch

    assert switch.of("vds_max")[0].sourced.value == 40.0
    assert switch.of("rds_on")[0].cond.vgs == 10.0


def test_a_typed_figure_whose_ends_are_out_of_order_is_refused(least):
    """A typical value above the largest one is a slip, and a dangerous one."""
    typed = {"Q": {"rds_on": [{"typ": "5 mohm", "max": "4 mohm", "vgs": "10 V"}]}}

    assert "out of order" in problems_of(least | {"typed": typed})["typed.Q.rds_on"]


def test_a_junction_limit_that_no_power_switch_has_is_refused(least):
    """The ambient or storage row of a sheet is easily taken for the junction's."""
    assert "typed.Q.tj_max.max" in problems_of(least | {"typed": {"Q": {"tj_max": {"max": "60 °C"}}}})


def test_the_hash_of_a_sheet_may_be_written_in_capitals(least):
    """Hexadecimal digits are the same in either case."""
    named = read_board(least | {"discharge_bank": {"part": "SHA256:" + "AB" * 32, "switches": 6}}).discharge_bank.part

    assert named == "sha256:" + "ab" * 32


def test_what_a_board_does_not_say_is_filled_in_and_named(least):
    """Defaults are the contract's, and each says that it is one and what it rests on."""
    board = read_board(least)

    assert (board.port, board.rule_set, board.claim.packs_in_series) == (Port.COMMON, "maker", 1)
    assert board.charge_bank == board.discharge_bank
    assert (board.cells.charge_v.value, board.cells.charge_v.known) == (3.65, Known.CLASS_DEFAULT)
    assert (board.cooling.ambient_c.value, board.cooling.ambient_c.known) == (40.0, Known.ASSUMED)
    assert (board.cooling.junction_to_air_kpw.least, board.cooling.junction_to_air_kpw.most) == (40.0, 60.0)
    assert board.cooling.junction_to_air_kpw.known is Known.ASSUMED
    assert all(fact.name for fact in (board.cells.charge_v, board.cells.empty_v, board.cooling.ambient_c, board.cooling.junction_to_air_kpw))


@pytest.mark.parametrize("which", ["every_key", "least"])
def test_a_board_reads_back_as_it_was_written(which, request, validator):
    """JSON and TOML of a board give the same board again, and both keep to the published schema."""
    written = request.getfixturevalue(which)
    board = read_board(written)
    as_json = board_json(board)

    validator("board").validate(as_json)
    assert read_board(as_json) == board
    assert read_board(json.loads(json.dumps(as_json))) == board
    assert read_board(tomllib.loads(toml_text(as_json))) == board


def test_the_contract_s_example_keeps_to_the_schema(every_key, validator):
    """What the contract writes, the schema allows."""
    validator("board").validate(json.loads(json.dumps(every_key, default=str)))


def test_an_unknown_key_is_named_with_the_nearest_known_one(least):
    """A slip of the pen is answered with what was meant."""
    found = problems_of(least | {"cooling": {"ambeint": "40 °C"}, "claims": {}})

    assert found["cooling.ambeint"].startswith("cooling.ambeint: no such key; did you mean ambient?")
    assert found["claims"].startswith("claims: no such key; did you mean claim?")


def test_every_problem_of_a_file_is_said_at_once():
    """Nobody mends a file line by line."""
    found = problems_of(
        {
            "claim": {"continuous": 80, "surge": "160 A", "packs_in_series": 0},
            "cells": {"in_series": 33, "charge_voltage": "3.65 A"},
            "discharge_bank": {"part": "typed:A", "switches": 0},
            "board": {"port": "both", "shunt_on_board": "yes"},
            "cooling": {"case_to_board": "4 K/W", "junction_to_air": "50 K/W"},
            "leads": {"size": "7.5 AWG"},
            "rules": {"set": "house"},
        },
    )

    assert set(found) == {
        "claim.continuous",
        "claim.surge",
        "claim.packs_in_series",
        "cells.in_series",
        "cells.charge_voltage",
        "discharge_bank.part",
        "discharge_bank.switches",
        "board.port",
        "board.shunt_on_board",
        "cooling.junction_to_air",
        "leads.length",
        "leads.size",
        "rules.set",
    }
    assert found["cells.in_series"] == "cells.in_series = 33: not a count within the limits; allowed: a whole number from 1 to 32, without unit"


@pytest.mark.parametrize("cells", [0, 33, -8, True, 8.0, "8", None])
def test_cells_are_a_whole_number_from_one_to_thirty_two(least, cells):
    """Impossible counts are refused by name."""
    assert "cells.in_series" in problems_of(least | {"cells": {"in_series": cells}})


@pytest.mark.parametrize("missing", ["claim", "cells", "discharge_bank"])
def test_a_required_table_is_asked_for(least, missing):
    """What a board cannot do without is named."""
    del least[missing]

    assert any(key.startswith(f"{missing}.") for key in problems_of(least))


@pytest.mark.parametrize("text", ["0 A", "-80 A"])
def test_a_claim_is_more_than_nothing(least, text):
    """No board is judged for no current, or for one that flows backwards."""
    assert "claim.continuous" in problems_of(least | {"claim": {"continuous": text}})


def test_cooling_is_a_chain_or_one_figure_never_both(least):
    """Two ways to say one thing would contradict each other."""
    chain = {"junction_to_air": "50 K/W", "case_to_board": "4 K/W", "board_to_air": "2 K/W"}

    assert "cooling.junction_to_air" in problems_of(least | {"cooling": chain})


def test_one_link_of_the_chain_is_enough_to_begin_with(least):
    """What is known of the other is the engine's to bound; the simple form no longer applies."""
    cooling = read_board(least | {"cooling": {"case_to_board": "4 K/W"}}).cooling

    assert (cooling.case_to_board_kpw.value, cooling.board_to_air_kpw, cooling.junction_to_air_kpw) == (4.0, None, None)


@pytest.mark.parametrize(
    ("size", "area_mm2", "ohm_per_km"),
    [
        ("12 AWG", 3.3088, None),  # from 0.0808 in, published wire table
        ("4/0 AWG", 107.22, None),  # from 0.4600 in = 11.684 mm, ASTM B258
        ("25 mm2", 25.0, None),
        ("25 mm² class 5", 25.0, 0.780),  # IEC 60228 table 3, largest resistance of plain copper
        ("2.5 mm2 class 5", 2.5, 7.98),
        ("10 mm2 class 2", 10.0, 1.83),  # IEC 60228 table 2
    ],
)
def test_a_wire_s_size_is_gauge_area_or_class(least, size, area_mm2, ohm_per_km):
    """Copper by ASTM B258 or as written; the class adds what IEC 60228 guarantees."""
    leads = read_board(least | {"leads": {"length": "1 m", "size": size}}).leads

    assert leads.area_mm2.value == pytest.approx(area_mm2, rel=2e-3)
    assert (leads.resistance_ohm_per_m.value * 1000 if ohm_per_km else leads.resistance_ohm_per_m) == (ohm_per_km and pytest.approx(ohm_per_km))


@pytest.mark.parametrize("size", ["7.5 AWG", "12 mm", "12", "41 AWG", "5/0 AWG", "26 mm2 class 5", "25 mm2 class 9", "-25 mm2", 12])
def test_what_is_no_size_of_a_wire_is_refused(least, size):
    """Half gauges, lengths, and sizes that the class does not list."""
    assert "leads.size" in problems_of(least | {"leads": {"length": "1 m", "size": size}})


JSON_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(max_size=12),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=8,
)


@given(
    name=st.sampled_from(
        ["claim", "cells", "discharge_bank", "charge_bank", "board", "cooling", "limits", "leads", "fault", "rules", "typed", "schema"]
    ),
    value=JSON_VALUES,
)
def test_whatever_is_sent_gives_a_board_or_its_problems(name, value):
    """No body of a request makes the reader stumble."""
    written = {"claim": {"continuous": "80 A"}, "cells": {"in_series": 8}, "discharge_bank": {"part": "AB75N40", "switches": 6}, name: value}
    with suppress(BoardError):
        board = read_board(written)
        assert read_board(board_json(board)) == board
        assert read_board(tomllib.loads(toml_text(board_json(board)))) == board
