"""From a marking on the board to a part, or to the list of those that wait."""

import random
from collections.abc import Callable

import pytest

from service.facts.change import Change
from service.facts.kept_board import KeptBoard
from service.facts.part import NameKind, Part, PartName, part_key
from service.facts.reading import Limit, Sheet
from service.facts.result import InputKind, Result, UsedInput
from service.facts.sourced import Known, Sourced
from service.facts.switch import RatedValue, Switch
from service.usecases.freeze_result import freeze_result
from service.usecases.look_up_marking import known_part, look_up_marking
from service.usecases.name_part import NoNameError, UnknownPartNameError, name_part
from service.usecases.ports import MarkingReader, Store
from service.usecases.type_part import CannotTypeError, type_part
from service.usecases.wait_for_sheet import NoMarkingError, search_phrase, stop_waiting, wait_for_sheet

Act = Callable[..., Change]


def typed(marking: str, *, ohm: float = 0.004) -> Switch:
    """A part as a person types it."""
    value = RatedValue(key="rds_on", limit=Limit.MAX, sourced=Sourced(value=ohm, unit="ohm", known=Known.TYPED))
    return Switch(marking=marking, values=(value,))


def test_a_marking_leads_to_its_part_and_to_where_it_was_met(
    store: Store, markings: MarkingReader, sheet: Callable[..., Sheet], keep: Callable[[Sheet], None], result: Callable[..., Result], act: Act
) -> None:
    """Boards and results of before stand beside the hit."""
    keep(sheet())
    board = KeptBoard(slug="dinghy", version=1, title="Dinghy", text="", document="{}", parts=("AB75N40",), change=act())
    with store.changing() as shelf:
        shelf.boards.save(board)
    frozen = freeze_result(result(), store=store)

    (hit,) = look_up_marking("A87?N4O", store=store, markings=markings)

    assert (hit.part.key, hit.exact) == ("AB75N40", False)
    assert hit.hit.reason == "8 taken as B, ? taken as 5, O taken as 0 (part number AB75N40)"
    assert (hit.boards, hit.results) == ((board,), (frozen,))


def test_a_part_with_several_names_is_one_hit(
    store: Store, markings: MarkingReader, sheet: Callable[..., Sheet], keep: Callable[[Sheet], None], act: Act
) -> None:
    """The name that explains best gives the reason."""
    keep(sheet())
    for name, kind in (("AB75N40-TR", NameKind.ORDERING_CODE), ("75N4", NameKind.TOP_MARKING)):
        name_part("ab75n40", name=name, kind=kind, store=store, markings=markings, change=act())

    (hit,) = look_up_marking("AB75N40TR", store=store, markings=markings)
    assert (hit.exact, hit.hit.reason) == (True, "the same characters (ordering code AB75N40-TR)")
    assert known_part("75n4", store=store) == hit.part
    assert known_part("75n5", store=store) is None


def test_a_top_marking_that_two_parts_share_gives_both(store: Store, markings: MarkingReader, act: Act) -> None:
    """Never silently one of them."""
    for marking in ("AB75N40", "XY12P30"):
        type_part(typed(marking), store=store, markings=markings, change=act())
        name_part(marking, name="A75", kind=NameKind.TOP_MARKING, store=store, markings=markings, change=act())

    assert [hit.part.key for hit in look_up_marking("A75", store=store, markings=markings)] == ["AB75N40", "XY12P30"]


def test_what_comes_near_nothing_gives_nothing(store: Store, markings: MarkingReader, act: Act) -> None:
    """An honest empty answer; also for a marking of doubts alone."""
    type_part(typed("AB75N40"), store=store, markings=markings, change=act())

    for marking in ("QQ99ZZ", "???", "", "--", "AB75N40" * 10_000):
        assert look_up_marking(marking, store=store, markings=markings) == ()


@pytest.mark.parametrize(("marking", "name"), [("AB75N40", "--"), ("AB75N40", "A?5"), ("AB75N40", "A" * 61)])
def test_a_name_needs_certain_characters(store: Store, markings: MarkingReader, act: Act, marking: str, name: str) -> None:
    """A doubt is for looking up, not for naming."""
    type_part(typed(marking), store=store, markings=markings, change=act())
    with pytest.raises(NoNameError):
        name_part(marking, name=name, kind=NameKind.TOP_MARKING, store=store, markings=markings, change=act())
    with pytest.raises(UnknownPartNameError, match="ZZ1"):
        name_part("ZZ1", name="A75", kind=NameKind.TOP_MARKING, store=store, markings=markings, change=act())


def test_a_typed_part_is_marked_as_typed_and_found(store: Store, markings: MarkingReader, act: Act) -> None:
    """Typed, no sheet: the engine sees it and stays provisional."""
    part = type_part(typed("ab-75n40"), store=store, markings=markings, change=act("from memory of the reel"))

    assert (part.key, part.sheets, part.typed.version, part.typed.switch.typed) == ("AB75N40", (), 1, True)
    assert part.typed.change == act("from memory of the reel")
    assert look_up_marking("AB75N40", store=store, markings=markings)[0].part == part


def test_a_typed_part_goes_on_waiting_for_its_sheet(store: Store, markings: MarkingReader, act: Act) -> None:
    """Unless it was on the list already, better described, or has one."""
    seen = wait_for_sheet("CD30", package="TO-263", pins=7, store=store, markings=markings, change=act())
    for marking in ("AB75N40", "CD30"):
        type_part(typed(marking), store=store, markings=markings, change=act())

    with store.looking() as shelf:
        assert {wanted.marking for wanted in shelf.wanted.listed()} == {"AB75N40", "CD30"}
        assert seen in shelf.wanted.listed()


def test_a_marking_leaves_the_list_when_it_turns_out_to_be_a_known_part(
    store: Store, markings: MarkingReader, act: Act, sheet: Callable[..., Sheet], keep: Callable[[Sheet], None]
) -> None:
    """By its new name, or by hand where a character stayed in doubt."""
    for marking in ("A75", "AB7?N40", "CD30"):
        wait_for_sheet(marking, store=store, markings=markings, change=act())
    keep(sheet())
    name_part("AB75N40", name="A75", kind=NameKind.TOP_MARKING, store=store, markings=markings, change=act())
    stop_waiting("ab7?n40", store=store)

    with store.looking() as shelf:
        assert [wanted.marking for wanted in shelf.wanted.listed()] == ["CD30"]


def test_typing_anew_puts_results_out_of_date_and_typing_the_same_does_not(
    store: Store, markings: MarkingReader, act: Act, result: Callable[..., Result]
) -> None:
    """Both typings are kept."""
    type_part(typed("AB75N40"), store=store, markings=markings, change=act())
    freeze_result(result(UsedInput(kind=InputKind.TYPED_PART, id="AB75N40", version=1, name="part")), store=store)

    assert type_part(typed("AB75N40"), store=store, markings=markings, change=act("again")).typed.version == 1
    assert type_part(typed("AB75N40", ohm=0.005), store=store, markings=markings, change=act("measured")).typed.version == 2
    with store.looking() as shelf:
        assert [reason.reason for reason in shelf.results.find("a").out_of_date] == ["AB75N40 was typed anew: measured"]


@pytest.mark.parametrize("switch", [typed(""), typed("A?1"), typed("A" * 61), typed("AB75N40", ohm=float("nan")), Switch(marking="AB75N40")])
def test_a_part_of_nothing_cannot_be_typed(store: Store, markings: MarkingReader, act: Act, switch: Switch) -> None:
    """Nothing half-saved."""
    with pytest.raises(CannotTypeError):
        type_part(switch, store=store, markings=markings, change=act())
    with store.looking() as shelf:
        assert shelf.parts.listed() == ()


def test_a_part_waits_for_its_sheet_until_it_comes(
    store: Store, markings: MarkingReader, act: Act, sheet: Callable[..., Sheet], keep: Callable[[Sheet], None]
) -> None:
    """With a phrase to copy."""
    wanted = wait_for_sheet(" AB75N40 ", package="TO-263", pins=7, store=store, markings=markings, change=act())
    with store.looking() as shelf:
        assert shelf.wanted.listed() == (wanted,)
    assert wanted.phrase == '"AB75N40" OR "4B75N40" OR "A875N40" OR "ABT5N40" TO-263 7-pin MOSFET datasheet'
    keep(sheet())

    with store.looking() as shelf:
        assert shelf.wanted.listed() == ()


def test_a_phrase_says_only_what_is_known(markings: MarkingReader) -> None:
    """A character in doubt may be any."""
    assert search_phrase("N?3", markings=markings) == '"N*3" MOSFET datasheet'


@pytest.mark.parametrize("marking", ["", "??", " - ", "A" * 61])
def test_a_marking_of_doubts_alone_cannot_wait(store: Store, markings: MarkingReader, act: Act, marking: str) -> None:
    """There would be nothing to search for."""
    with pytest.raises(NoMarkingError):
        wait_for_sheet(marking, store=store, markings=markings, change=act())


def test_among_three_hundred_invented_parts_a_misread_marking_finds_its_own(store: Store, markings: MarkingReader, act: Act) -> None:
    """One doubt and one confusion, 30 times: the part is among the first five, as the handbook measured for its way of search."""
    chance = random.Random(20261125)  # noqa: S311 - repeatable noise, no secret
    letters = "ABCDFGHKLMNPRSTXYZ"
    numbers = {
        f"{chance.choice(letters)}{chance.choice(letters)}{chance.randint(10, 399)}{chance.choice('NP')}{chance.randint(3, 15):02d}"
        for _part in range(300)
    }
    with store.changing() as shelf:
        for number in sorted(numbers):
            shelf.parts.add(Part(key=part_key(number), marking=number))
            name = PartName(part=part_key(number), text=number, kind=NameKind.PART_NUMBER, fold=markings.fold(number), change=act())
            shelf.parts.name(name)

    for number in chance.sample(sorted(numbers), 30):
        places = chance.sample(range(len(number)), 2)
        seen = list(number)
        seen[places[0]] = "?"
        seen[places[1]] = {"0": "O", "1": "I", "8": "B", "5": "S", "2": "Z", "A": "4"}.get(seen[places[1]], seen[places[1]])
        hits = look_up_marking("".join(seen), store=store, markings=markings)
        assert number in [hit.part.key for hit in hits[:5]], "".join(seen)
