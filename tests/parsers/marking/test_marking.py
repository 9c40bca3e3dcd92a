"""Markings as eyes and cameras read them off small packages."""

import string

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parsers.marking import explain, fold, likely, rank
from service.facts.change import Change
from service.facts.part import NameKind, PartName, part_key

ACT = Change(by="Ada", at="2026-11-02T09:00:00Z", why="from its sheet")
MARKINGS = st.text(string.ascii_uppercase + string.digits, min_size=3, max_size=14)
# From the brief of this service's look-up: what eye and OCR confuse.
CONFUSED = [
    ("0", "O"),
    ("0", "Q"),
    ("0", "D"),
    ("1", "I"),
    ("1", "L"),
    ("8", "B"),
    ("5", "S"),
    ("2", "Z"),
    ("6", "G"),
    ("7", "T"),
    ("U", "V"),
    ("4", "A"),
]


def name(text: str, kind: NameKind = NameKind.PART_NUMBER) -> PartName:
    """A known name."""
    return PartName(part=part_key(text), text=text, kind=kind, fold=fold(text), change=ACT)


@pytest.mark.parametrize("pair", CONFUSED, ids="".join)
def test_characters_that_look_alike_fold_to_one(pair: tuple[str, str]) -> None:
    """Either may have been meant."""
    assert fold(f"X{pair[0]}X") == fold(f"X{pair[1]}X")


def test_characters_that_do_not_look_alike_stay_apart() -> None:
    """Nine groups, and what is in none."""
    alone = set(string.ascii_uppercase + string.digits) - {letter for pair in CONFUSED for letter in pair}

    assert len({fold(letter) for letter in alone}) == len(alone)
    assert len({fold(letter) for letter in string.ascii_uppercase + string.digits}) == len(alone) + 9


def test_separators_and_case_do_not_count_and_doubt_stays() -> None:
    """As `wanted_key` says."""
    assert fold("xy-3 n?") == "XY3N?"


@given(MARKINGS)
def test_folding_twice_is_folding_once(marking: str) -> None:
    """The folded form is stable."""
    assert fold(fold(marking)) == fold(marking)


@given(MARKINGS)
def test_the_very_marking_is_a_hit_at_no_cost(marking: str) -> None:
    """Every name explains itself."""
    hit = explain(marking, name(marking))

    assert hit is not None
    assert (hit.cost, hit.reason) == (0.0, f"the same characters (part number {marking})")


@given(MARKINGS.filter(lambda text: len(text) > 3), st.data())
def test_one_character_in_doubt_leaves_a_hit(marking: str, data: st.DataObject) -> None:
    """Whatever stands there."""
    place = data.draw(st.integers(0, len(marking) - 1))
    hit = explain(marking[:place] + "?" + marking[place + 1 :], name(marking))

    assert hit is not None
    assert 0 < hit.cost <= 0.6


@pytest.mark.parametrize(
    ("seen", "known", "reason"),
    [
        ("AB75N40", "AB75N40", "the same characters"),
        ("ab-75n40", "AB75N40", "the same characters"),
        ("AB7SN4O", "AB75N40", "S taken as 5, O taken as 0"),
        ("A875N40", "AB75N40", "8 taken as B"),
        ("AB7?N40", "AB75N40", "? taken as 5"),
        ("B75N40", "AB75N40", "A not on the package"),
        ("AB75N40", "AB75N40TR", "TR not on the package"),
        ("AB75N60", "AB75N40", "6 is not 4"),
        ("AB75N04", "AB75N40", "04 swapped to 40"),
        ("AB755N40", "AB75N40", "5 too many"),
        ("AB7N40", "AB75N40", "5 missing"),
    ],
)
def test_the_reason_says_what_was_explained_away(seen: str, known: str, reason: str) -> None:
    """Worked out by laying the two texts side by side."""
    hit = explain(seen, name(known))

    assert hit is not None
    assert hit.reason == f"{reason} (part number {known})"


@pytest.mark.parametrize(
    ("seen", "known"), [("AB75N40", "XY12P30"), ("AB", "AB75N40"), ("??????", "AB75N40"), ("", "AB75N40"), ("AB75N40", "AB95P60")]
)
def test_what_merely_resembles_is_no_hit(seen: str, known: str) -> None:
    """Three other characters, or too few that are certain, mean another part."""
    assert explain(seen, name(known)) is None


def test_hits_are_ranked_by_what_has_to_be_explained_away() -> None:
    """The same, alike, in doubt or left out, another character."""
    names = [name(text) for text in ("AB75N60", "AB75N40X", "A875N40", "AB75N40", "QQQQQQ")]

    assert [hit.name.text for hit in rank("AB75N40", names)] == ["AB75N40", "A875N40", "AB75N40X", "AB75N60"]


def test_the_kind_of_the_name_is_told() -> None:
    """A top marking leads to its part."""
    (hit,) = rank("A75N", [name("A75N", NameKind.TOP_MARKING)])

    assert hit.reason == "the same characters (top marking A75N)"


def test_likely_readings_begin_with_what_was_seen() -> None:
    """Then one character after the other taken for one that looks alike; doubt stays."""
    assert likely("n-8?S", most=9) == ("N8?S", "NB?S", "N8?5")
    assert likely("N0", most=3) == ("N0", "NO", "NQ")
