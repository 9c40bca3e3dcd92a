"""What a page's text holds and no viewer shows puts the figures beside it in doubt."""

from parsers.glyphs.drawn import SLANTING, Mark
from parsers.glyphs.unseen import BESIDE_HIDDEN, DOUBLED, HIDDEN_VALUE, STAMPED, weigh_unseen


def line(text: str, *, x: float = 100.0, y: float = 200.0, size: float = 10.0, turned: int = 0) -> list[Mark]:
    """Characters of one line, half a size apart."""
    step = size / 2
    return [
        Mark(text, x + at * step, y - 0.8 * size, x + (at + 1) * step, y + 0.2 * size, x + at * step, y, "Any", size, turned)
        for at, text in enumerate(text)
    ]


def doubts(*, shown: list[Mark], hidden: list[Mark], once: list[Mark] | None = None) -> set[str]:
    """Signs of doubt on the figures that are shown."""
    weigh_unseen([*shown, *hidden], [mark for mark in shown if mark.turned != SLANTING], shown if once is None else once)
    return {sign for mark in shown for sign in mark.doubt if mark.text.isdecimal()}


def test_hidden_figures_on_the_same_line_are_a_sign_of_doubt():
    """An invisible 80 beside a visible 40."""
    assert doubts(shown=line("40"), hidden=line("80", x=130)) == {BESIDE_HIDDEN}


def test_hidden_figures_elsewhere_are_none():
    """A page number left outside the page says nothing about a value."""
    assert doubts(shown=line("40"), hidden=line("7", y=900)) == set()


def test_a_hidden_value_puts_the_whole_page_in_doubt():
    """Somebody may have hidden it to be read by programs; the sign says in which unit it stands."""
    assert doubts(shown=line("40"), hidden=line("VDS 80 V, 2 mΩ", y=900)) == {f"{HIDDEN_VALUE}:V", f"{HIDDEN_VALUE}:Ω"}


def test_a_figure_that_is_shown_in_its_place_is_not_hidden():
    """Drawn twice, once under a white box, is how some programs print."""
    assert doubts(shown=line("40"), hidden=line("40")) == set()


def test_a_page_drawn_twice_is_a_sign_of_doubt():
    """A heading may be drawn twice to look bold, a whole page is not."""
    once = line("1" * 80)
    assert DOUBLED in doubts(shown=[*once, *line("1" * 80, x=100.3)], hidden=[], once=once)


def test_figures_stamped_across_a_page_are_a_sign_of_doubt():
    """A large slanting 80 may lie over any value."""
    assert doubts(shown=line("40"), hidden=line("80", y=500, size=90, turned=SLANTING)) == {STAMPED}


def test_figures_too_small_or_too_pale_to_be_seen_count_as_hidden():
    """A speck of an 80 beside a visible 40, and a white one anywhere."""
    visible, speck, white = line("40"), line("80", x=130, size=0.01), line("VDS 80 V", y=500)
    for mark in (*speck, *white):
        mark.doubt = ("pale",)
    doubts(shown=[*visible, *speck, *white], hidden=[])

    assert {mark.doubt for mark in visible} == {(BESIDE_HIDDEN, f"{HIDDEN_VALUE}:V")}
