"""A test on the bench, typed on a result's page: the board is judged again, and both results are shown."""

import re

import pytest
from scipy.optimize import brentq

FOUR = {"discharge_bank.part": "QX80N50", "discharge_bank.switches": "6", "cells.in_series": "8", "claim.continuous": "80"}
HEAT = {"heat.current": "60", "heat.probe": "75", "heat.air": "35 °C", "heat.spot": "tab", "heat.lid": "closed", "heat.with": "thermocouple"}
DROP = {"drop.drop": "34.2", "drop.current": "20 A", "drop.across": "shunt", "drop.with": "voltmeter"}


@pytest.fixture
def result(send, client, dropped):
    """The address of the first result, from four fields."""
    client.get(send("/", {"sheet": dropped()}, to="/start").location, follow_redirects=True)
    return send("/", FOUR, to="/start").location


@pytest.fixture
def measured(result, send, client):
    """Send a test and show what comes of it."""

    def act(path: str, fields: dict[str, str]) -> str:
        answer = send(result, fields, to=f"{result}/{path}")
        assert answer.status_code == 303
        assert answer.location != result
        return client.get(answer.location).get_data(as_text=True)

    return act


def test_a_temperature_at_a_known_current_replaces_the_default(measured):
    """By hand: 40 K over the heat of 5 mohm, its junction 0.75 K/W above the tab, at least; 44.44 K over that of 4 mohm and 0.75 at most."""
    page = measured("heat-test", HEAT)
    hottest_w = brentq(lambda watts: 100 * 5e-3 * ((348.15 + 0.75 * watts) / 298.15) ** 2.3 - watts, 0.1, 5)
    coolest_w = 100 * 4e-3 * ((35 + 40 / 0.9 + 273.15) / 298.15) ** 1.7

    low, high = (float(number) for number in re.search(r"(\d+\.?\d*) K/W – (\d+\.?\d*) K/W</td><td>measured", page).groups())
    assert low == pytest.approx(40 / hottest_w, abs=0.1)
    assert high == pytest.approx(40 / 0.9 / coolest_w + 0.75, abs=0.1)
    assert "thermocouple" in page
    assert "probe on tab" in page


def test_the_test_says_what_it_allows_by_itself_and_both_results_are_shown(measured, result, client):
    """The page of the new result says what was measured, and has the old one beside it."""
    page = measured("heat-test", HEAT)

    assert re.search(r"taken alone, the test allows \d+\.?\d* A for hours", page)
    assert "Before and after" in page
    assert f'href="{result}"' in page
    assert "Before and after" not in client.get(result).get_data(as_text=True)


def test_millivolts_over_the_shunt_give_its_resistance(measured):
    """34.2 mV at 20 A is 1.71 mohm (Ohm's law)."""
    assert "1.71 mΩ" in measured("drop", DROP)


def test_millivolts_over_a_bank_take_the_sheets_place_in_that_bank_alone(measured, client):
    """50 mV at 60 A over six switches at 75 degC: 5 mohm warm, by hand between 5 / 1.166^2.3 and 5 / 1.166^1.7 cold; the charge bank keeps 5 mohm."""
    page = measured("drop", {"drop.drop": "50 mV", "drop.current": "60", "drop.across": "discharge", "drop.warm": "75"})
    board = re.search(r'href="/boards/([^"/]+)/edit"', page)[1]
    file = client.get(f"/boards/{board}/board.toml").get_data(as_text=True)

    low, high = (float(number) for number in re.search(r'value = "(\S+) mohm to (\S+) mohm"', file).groups())
    warmer = 348.15 / 298.15
    assert (low, high) == (pytest.approx(5 / warmer**2.3, abs=0.001), pytest.approx(5 / warmer**1.7, abs=0.001))
    assert file.count("on_resistance") == 1
    assert 'charge_bank = {part = "QX80N50", switches = 6}' in file


@pytest.mark.parametrize(
    ("path", "fields", "said"),
    [
        ("heat-test", {**HEAT, "heat.probe": "lukewarm"}, "does not begin with a plain number"),
        ("heat-test", {**HEAT, "heat.probe": ""}, "nothing was typed"),
        ("heat-test", {**HEAT, "heat.probe": "35 °C"}, "says nothing; test with more current or wait longer"),
        ("heat-test", {**HEAT, "heat.spot": ""}, "tab, package top, board beside the switches"),
        ("heat-test", {**HEAT, "heat.current": "60 V"}, "no unit of current"),
        ("drop", {**DROP, "drop.across": "charge"}, "temperature in degC"),
        ("drop", {**DROP, "drop.drop": "34.2 A"}, "no unit of voltage"),
    ],
)
def test_what_cannot_be_taken_stays_typed_and_says_why(result, send, path, fields, said):
    """Nothing is lost, nothing is judged, and the field says what may stand there."""
    answer = send(result, fields, to=f"{result}/{path}")
    page = answer.get_data(as_text=True)

    assert answer.status_code == 400
    assert said in page
    assert 'aria-invalid="true"' in page
    assert all(f'value="{text}"' in page for key, text in fields.items() if key.endswith(".with"))


def test_a_single_figure_that_cannot_be_taken_stays_typed(result, send):
    """The field beside the question keeps what was typed and says what is wrong with it."""
    answer = send(result, {"key": "cooling.junction_to_air", "value": "47 K", "with": "thermocouple"}, to=f"{result}/measured")
    page = answer.get_data(as_text=True)

    assert answer.status_code == 400
    assert 'value="47 K"' in page
    assert 'value="thermocouple"' in page
    assert "no unit of thermal resistance" in page


def test_switches_on_one_board_get_the_boards_own_way_measured(send, client, dropped):
    """With junction to air in its place the board would lose its limit; each switch's way to it stays as it was."""
    client.get(send("/", {"sheet": dropped()}, to="/start").location, follow_redirects=True)
    chain = {"cooling.case_to_board": "4 K/W", "cooling.board_to_air": "2 K/W", "cooling.board_limit": "110 °C"}
    result = send("/boards/new", {**FOUR, **chain, "title": "one board"}, to="/boards/").location
    answer = client.get(send(result, {**HEAT, "heat.spot": "board beside the switches"}, to=f"{result}/heat-test").location)
    board = re.search(r'href="/boards/([^"/]+)/edit"', answer.get_data(as_text=True))[1]
    file = client.get(f"/boards/{board}/board.toml").get_data(as_text=True)

    assert re.search(r"board_to_air = \{[^}]*measured", file)
    assert re.search(r'case_to_board = "4 K/W"', file)
    assert "junction_to_air" not in file
    assert "110" in file
