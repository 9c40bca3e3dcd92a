"""Parts, their names and the waiting list on both shelves."""

from dataclasses import replace

import pytest

from service.facts.change import Change
from service.facts.document import Document
from service.facts.keeping_error import MovedOnError
from service.facts.part import NameKind, Part, PartName, TypedPart, Wanted
from service.facts.reading import Conditions, Limit
from service.facts.sourced import Attestation, Known, Sourced
from service.facts.switch import RatedValue, Switch
from service.usecases.ports import Store

SWITCH = Switch(
    marking="CD30",
    package="TO-263",
    values=(
        RatedValue(
            key="rds_on",
            limit=Limit.MAX,
            sourced=Sourced(value=0.004, unit="ohm", known=Known.TYPED, attested=Attestation(by="Ada", on="2026-11-02")),
            cond=Conditions(vgs=10.0),
        ),
    ),
    on_resistance_curve=((-40.0, 0.7), (25.0, 1.0)),
    typed=True,
)


def _name(text: str, change: Change, *, part: str = "AB75N40", fold: str | None = None) -> PartName:
    return PartName(part=part, text=text, kind=NameKind.TOP_MARKING, fold=fold or text, change=change)


def test_a_part_is_found_by_any_spelling_of_any_name(store: Store, change: Change) -> None:
    """Spaces, hyphens and small letters make no other part."""
    with store.changing() as shelf:
        shelf.parts.add(Part(key="AB75N40", marking="AB75N40"))
        shelf.parts.name(_name("A75-N", change))

    with store.looking() as shelf:
        part = shelf.parts.find("ab 75n40")
        assert (part.key, part.names) == ("AB75N40", (_name("A75-N", change),))
        assert shelf.parts.find("a75n") == part
        assert shelf.parts.find("XY1") is None


def test_a_parts_own_number_comes_before_anothers_nickname(store: Store, change: Change) -> None:
    """A name that somebody gave cannot hide a part."""
    with store.changing() as shelf:
        for key in ("AB75N40", "A75N"):
            shelf.parts.add(Part(key=key, marking=key))
        shelf.parts.name(_name("A75N", change))

    with store.looking() as shelf:
        assert shelf.parts.find("A75N").key == "A75N"


def test_a_part_or_name_that_is_there_stays_as_it_is(store: Store, change: Change) -> None:
    """Entering again changes nothing."""
    with store.changing() as shelf:
        shelf.parts.add(Part(key="AB75N40", marking="AB75N40"))
        shelf.parts.name(_name("A75N", change))
        shelf.parts.add(Part(key="AB75N40", marking="ab75n40"))
        shelf.parts.name(_name("A-75N", replace(change, by="Ben")))

    with store.looking() as shelf:
        assert shelf.parts.listed() == (Part(key="AB75N40", marking="AB75N40", names=(_name("A75N", change),)),)


def test_the_sheet_linked_last_is_used_first(store: Store, document: Document) -> None:
    """Several datasheets a part; linking one again brings it to the front."""
    newer = replace(document, sha256="cd" * 32)
    with store.changing() as shelf:
        shelf.parts.add(Part(key="AB75N40", marking="AB75N40"))
        for each in (document, newer, document):
            shelf.documents.add(each)
            shelf.parts.link("AB75N40", each.sha256)

    with store.looking() as shelf:
        assert shelf.parts.find("AB75N40").sheets == (document.sha256, newer.sha256)
        assert [part.key for part in shelf.parts.of_sheet(newer.sha256)] == ["AB75N40"]
        assert shelf.parts.of_sheet("00" * 32) == ()


def test_typed_figures_come_back_as_they_went_in(store: Store, change: Change) -> None:
    """Bands, conditions, curves and who typed them."""
    first = TypedPart(part="CD30", version=1, switch=SWITCH, change=change)
    second = replace(first, version=2, switch=replace(SWITCH, package="TO-252"))
    with store.changing() as shelf:
        shelf.parts.add(Part(key="CD30", marking="CD30"))
        shelf.parts.type_in(first)
        assert shelf.parts.find("CD30").typed == first
        shelf.parts.type_in(second)

    with store.looking() as shelf:
        assert shelf.parts.find("CD30").typed == second
    with pytest.raises(MovedOnError), store.changing() as shelf:
        shelf.parts.type_in(second)


def test_near_names_share_characters_the_likeliest_first(store: Store, change: Change) -> None:
    """A character in doubt costs its neighbours, not the hit; what shares nothing is left out."""
    folds = {"AB75N40": "AB75N40", "AB75N60": "AB75N60", "QQQQ": "QQQQ", "AB75N40X9": "AB75N40X9"}
    with store.changing() as shelf:
        for text, fold in folds.items():
            shelf.parts.add(Part(key=text, marking=text))
            shelf.parts.name(_name(text, change, part=text, fold=fold))

    with store.looking() as shelf:
        assert [name.text for name in shelf.parts.near("AB?5N40", most=9)] == ["AB75N40", "AB75N40X9", "AB75N60"]
        assert len(shelf.parts.near("AB?5N40", most=2)) == 2
        assert shelf.parts.near("??", most=9) == ()


def test_a_marking_waits_once_as_last_said(store: Store, change: Change) -> None:
    """Asking again does not lengthen the list; a doubtful character keeps two markings apart."""
    first = Wanted(marking="AB7?N", package="", pins=None, phrase="AB7N datasheet", change=change)
    better = replace(first, marking="ab7?n", package="TO-263", pins=7, change=replace(change, by="Ben"))
    other = replace(first, marking="AB7N")
    for wanted in (first, better, other):
        with store.changing() as shelf:
            shelf.wanted.add(wanted)

    with store.changing() as shelf:
        assert set(shelf.wanted.listed()) == {other, better}
        shelf.wanted.drop("AB7?N")
        shelf.wanted.drop("never there")
        assert shelf.wanted.listed() == (other,)
