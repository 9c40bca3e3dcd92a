"""Each kind of slip in a board file is named where it stands, with what may stand there."""

import pytest

from service.formats.board import read_board
from service.formats.errors import BoardError


@pytest.mark.parametrize(
    ("table", "key", "words"),
    [
        ({"typed": {"Q": {"vds_max": {}}}}, "typed.Q.vds_max", "at least one of min, typ, max"),
        ({"typed": {"Q": {"rds_on_vs_tj": [[25, 1.0]]}}}, "typed.Q.rds_on_vs_tj", "temperatures rising"),
        ({"typed": {"Q": {"rds_on_vs_tj": [[100, 1.5], [25, 1.0]]}}}, "typed.Q.rds_on_vs_tj", "temperatures rising"),
        ({"typed": {"Q": {"rds_on_vs_tj": [[25, True], [100, 1.5]]}}}, "typed.Q.rds_on_vs_tj", "temperatures rising"),
        ({"typed": {"Q": {"rds_on_vs_tj": "1.5"}}}, "typed.Q.rds_on_vs_tj", "not a list of pairs"),
        ({"typed": {"Q": {"zth_foster": [["0.1 K/W", "0 ms"]]}}}, "typed.Q.zth_foster", "above 0 s"),
        ({"typed": {"Q": {"zth_foster": [["0.1 K/W"]]}}}, "typed.Q.zth_foster", "not a list of pairs"),
        ({"typed": {"Q": {"zth": [["2 ms", "0.2 K/W"], ["1 ms", "0.1 K/W"]]}}}, "typed.Q.zth", "times do not rise"),
        ({"typed": {"Q": {"polarity": "X"}}}, "typed.Q.polarity", "N, P, N+N, P+P, N+P"),
        ({"typed": {"Q": {"package": 7}}}, "typed.Q.package", "not a text"),
        ({"typed": {"Q": 7}}, "typed.Q", "not a table"),
        ({"cooling": {"ambient": "900 °C"}}, "cooling.ambient", "-100 degC to 500 degC"),
        ({"cooling": {"ambient": {"value": "40 °C", "known": "guessed"}}}, "cooling.ambient", "printed, typed, counted"),
        ({"cooling": {"ambient": {"value": "40 °C", "on": "yesterday"}}}, "cooling.ambient", "a date like 2026-11-02"),
        ({"cooling": {"ambient": {"value": "40 °C", "who": "me"}}}, "cooling.ambient", "no such key"),
        ({"cooling": {"ambient": {"known": "measured"}}}, "cooling.ambient", "text with its unit"),
        ({"cooling": {"ambient": "40 °C to 20 °C"}}, "cooling.ambient", "from high to low"),
        ({"claim": {"continuous": "80 A", "surge": "160 A for 10"}}, "claim.surge", "a bare number"),
        ({"discharge_bank": {"switches": 6}}, "discharge_bank.part", "missing"),
        ({"discharge_bank": {"part": "", "switches": 6}}, "discharge_bank.part", "no name of a part"),
        ({"discharge_bank": {"part": "sha256:12", "switches": 6}}, "discharge_bank.part", "no SHA-256"),
        (
            {"discharge_bank": {"part": "typed:AB75N4O", "switches": 6}, "typed": {"AB75N40": {}}},
            "discharge_bank.part",
            "did you mean typed:AB75N40?",
        ),
        ({"schema": "switchbank.board/2"}, "schema", "switchbank.board/1"),
        ({"board": {"recloses_on_current": "yes"}}, "board.recloses_on_current", "true, false"),
        ({"board": {"shunt": "0 mohm"}}, "board.shunt", "above 0 ohm"),
    ],
)
def test_a_slip_is_named_with_what_may_stand_there(least, table, key, words):
    """The key in full, and words that lead on."""
    with pytest.raises(BoardError) as caught:
        read_board(least | table)

    told = [str(problem) for problem in caught.value.problems if problem.key == key]
    assert told, caught.value.problems
    assert words in told[0]


@pytest.mark.parametrize(
    "table",
    [
        {"typed": {"Q": {"zth": [["1 ms", "0.2 K/W"], ["10 ms", "0.5 K/W"]]}}},
        {"board": {"joints": "0 mohm"}},
        {"fault": {"extra_inductance": "0 uH"}},
        {"claim": {"continuous": "80 A to 90 A"}},
        {"claim": {"continuous": "80 A", "surge": {"value": "160 A for 10 s", "known": "claimed"}}},
        {"typed": {"Q": {"vds_max": [{"max": {"value": "75 V", "known": "printed", "by": "R. Vell"}}]}}},
    ],
)
def test_what_is_unusual_but_right_is_taken(least, table):
    """No joints at all, a band for a claim, a surge with how it is known."""
    assert read_board(least | table)
