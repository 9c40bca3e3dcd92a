"""`switchbank judge`: boards from files and from four options, answers for people and for programs, errors that can be acted on."""

import json
import os
import re
import tomllib
from importlib.resources import files
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

COOLING = "junction_to_air, case_to_board, board_to_air, ambient, board_heat_capacity, board_limit"
WORKED = Path(__file__).with_name("worked-by-hand.toml")


def schema(name: str) -> Draft202012Validator:
    """The published schema."""
    return Draft202012Validator(json.loads(files("service.api").joinpath("schemas", f"{name}.json").read_text(encoding="utf-8")))


@pytest.fixture
def worked(run):
    """The report of the board that the contract works by hand."""
    shown = run("judge", WORKED, "--json")
    assert shown.code == 0, shown.err
    return json.loads(shown.out)


def finding(report: dict, check: str) -> dict:
    """The first finding of a check."""
    return next(one for one in report["findings"] if one["check"] == check)


def test_the_board_worked_by_hand_holds_if_its_switches_shed_heat(worked):
    """(175 - 40) / ((80/6)^2 x 0.005 x (448.15/298.15)^2.3) = 59.4857 K/W, rounded to the safe side (worked in the contract, no code)."""
    current = finding(worked, "continuous_current")

    assert current["outcome"] == "holds if"
    assert {name: current["condition"][name] for name in ("quantity", "relation", "value", "unit")} == {
        "quantity": "junction_to_air",
        "relation": "<=",
        "value": 59.48,
        "unit": "K/W",
    }


def test_its_largest_current_is_that_of_the_worst_corner(worked):
    """80 A x sqrt(59.4857 / 60) = 79.66 A at 60 K/W (worked in the contract)."""
    assert worked["inverse"]["continuous_a"]["value"] == pytest.approx(79.66, abs=0.01)
    assert worked["inverse"]["continuous_a"]["check"] == "continuous_current"


def test_its_voltage_holds_and_two_packs_may_be_stacked_under_every_rule_set(worked):
    """8 x 3.65 V = 29.2 V of 80 V; two packs are 58.4 V, within 0.75 x 80 V; three would be 87.6 V (worked in the contract)."""
    voltage = finding(worked, "drain_source_voltage")

    assert voltage["outcome"] == "holds"
    assert (voltage["demand"]["value"], voltage["limit"]["value"]) == (pytest.approx(29.2), pytest.approx(80.0))
    assert worked["inverse"]["packs_in_series"]["by_rule_set"] == {"maker": 2, "trade-80": 2, "eee-inst-002": 2}


def test_a_typed_part_keeps_the_result_provisional(worked):
    """No sheet stands behind it that a person could look at."""
    assert worked["provisional"] == {"value": True, "look_at": []}


def test_the_report_keeps_to_its_published_schema_and_carries_the_board(worked):
    """What leaves is what is promised, the board within it too, with its defaults named."""
    schema("report").validate(worked)
    schema("board").validate(worked["board"])

    assert worked["board"]["cooling"]["junction_to_air"]["value"] == "40 K/W to 60 K/W"
    assert worked["board"]["cooling"]["junction_to_air"]["known"] == "assumed"


def test_the_same_board_gives_the_same_bytes(run):
    """A report holds no times, hosts or paths."""
    assert run("judge", WORKED, "--json").out == run("judge", WORKED, "--json").out


def test_for_people_the_answer_stands_before_the_working(run):
    """One sentence a finding, what gives way first, what still holds, what to measure, and what a calculation cannot know."""
    shown = run("judge", WORKED)

    assert shown.code == 0
    order = ("HOLDS IF", "What gives way first", "The most that still holds", "What to measure or find out next", "Assumed")
    places = [shown.out.index(words) for words in order]
    assert places == sorted(places)
    assert "59.48 K/W" in shown.out
    assert "79.66 A" in shown.out


@pytest.mark.parametrize("rules", ["maker", "trade-80", "eee-inst-002"])
def test_a_rule_set_may_be_chosen(run, rules):
    """The option overrides the file."""
    assert json.loads(run("judge", WORKED, "--json", "--rules", rules).out)["rule_set"] == rules


def test_a_board_is_saved_as_a_file_that_judges_alike(run, tmp_path):
    """What --save writes can be judged, edited and judged again."""
    saved = tmp_path / "board.toml"
    first = run("judge", WORKED, "--json", "--save", saved)

    schema("board").validate(tomllib.loads(saved.read_text(encoding="utf-8")))
    assert run("judge", saved, "--json").out == first.out


def test_a_board_may_be_json(run, tmp_path):
    """The same tables in JSON are the same board."""
    as_json = tmp_path / "board.json"
    as_json.write_text(json.dumps(tomllib.loads(WORKED.read_text(encoding="utf-8"))), encoding="utf-8")

    assert run("judge", as_json, "--json").out == run("judge", WORKED, "--json").out


def test_every_problem_of_a_file_is_told_without_a_stack(run, tmp_path):
    """Key, value and what is allowed, a line each; code 2; nothing saved."""
    board, saved = tmp_path / "board.toml", tmp_path / "saved.toml"
    board.write_text(
        'claim = {continuous = 80}\ncells = {in_series = 40}\ndischarge_bank = {part = "A", switches = 6}\ncooling = {ambeint = "40 °C"}\n',
        encoding="utf-8",
    )
    ended = run("judge", board, "--save", saved)

    assert ended.code == 2
    assert not saved.exists()
    assert ended.err.splitlines() == [
        "switchbank: board.toml cannot be taken as it is:",
        "  claim.continuous = 80: a current is text with its unit, as in '80 A'; allowed: current in A, mA, uA, kA",
        "  cells.in_series = 40: not a count within the limits; allowed: a whole number from 1 to 32, without unit",
        f"  cooling.ambeint: no such key; did you mean ambient?; allowed: {COOLING}",
    ]


def test_a_problem_of_the_short_form_names_the_option(run):
    """Who typed options is answered in options."""
    ended = run("judge", "--part", "AB75N40", "--per-bank", 0, "--cells", 8, "--amps", "eighty")

    assert ended.code == 2
    assert "  --per-bank = 0: not a count within the limits" in ended.err
    assert "  --amps = 'eighty': does not begin with a plain number" in ended.err


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["judge"], "--part, --per-bank, --cells, --amps is missing"),
        (["judge", "--part", "AB75N40", "--cells", "8"], "--per-bank, --amps is missing"),
        (["judge", WORKED, "--part", "AB75N40"], "not both"),
        (["judge", "nowhere.toml"], "does not exist"),
        (["judge", WORKED, "--rules", "house"], "'house' is not one of"),
    ],
)
def test_wrong_use_ends_with_code_two(run, arguments, words):
    """Too little, too much, or what is not there."""
    ended = run(*arguments)

    assert ended.code == 2
    assert words in ended.err


@pytest.mark.parametrize("content", [b"claim = {", b"\xff\xfe", b"[" * 100_000, b"x" * 1_100_000], ids=["cut off", "no text", "nested", "huge"])
def test_a_file_that_is_no_board_is_told_so(run, tmp_path, content):
    """No stack, whatever lies in the file."""
    board = tmp_path / "board.toml"
    board.write_bytes(content)
    ended = run("judge", board)

    assert ended.code == 2
    assert ended.err.startswith("switchbank: board.toml: ")


def test_an_unknown_part_could_not_be_judged(run):
    """Code 3, with the three ways on, and what a part would have to be; looking leaves no data folder behind.

    By hand: 8 x 3.65 V = 29.2 V. With all switches alike 110 K / (60 K/W x (80/6 A)^2 x (423.15/298.15)^2.0) = 5.12 mohm at most; a low
    switch of a bank of six (1.25 times the conductance, handbook figure 1.152 for its heat when cold) takes up to 5.12 / 1.152 = 4.44 mohm.
    """
    ended = run("judge", "--part", "AB75N40", "--per-bank", 6, "--cells", 8, "--amps", 80)

    assert ended.code == 3
    assert not Path(os.environ["SWITCHBANK_DATA_DIR"]).exists()
    (milliohm,) = re.findall(r"rated for 29.2 V drain to source or more, and guaranteed to have ([0-9.]+) mohm or less", ended.err)
    assert 4.44 <= float(milliohm) <= 5.12
    assert "No kept part goes by 'AB75N40'" in ended.err
    assert "switchbank lookup AB75N40" in ended.err


def test_many_boards_are_drawn_when_somebody_asks(run):
    """By hand: only boards whose switches shed heat worse than 59.4857 K/W, at the worst of all else, pass the limit: next to none do."""
    shown = run("judge", WORKED, "--spread", "--json")
    spread = json.loads(shown.out)["spread"]

    schema("report").validate(json.loads(shown.out))
    assert (spread["boards"], spread["seed"]) == (100_000, 20_260)
    assert 0.999 < spread["holds"] < 1
    assert spread["banks"][0]["ranking"][0]["quantity"] == "junction_to_air"
    assert "spread" not in json.loads(run("judge", WORKED, "--json").out)


def test_many_boards_are_told_in_words(run):
    """Banks that are alike are told once, and almost all is not said as all."""
    told = run("judge", WORKED, "--spread").out

    assert "more than 99.99% hold" in told
    assert told.count("what moves the outcome most") == 1
    assert "Each bank: the temperature settles on 100.00%" in told
