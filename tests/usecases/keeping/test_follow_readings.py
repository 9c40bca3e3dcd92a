"""A file is read again by a newer reader: what becomes of what is kept."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.facts.change import Change
from service.facts.kept_reading import KeptReading, Standing
from service.facts.reading import Conditions, Limit, Reading, Refused, Sheet, Status
from service.usecases.follow_readings import follow_readings, overlap
from service.usecases.ports import Store
from service.usecases.review_reading import confirm, correct, reject

Make = Callable[..., Reading]
Act = Callable[..., Change]

MOVED = (302.0, 201.0, 322.0, 211.0)


def stands(store: Store, sheet: Sheet) -> tuple[KeptReading, ...]:
    """What stands of a file."""
    with store.looking() as shelf:
        return shelf.readings.of_sheet(sheet.sha256)


@pytest.fixture
def again(reading: Make) -> Make:
    """Make the same reading as a newer reader sees it: another id, a box that moved a little."""
    return lambda **changed: reading(**({"id": "r-1-newer", "bbox": MOVED} | changed))


def test_a_first_reading_stands_as_its_evidence_says(store: Store, sheet: Callable[..., Sheet], reading: Make, keep: Callable[[Sheet], None]) -> None:
    """Accepted where evidence agrees, else review."""
    doubtful = reading(id="r-2", key="pd", status=Status.REVIEW, page=3)
    keep(sheet(readings=(reading(), doubtful)))

    assert [(kept.id, kept.version, kept.standing) for kept in stands(store, sheet())] == [
        ("r-1", 1, Standing.ACCEPTED),
        ("r-2", 1, Standing.REVIEW),
    ]


def test_reading_again_with_the_same_reader_adds_nothing(store: Store, sheet: Callable[..., Sheet], keep: Callable[[Sheet], None]) -> None:
    """The same sheet twice is one entry."""
    keep(sheet())
    keep(sheet())

    assert [kept.version for kept in stands(store, sheet())] == [1]


@pytest.mark.parametrize("status", Status)
def test_a_confirmation_follows_to_the_place_as_a_newer_reader_sees_it(
    store: Store, sheet: Callable[..., Sheet], again: Make, keep: Callable[[Sheet], None], act: Act, status: Status
) -> None:
    """Even where the newer reader is less sure of itself than the person was."""
    keep(sheet())
    confirm("r-1", version=1, store=store, change=act("saw it"))
    keep(sheet(reader_version="2", readings=(again(status=status),)))

    (kept,) = stands(store, sheet())
    assert (kept.id, kept.version, kept.standing, kept.reader_version) == ("r-1", 3, Standing.CONFIRMED, "2")
    assert kept.settled == act("saw it")
    assert kept.reading == kept.as_read == again(status=status)


@pytest.mark.parametrize(
    "changed",
    [{"value": 2.6, "printed": "2.6", "si": 0.0026}, {"unit": "ohm", "si": 2.4}, {"cond": Conditions(vgs=4.5)}, {"cond": Conditions()}],
    ids=["number", "unit", "condition", "no condition"],
)
def test_a_changed_value_goes_back_to_review(
    store: Store, sheet: Callable[..., Sheet], again: Make, keep: Callable[[Sheet], None], act: Act, changed: dict[str, object]
) -> None:
    """With the reason, and with the person's word kept in the history."""
    keep(sheet())
    confirm("r-1", version=1, store=store, change=act("saw it"))
    keep(sheet(reader_version="2", readings=(again(**changed),)))

    (kept,) = stands(store, sheet())
    assert (kept.standing, kept.settled) == (Standing.REVIEW, None)
    assert kept.change.why.startswith("Ada had settled 2.4 mohm (max), reader 2 reads ")
    with store.looking() as shelf:
        assert [entry.standing for entry in shelf.readings.history("r-1")] == [Standing.ACCEPTED, Standing.CONFIRMED, Standing.REVIEW]


def test_another_remark_is_not_another_value(store: Store, sheet: Callable[..., Sheet], again: Make, keep: Callable[[Sheet], None], act: Act) -> None:
    """How a reader words a footnote takes no confirmation away."""
    keep(sheet())
    confirm("r-1", version=1, store=store, change=act())
    keep(sheet(reader_version="2", readings=(again(cond=Conditions(vgs=10.0, note="pulsed")),)))

    assert [kept.standing for kept in stands(store, sheet())] == [Standing.CONFIRMED]


@pytest.mark.parametrize("figure", [{}, {"value": 2.6, "printed": "2.6", "si": 0.0026}], ids=["the former misreading", "the corrected value"])
def test_a_correction_stands_against_the_misreading_and_with_the_agreement(
    store: Store, sheet: Callable[..., Sheet], again: Make, keep: Callable[[Sheet], None], act: Act, figure: dict[str, object]
) -> None:
    """A newer reader that errs as before changes nothing; one that now sees what the person saw agrees."""
    keep(sheet())
    correct("r-1", written="2.6 mohm", version=1, store=store, change=act("it says 2.6"))
    keep(sheet(reader_version="2", readings=(again(**figure),)))
    keep(sheet(reader_version="3", readings=(again(**figure, id="r-1-newest"),)))

    (kept,) = stands(store, sheet())
    assert (kept.version, kept.standing, kept.reading.si, kept.reading.bbox) == (4, Standing.CORRECTED, 0.0026, MOVED)


def test_a_third_figure_asks_for_a_second_look_at_a_correction(
    store: Store, sheet: Callable[..., Sheet], again: Make, keep: Callable[[Sheet], None], act: Act
) -> None:
    """Neither what was read before nor what the person said."""
    keep(sheet())
    correct("r-1", written="2.6 mohm", version=1, store=store, change=act())
    keep(sheet(reader_version="2", readings=(again(value=2.8, printed="2.8", si=0.0028),)))

    (kept,) = stands(store, sheet())
    assert (kept.standing, kept.reading.printed) == (Standing.REVIEW, "2.8")
    assert kept.change.why == "Ada had settled 2.6 mohm (max), reader 2 reads 2.8 mohm (max)"


def test_what_was_rejected_stays_rejected(store: Store, sheet: Callable[..., Sheet], again: Make, keep: Callable[[Sheet], None], act: Act) -> None:
    """While the reader goes on seeing the same."""
    keep(sheet())
    reject("r-1", version=1, store=store, change=act("a curve's label"))
    keep(sheet(reader_version="2", readings=(again(),)))

    assert [kept.standing for kept in stands(store, sheet())] == [Standing.REJECTED]


def test_what_a_newer_reader_no_longer_finds_waits_unless_a_person_settled_it(
    store: Store, sheet: Callable[..., Sheet], reading: Make, keep: Callable[[Sheet], None], act: Act
) -> None:
    """Nothing is orphaned: both stay on the list."""
    keep(sheet(readings=(reading(), reading(id="r-2", key="pd", page=3))))
    confirm("r-1", version=1, store=store, change=act())
    for _twice in range(2):
        keep(sheet(reader_version="2", readings=()))

    assert [(kept.id, kept.version, kept.standing) for kept in stands(store, sheet())] == [
        ("r-1", 2, Standing.CONFIRMED),
        ("r-2", 2, Standing.REVIEW),
    ]


def test_a_refusal_takes_nothing_away(store: Store, sheet: Callable[..., Sheet], keep: Callable[[Sheet], None]) -> None:
    """A reader that ran out of time says nothing about the page."""
    keep(sheet())
    keep(sheet(reader_version="2", readings=(), refused=Refused(kind="too_slow", seems_to_be=None, detail="passed 60 s")))

    assert [(kept.version, kept.standing) for kept in stands(store, sheet())] == [(1, Standing.ACCEPTED)]


@pytest.mark.parametrize(
    "elsewhere",
    [{"page": 3}, {"key": "pd"}, {"limit": Limit.TYP}, {"bbox": (311.0, 200.0, 331.0, 210.0)}],
    ids=["page", "key", "limit", "less than half of the box"],
)
def test_another_place_is_another_reading(
    store: Store, sheet: Callable[..., Sheet], again: Make, keep: Callable[[Sheet], None], act: Act, elsewhere: dict[str, object]
) -> None:
    """A confirmation never jumps to a neighbour."""
    keep(sheet())
    confirm("r-1", version=1, store=store, change=act())
    keep(sheet(reader_version="2", readings=(again(**elsewhere),)))

    assert {kept.id: kept.standing for kept in stands(store, sheet())} == {"r-1": Standing.CONFIRMED, "r-1-newer": Standing.ACCEPTED}


def test_one_number_that_speaks_of_two_channels_is_two_readings(
    store: Store, sheet: Callable[..., Sheet], reading: Make, keep: Callable[[Sheet], None], act: Act
) -> None:
    """They share id and box, and each keeps its own confirmation."""
    both = [reading(cond=Conditions(vgs=10.0, ch=channel)) for channel in ("Q1", "Q2")]
    keep(sheet(readings=tuple(both)))
    confirm("r-1~2", version=1, store=store, change=act())
    keep(sheet(reader_version="2", readings=tuple(reversed(both))))

    assert {kept.reading.cond.ch: kept.standing for kept in stands(store, sheet())} == {"Q1": Standing.ACCEPTED, "Q2": Standing.CONFIRMED}


BOX = st.tuples(st.floats(0, 500), st.floats(0, 700), st.floats(1, 50), st.floats(1, 20)).map(lambda b: (b[0], b[1], b[0] + b[2], b[1] + b[3]))


@given(BOX, BOX)
def test_overlap_is_the_same_both_ways_and_whole_with_itself(one: tuple[float, ...], other: tuple[float, ...]) -> None:
    """A share between nothing and all."""
    assert overlap(one, one) == pytest.approx(1)
    assert overlap(one, other) == overlap(other, one)
    assert 0 <= overlap(one, other) <= 1 + 1e-9


def test_overlap_by_hand() -> None:
    """Of a box ten wide, shifted by four, six tenths are left; a box without area has no share."""
    assert overlap((0, 0, 10, 10), (4, 0, 14, 10)) == pytest.approx(0.6)
    assert overlap((0, 0, 10, 10), (20, 0, 30, 10)) == 0
    assert overlap((0, 0, 0, 0), (0, 0, 0, 0)) == 0


SHIFT = st.floats(-4, 4)


@given(st.lists(st.tuples(SHIFT, SHIFT), min_size=1, max_size=8), st.randoms())
def test_no_confirmation_is_lost_whatever_small_shifts_a_newer_reader_makes(shifts: list[tuple[float, float]], random: object) -> None:
    """Rows twelve points apart, numbers twenty wide and ten high: shifts of up to four leave more than half."""
    act = Change(by="Ada", at="2026-11-02T09:00:00Z", why="looked")
    before = tuple(_row(number, 0.0, 0.0, "old") for number in range(len(shifts)))
    kept = [
        KeptReading(id=r.id, version=2, sha256="s", reading=r, as_read=r, standing=Standing.CONFIRMED, reader_version="1", change=act, settled=act)
        for r in before
    ]
    after = [_row(number, right, 0.5 * down, "new") for number, (right, down) in enumerate(shifts)]
    random.shuffle(after)
    entries = follow_readings(kept, Sheet(reader_version="2", file="f", sha256="s", readings=tuple(after)), replace(act, by="Ben"))

    assert {(entry.id, entry.as_read.id, entry.standing) for entry in entries} == {
        (f"old-{number}", f"new-{number}", Standing.CONFIRMED) for number in range(len(shifts))
    }


def _row(number: int, right: float, down: float, name: str) -> Reading:
    """A printed value in a column of them."""
    top = 100.0 + 12.0 * number
    return Reading(
        id=f"{name}-{number}",
        key="rds_on",
        limit=Limit.MAX,
        value=1.0 + number,
        unit="ohm",
        printed=f"{1 + number}",
        si=1.0 + number,
        cond=Conditions(),
        status=Status.ACCEPTED,
        evidence=(),
        why="",
        page=1,
        bbox=(300.0 + right, top + down, 320.0 + right, top + down + 10.0),
        row_bbox=(0.0, top, 500.0, top + 12.0),
        quote="",
    )
