"""Two datasheets of one part, side by side."""

from collections.abc import Callable

import pytest

from service.facts.change import Change
from service.facts.reading import Conditions, Limit, Reading, Sheet
from service.usecases.compare_revisions import Difference, compare_revisions
from service.usecases.keep_sheet import take_in
from service.usecases.ports import Store
from service.usecases.review_reading import reject

Make = Callable[..., Reading]


@pytest.fixture
def compared(
    store: Store, sheet: Callable[..., Sheet], keep: Callable[[Sheet], None], act: Callable[..., Change]
) -> Callable[[tuple[Reading, ...], tuple[Reading, ...]], tuple[Difference, ...]]:
    """Keep two sheets and compare them."""

    def compare(before: tuple[Reading, ...], now: tuple[Reading, ...]) -> tuple[Difference, ...]:
        later = take_in("rev-b.pdf", b"%PDF revision b", store=store, change=act()).document.sha256
        keep(sheet(readings=before))
        keep(sheet(sha256=later, readings=now))
        return compare_revisions(sheet().sha256, later, store=store)

    return compare


def test_the_same_figures_make_no_difference(compared: Callable[..., tuple[Difference, ...]], reading: Make) -> None:
    """Wherever they stand, and whatever unit they are printed in."""
    moved = reading(id="b-1", page=5, value=0.0024, unit="ohm", printed="0.0024", si=0.0024 * (1 + 1e-15), cond=Conditions(vgs=10.0, note="pulsed"))

    assert compared((reading(),), (moved,)) == ()


def test_a_changed_figure_is_shown_with_both(compared: Callable[..., tuple[Difference, ...]], reading: Make) -> None:
    """At the same condition."""
    (difference,) = compared((reading(),), (reading(id="b-1", value=2.6, printed="2.6", si=0.0026),))

    assert (difference.key, difference.limit, difference.cond) == ("rds_on", Limit.MAX, Conditions(vgs=10.0))
    assert [entry.reading.printed for entry in (*difference.before, *difference.now)] == ["2.4", "2.6"]


def test_what_only_one_sheet_prints_is_shown_with_that_alone(compared: Callable[..., tuple[Difference, ...]], reading: Make) -> None:
    """A condition of its own is a figure of its own."""
    dropped, added = compared((reading(),), (reading(id="b-1", cond=Conditions(vgs=4.5)),))[::-1]

    assert (dropped.cond.vgs, len(dropped.before), dropped.now) == (10.0, 1, ())
    assert (added.cond.vgs, added.before, len(added.now)) == (4.5, (), 1)


def test_a_headline_speaks_of_the_same_as_its_row(compared: Callable[..., tuple[Difference, ...]], reading: Make) -> None:
    """Only a headline that disagrees makes a difference."""
    headline = reading(id="b-2", page=1, cond=Conditions(vgs=10.0, where="headline"))
    assert compared((reading(),), (reading(id="b-1"), headline)) == ()


def test_a_rejected_reading_counts_for_nothing(
    store: Store, compared: Callable[..., tuple[Difference, ...]], reading: Make, sheet: Callable[..., Sheet], act: Callable[..., Change]
) -> None:
    """A person said that it is none."""
    assert len(compared((reading(id="a-2", key="pd"), reading()), (reading(id="b-1"),))) == 1
    reject("a-2", version=1, store=store, change=act())

    with store.looking() as shelf:
        (later,) = {document.sha256 for document in shelf.documents.listed()} - {sheet().sha256}
    assert compare_revisions(sheet().sha256, later, store=store) == ()
