"""From a dropped sheet over four fields to a result that a person has checked."""

import json
import re

import pytest

FOUR = {"discharge_bank.part": "QX80N50", "discharge_bank.switches": "6", "cells.in_series": "8", "claim.continuous": "80"}


@pytest.fixture
def sheet_page(send, client, dropped):
    """The part's page after its sheet was dropped on the bench."""
    answer = send("/", {"sheet": dropped()}, to="/start")
    return client.get(answer.location, follow_redirects=True)


@pytest.fixture
def result(sheet_page, send, client):
    """The first result, from four fields."""
    assert sheet_page.status_code == 200
    answer = send("/", FOUR, to="/start")
    return answer.location, client.get(answer.location).get_data(as_text=True)


def test_a_dropped_sheet_leads_to_its_part(sheet_page):
    """Every printed value stands beside its crop."""
    page = sheet_page.get_data(as_text=True)

    assert sheet_page.request.path == "/parts/QX80N50"
    assert page.count("/sheets/crops/") == 10
    assert "It says so" in page


def test_four_fields_give_the_board_worked_by_hand(result):
    """The board of the contract, worked by hand from the handbook's defaults: 59.48 K/W and 79.66 A."""
    page = result[1]

    assert "59.48 K/W" in page
    assert "79.7 A" in page
    assert 'class="outcome holds-if"' in page


def test_a_result_is_provisional_until_a_person_has_looked(result, client, send):
    """One key press a value settles it; the last one takes the word away."""
    path, page = result
    assert "Provisional" in page
    presses = 0
    while seen := first_look(client.get(f"{path}/look").get_data(as_text=True)):
        assert 1 <= len(seen) <= 3
        send(f"{path}/look", {"seen": seen, "back": f"{path}/look"}, to="/parts/readings/confirm")
        presses += 1

    assert presses <= 10
    assert "Provisional" not in client.get(path).get_data(as_text=True)


def first_look(page: str) -> list[str]:
    """What the first button of the page settles."""
    form = re.search(r'<section class="look now">.*?</section>', page, re.DOTALL)
    return re.findall(r'name="seen" value="([^"]+)"', form[0]) if form else []


def test_a_value_that_changed_meanwhile_is_not_confirmed_unseen(result, client, send):
    """Another person's correction wins over a look at the value before it, and the page says so."""
    path, _ = result
    send(f"{path}/look", {"version": "1", "written": "6 mohm", "why": "misread", "back": path}, to="/parts/readings/r-rds_on-5/correct")
    answer = send(path, {"seen": ["r-rds_on-5 1", "r-vds_max-80 1"], "back": path}, to="/parts/readings/confirm")

    assert "look again" in client.get(answer.location).get_data(as_text=True)
    part = client.get("/parts/QX80N50").get_data(as_text=True)
    assert part.count('<span class="kind">confirmed') == 1


def test_a_corrected_value_puts_the_result_out_of_date(result, client, send):
    """The result stays as it was, says why it is out of date, and the bench says so too."""
    path, _ = result
    send(f"{path}/look", {"version": "1", "written": "6 mohm", "why": "misread", "back": path}, to="/parts/readings/r-rds_on-5/correct")

    page = client.get(path).get_data(as_text=True)
    assert "Out of date" in page
    assert "59.48 K/W" in page
    assert "Out of date" in client.get("/").get_data(as_text=True)


def test_judging_again_uses_the_correction(result, client, send):
    """The new result is another one; the largest current falls with the root of the resistance."""
    path, _ = result
    send(f"{path}/look", {"version": "1", "written": "6 mohm", "why": "misread", "back": path}, to="/parts/readings/r-rds_on-5/correct")
    again = send(path, {}, to=f"{path}/again").location

    # By hand: 79.66 A times the root of 5/6 is 72.72 A.
    assert again != path
    assert "72.7 A" in client.get(again).get_data(as_text=True)


def test_a_measurement_replaces_the_assumption(result, client, send):
    """47 K/W measured lies inside the threshold of 59.48 K/W: the current holds."""
    path, _ = result
    again = send(path, {"key": "cooling.junction_to_air", "value": "47 K/W", "with": "thermocouple"}, to=f"{path}/measured").location

    page = client.get(again).get_data(as_text=True)
    assert "measured" in page
    assert "59.48 K/W" not in page


def test_wrong_counts_stand_beside_their_field_and_nothing_typed_is_lost(sheet_page, send):
    """An error says what is wrong and what is allowed."""
    assert sheet_page.status_code == 200
    answer = send("/", {**FOUR, "cells.in_series": "80"}, to="/start")
    page = answer.get_data(as_text=True)

    assert answer.status_code == 400
    assert "1 to 32" in page
    assert 'value="QX80N50"' in page


def test_the_board_is_kept_and_can_be_taken_away_as_a_file(result, client):
    """What the form said comes back, and as TOML for the command line."""
    assert result[0].startswith("/results/")
    board = re.search(r'href="(/boards/[^"/]+)"', client.get("/").get_data(as_text=True)).group(1)
    edit = client.get(f"{board}/edit").get_data(as_text=True)

    assert 'value="80 A"' in edit
    assert 'part = "QX80N50"' in client.get(f"{board}/board.toml").get_data(as_text=True)
    assert client.get(f"{board}/circuit.svg").data.startswith(b"<?xml")


def test_a_part_that_was_met_before_says_where(result, client):
    """Looking the marking up again names the board and the result."""
    page = client.get("/parts/?marking=QX8ON50").get_data(as_text=True)

    assert "seen before on" in page
    assert f'href="{result[0]}"' in page


def test_a_result_keeps_the_contracts_report(result, store):
    """The frozen text is a report of the published schema."""
    with store.looking() as shelf:
        (kept,) = shelf.results.listed()

    assert json.loads(kept.report)["schema"] == "switchbank.report/1"
    assert result[0].endswith(kept.id)


def test_the_bench_names_the_next_step_of_a_board(result, client, send):
    """First to compare what was printed, then, once all was seen, to measure what would decide."""
    path, _ = result
    bench = client.get("/").get_data(as_text=True)
    assert re.search(r"compare \d+ printed values with the page", bench)
    assert "80 A for hours" in bench
    while seen := first_look(client.get(f"{path}/look").get_data(as_text=True)):
        send(f"{path}/look", {"seen": seen, "back": f"{path}/look"}, to="/parts/readings/confirm")

    bench = client.get("/").get_data(as_text=True)
    assert "Next: measure. Holds at 80 A if each switch sheds heat" in bench


def test_the_bench_says_why_a_board_asks_to_be_judged_again(result, client, send):
    """The reason stands on the bench, before all that is merely unfinished."""
    path, _ = result
    send(f"{path}/look", {"version": "1", "written": "6 mohm", "why": "misread", "back": path}, to="/parts/readings/r-rds_on-5/correct")

    bench = client.get("/").get_data(as_text=True)
    assert "Out of date:" in bench
    assert "misread" in bench.split("Out of date:")[1]
