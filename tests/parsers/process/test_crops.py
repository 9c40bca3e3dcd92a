"""A piece of a page is drawn in a child."""

import misbehaviour
import pytest

from parsers.errors import DamagedError
from parsers.process import render_crop

DRAW = f"{misbehaviour.__name__}:draw"


def test_a_piece_of_a_page_comes_as_a_picture():
    """Page, piece and mark reach the child as they were given."""
    picture = render_crop(b"12345", 1, (0.0, 1.0, 2.0, 3.0), (1.0, 1.0, 2.0, 2.0), function=DRAW)

    assert picture.endswith(b"5 1 (0.0, 1.0, 2.0, 3.0) (1.0, 1.0, 2.0, 2.0)")


def test_something_else_than_a_picture_is_not_passed_on():
    """A page must not serve what a taken-over child sends."""
    with pytest.raises(DamagedError, match="makes no sense"):
        render_crop(b"12345", 2, (0.0, 1.0, 2.0, 3.0), function=DRAW)


def test_a_document_that_cannot_be_drawn_is_refused():
    """The error says why."""
    with pytest.raises(DamagedError, match="no page 3"):
        render_crop(b"12345", 3, (0.0, 1.0, 2.0, 3.0), function=f"{misbehaviour.__name__}:refuse_to_draw")
