"""A person's word on a printed value, and what it does to results."""

from collections.abc import Callable

import pytest

from service.facts.change import Change
from service.facts.keeping_error import MovedOnError
from service.facts.kept_reading import Standing
from service.facts.reading import Conditions, Limit, Reading, Sheet
from service.facts.result import InputKind, Result, UsedInput
from service.formats.errors import UnitError
from service.usecases.freeze_result import UnknownInputError, freeze_result
from service.usecases.ports import Store
from service.usecases.review_reading import NothingCorrectedError, UnknownReadingError, confirm, correct, reject

Act = Callable[..., Change]
USED = UsedInput(kind=InputKind.READING, id="r-1", version=1, name="rds_on max")


@pytest.fixture(autouse=True)
def _kept(sheet: Callable[..., Sheet], keep: Callable[[Sheet], None]) -> None:
    """A sheet with one accepted reading of 2.4 mohm."""
    keep(sheet())


def out_of_date(store: Store, result_id: str) -> list[str]:
    """Why a result is out of date."""
    with store.looking() as shelf:
        return [reason.reason for reason in shelf.results.find(result_id).out_of_date]


def test_a_confirmation_says_who_when_and_why(store: Store, act: Act) -> None:
    """And a result of the reading stays up to date: the value did not change."""
    kept = confirm("r-1", version=1, store=store, change=act("saw the crop"))

    assert (kept.version, kept.standing, kept.settled, kept.usable, kept.seen_by_a_person) == (2, Standing.CONFIRMED, act("saw the crop"), True, True)
    with store.looking() as shelf:
        assert shelf.readings.find("r-1") == kept


@pytest.mark.parametrize(
    ("written", "value", "unit", "si"),
    [
        ("2.6 mohm", 2.6, "mohm", 0.0026),
        ("2.6 mΩ", 2.6, "mohm", 0.0026),
        ("0.0026 ohm", 0.0026, "ohm", 0.0026),
    ],
)
def test_a_correction_carries_the_figure_as_a_person_writes_it(store: Store, act: Act, written: str, value: float, unit: str, si: float) -> None:
    """The reader's figure, its place and its quote are kept beside it."""
    kept = correct("r-1", written=written, version=1, store=store, change=act())

    assert (kept.standing, kept.reading.value, kept.reading.unit, kept.reading.si) == (Standing.CORRECTED, value, unit, si)
    assert (kept.as_read.value, kept.reading.bbox, kept.reading.quote) == (2.4, kept.as_read.bbox, "RDS(on) 2.4")


def test_a_correction_may_be_of_the_end_or_of_the_condition_alone(store: Store, act: Act) -> None:
    """The number was right, what it means was not."""
    kept = correct("r-1", written="2.4 mohm", limit=Limit.TYP, cond=Conditions(vgs=4.5), version=1, store=store, change=act())

    assert (kept.reading.si, kept.reading.limit, kept.reading.cond) == (0.0024, Limit.TYP, Conditions(vgs=4.5))


@pytest.mark.parametrize("written", ["2.6", "2.6 V", "two", "1e999 mohm", ""])
def test_a_correction_that_is_no_quantity_of_this_kind_changes_nothing(store: Store, act: Act, written: str) -> None:
    """The error says what is allowed."""
    with pytest.raises(UnitError, match="mohm"):
        correct("r-1", written=written, version=1, store=store, change=act())

    with store.looking() as shelf:
        assert shelf.readings.find("r-1").version == 1


def test_a_correction_to_what_stands_is_no_correction(store: Store, act: Act) -> None:
    """It is a confirmation."""
    with pytest.raises(NothingCorrectedError, match="confirm it instead"):
        correct("r-1", written="2.4 mohm", version=1, store=store, change=act())


def test_who_saw_an_older_version_has_to_look_again(store: Store, act: Act) -> None:
    """Two people on the same page: the second is told what the first said."""
    correct("r-1", written="2.6 mohm", version=1, store=store, change=act("it says 2.6"))

    with pytest.raises(MovedOnError, match=r"now says 2\.6 mohm \(max\) \(corrected\): it says 2\.6; look again"):
        confirm("r-1", version=1, store=store, change=act(by="Ben"))


def test_a_reading_that_nobody_knows_is_told(store: Store, act: Act) -> None:
    """Rather than making one up."""
    with pytest.raises(UnknownReadingError, match="r-9"):
        reject("r-9", version=1, store=store, change=act())


def test_a_confirmation_leaves_results_up_to_date(store: Store, act: Act, result: Callable[..., Result]) -> None:
    """The value that they used still stands."""
    freeze_result(result(USED), store=store)
    confirm("r-1", version=1, store=store, change=act())

    assert out_of_date(store, "a") == []


def test_a_correction_puts_every_result_that_used_the_reading_out_of_date(store: Store, act: Act, result: Callable[..., Result]) -> None:
    """With the reason; a result of something else stays."""
    freeze_result(result(USED), store=store)
    freeze_result(result(name="other"), store=store)
    correct("r-1", written="2.6 mohm", version=1, store=store, change=act("the crop says 2.6"))

    assert out_of_date(store, "a") == ["rds_on max on page 2 was 2.4 mohm (max), now it is 2.6 mohm (max): the crop says 2.6"]
    assert out_of_date(store, "other") == []


def test_a_rejection_does_too(store: Store, act: Act, result: Callable[..., Result]) -> None:
    """With its own words."""
    freeze_result(result(USED), store=store)
    reject("r-1", version=1, store=store, change=act("a curve's label"))

    assert out_of_date(store, "a") == ["rds_on max on page 2 was rejected: a curve's label"]


def test_a_newer_reader_that_sees_another_value_does_too(
    store: Store, result: Callable[..., Result], sheet: Callable[..., Sheet], reading: Callable[..., Reading], keep: Callable[[Sheet], None]
) -> None:
    """A better reading of the same page is a change like any other; the same value again is none."""
    freeze_result(result(USED), store=store)
    keep(sheet(reader_version="2"))
    assert out_of_date(store, "a") == []
    keep(sheet(reader_version="3", readings=(reading(value=2.6, printed="2.6", si=0.0026),)))

    assert out_of_date(store, "a") == ["rds_on max on page 2 was 2.4 mohm (max), now it is 2.6 mohm (max): read by 3"]


def test_a_correction_and_its_marks_are_one_step(store: Store, act: Act, result: Callable[..., Result], monkeypatch: pytest.MonkeyPatch) -> None:
    """If the marks cannot be made the correction is not kept either."""
    freeze_result(result(USED), store=store)
    with store.looking() as shelf:
        results = type(shelf.results)

    def torn(_self: object, _reasons: object) -> None:
        raise OSError("disk full")

    monkeypatch.setattr(results, "mark", torn)
    with pytest.raises(OSError, match="disk full"):
        correct("r-1", written="2.6 mohm", version=1, store=store, change=act())
    monkeypatch.undo()

    with store.looking() as shelf:
        assert (shelf.readings.find("r-1").version, len(shelf.readings.history("r-1"))) == (1, 1)


def test_what_was_corrected_while_a_result_was_computed_marks_it_as_it_is_frozen(store: Store, act: Act, result: Callable[..., Result]) -> None:
    """No result slips through between the looking and the keeping."""
    correct("r-1", written="2.6 mohm", version=1, store=store, change=act("the crop says 2.6"))
    frozen = freeze_result(result(USED), store=store)

    assert [reason.reason for reason in frozen.out_of_date] == out_of_date(store, "a")
    assert out_of_date(store, "a") == ["rds_on max on page 2 was 2.4 mohm (max), now it is 2.6 mohm (max): the crop says 2.6"]


@pytest.mark.parametrize("missing", [("r-9", 1), ("r-1", 2), ("r-1", 0)])
def test_a_result_of_what_the_store_does_not_hold_is_refused(store: Store, result: Callable[..., Result], missing: tuple[str, int]) -> None:
    """Every input by identity and version."""
    used = UsedInput(kind=InputKind.READING, id=missing[0], version=missing[1], name="rds_on max")

    with pytest.raises(UnknownInputError, match=missing[0]):
        freeze_result(result(used), store=store)
    with store.looking() as shelf:
        assert shelf.results.listed() == ()


def test_a_result_is_never_different(store: Store, act: Act, result: Callable[..., Result]) -> None:
    """Marked, and otherwise as it was frozen."""
    frozen = freeze_result(result(USED), store=store)
    correct("r-1", written="2.6 mohm", version=1, store=store, change=act())

    with store.looking() as shelf:
        now = shelf.results.find("a")
    assert (now.report, now.inputs, now.change) == (frozen.report, frozen.inputs, frozen.change)
