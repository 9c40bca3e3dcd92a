"""Long straight lines of a picture are the rules of its tables."""

import pytest
from pictures import ruled_picture

drawn_lines = pytest.importorskip("parsers.ocr.drawn_lines", reason="needs the extra ocr", exc_type=ImportError).drawn_lines


def test_horizontal_and_vertical_lines_are_found_in_points():
    """Four pixels a point here."""
    across, down = sorted(drawn_lines(ruled_picture((100, 200, 700, 200), (400, 220, 400, 580)), 4.0), key=lambda rule: rule.x0 != 25)

    assert (across.x0, across.x1) == (pytest.approx(25, abs=1), pytest.approx(175, abs=1))
    assert across.top == across.bottom == pytest.approx(50, abs=1)
    assert down.x0 == down.x1 == pytest.approx(100, abs=1)


def test_a_line_scanned_aslant_is_one_line():
    """Two pixels of rise over six hundred."""
    (rule,) = drawn_lines(ruled_picture((100, 200, 700, 203)), 4.0)

    assert rule.x1 - rule.x0 == pytest.approx(150, abs=2)


def test_two_lines_with_a_cell_between_them_stay_two():
    """A cell that spans rows is told by the line that stops at it."""
    assert len(list(drawn_lines(ruled_picture((100, 200, 380, 200), (420, 200, 700, 200)), 4.0))) == 2


def test_letters_and_bars_are_no_lines():
    """A stroke is too short, a bar too thick."""
    assert list(drawn_lines(ruled_picture((100, 200, 140, 200), *((100, 300 + row, 700, 300 + row) for row in range(40))), 4.0)) == []
