"""Pictures and working of a result: files of their own that say the same as the tables beside them, and sums that add up."""

import json
import re
from dataclasses import replace
from xml.etree import ElementTree as ET

import pytest

from service.web.words import allowed, asked

FOUR = {"discharge_bank.part": "QX80N50", "discharge_bank.switches": "6", "cells.in_series": "8", "claim.continuous": "80"}
NAMES = ("margins", "temperature", "surge", "chain")


@pytest.fixture
def result(send, client, dropped):
    """The address of the first result, from four fields."""
    client.get(send("/", {"sheet": dropped()}, to="/start").location, follow_redirects=True)
    return send("/", FOUR, to="/start").location


def words(answer) -> str:
    """All that a picture says."""
    svg = ET.fromstring(answer.data)  # noqa: S314  drawn by this very program
    return " ".join(text.strip() for text in svg.itertext() if text.strip())


@pytest.mark.parametrize("name", NAMES)
def test_every_picture_is_a_file_of_its_own_that_knows_day_and_night(result, client, name):
    """It may be opened alone: it carries its style, may run nothing, and says its numbers as text."""
    answer = client.get(f"{result}/{name}.svg")

    assert answer.mimetype == "image/svg+xml"
    assert "prefers-color-scheme: dark" in words(answer)
    assert "style-src 'unsafe-inline'" in answer.headers["Content-Security-Policy"]
    assert "script" not in answer.headers["Content-Security-Policy"]


@pytest.mark.parametrize("name", NAMES)
def test_every_picture_stands_on_the_page_with_words_for_those_who_cannot_see_it(result, client, name):
    """Its alternative text says what it shows and where its numbers are."""
    page = client.get(result).get_data(as_text=True)
    alt = re.search(rf'/{name}\.svg"[^>]* alt="([^"]+)"', page)[1]

    assert "table" in alt


def test_the_temperature_picture_marks_claim_and_limit(result, client):
    """79.66 A hold at the most of 80 A claimed (worked by hand in the contract), under a limit of 175 degC."""
    said = words(client.get(f"{result}/temperature.svg"))

    assert "claimed 80 A" in said
    assert "holds up to 79.66 A" in said
    assert "junction limit 175 °C" in said


def test_the_chain_writes_its_sums_out(result, client):
    """0.75 of the 60 K/W lie inside the part."""
    said = words(client.get(f"{result}/chain.svg"))

    assert re.search(r"0\.75 K/W × 2\.31 W = 1\.7\d* K", said)
    assert "case to air" in said


def test_the_same_picture_is_the_same_bytes(result, client):
    """Nothing of the clock or of chance is in it."""
    assert client.get(f"{result}/surge.svg").data == client.get(f"{result}/surge.svg").data


def test_the_numbers_of_a_picture_stand_beside_it(result, client):
    """The last row of the temperatures is one that never settles in the worst case."""
    page = client.get(result).get_data(as_text=True)

    assert page.count("The same in numbers") >= 4
    assert "does not settle" in page


def test_a_result_of_before_there_were_pictures_says_so(result, client, store):
    """It stays as it was; judging again draws it."""
    with store.changing() as shelf:
        kept = shelf.results.find(result.rpartition("/")[2])
        old = {key: value for key, value in json.loads(kept.report).items() if key not in ("curves", "thermal_chain", "spread")}
        shelf.results.freeze(replace(kept, id="old", report=json.dumps(old)))

    assert client.get("/results/old").status_code == 200
    answer = client.get("/results/old/surge.svg")
    assert answer.status_code == 404
    assert "judge its board again" in answer.get_data(as_text=True)


def test_what_never_settles_is_said_in_words():
    """No number is asked where there is none, and nothing allowed is a word."""
    runs_away = {"demand": None, "limit": {"value": 0.0, "unit": "W"}}
    unstated = {"demand": {"value": 2.0, "unit": "W"}, "limit": None}

    assert (asked(runs_away), allowed(runs_away)) == ("never settles", "nothing")
    assert (asked(unstated), allowed(unstated)) == ("2 W", "not stated")
    assert (asked({"demand": None, "limit": None}), allowed({"demand": None, "limit": None})) == ("–", "–")


def test_the_working_puts_numbers_in_and_shows_the_crop_of_each_printed_one(result, client):
    """Formula, sums and places; crops are fetched only when the working is opened."""
    page = client.get(result).get_data(as_text=True)

    assert "(80 A / 6)² × 5 mΩ × 2.605 = 2.315 W" in page
    assert re.search(r'<img src="/sheets/crops/[^"]+" loading="lazy" alt="rds_on 5 mohm"', page)
    assert '<details id="f-1">' in page


def test_the_working_can_be_opened_as_a_whole_to_be_printed(result, client):
    """What is closed is not printed, so one link opens all."""
    assert '<details id="f-1" open>' in client.get(f"{result}?working=open").get_data(as_text=True)
