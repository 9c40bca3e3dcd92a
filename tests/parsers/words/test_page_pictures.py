"""The picture beside a number shows the number, with its box drawn, and never grows beyond its limit."""

import io

import pytest
from PIL import Image
from word_sheets import drawn, page_of, word

from parsers.errors import DatasheetError
from parsers.render import MOST_PIXELS, crop_png, page_png


def opened(png):
    """The picture in a PNG file."""
    return Image.open(io.BytesIO(png))


def line(canvas):
    """One line of a table."""
    canvas.drawString(120, 150, "Blocking voltage 47 V")


def test_a_crop_shows_the_value_and_draws_its_box():
    """Ink inside, a coloured line around it, none without a mark."""
    data = drawn(line)
    box = word(page_of(data), "47").box
    around = (box[0] - 20, box[1] - 10, box[2] + 20, box[3] + 10)
    plain, marked = opened(crop_png(data, 1, around, scale=4)), opened(crop_png(data, 1, around, mark=box, scale=4))

    assert plain.size == marked.size == (round((around[2] - around[0]) * 4), 80) or abs(plain.width - (around[2] - around[0]) * 4) < 2
    assert all(abs(red - blue) < 40 for _, (red, _, blue) in plain.getcolors(maxcolors=100_000))
    assert any(red > 150 and green < 50 for _, (red, green, _) in marked.getcolors(maxcolors=100_000))


def test_a_page_is_drawn_whole():
    """Two pixels to the point by default."""
    assert opened(page_png(drawn(line), 1)).size == (800, 600)


def test_a_giant_page_is_drawn_at_the_largest_scale_that_stays_in_bounds():
    """25 megapixels are asked for at most, before anything is drawn."""
    width, height = opened(page_png(drawn(line, size=(10_000, 9_000)), 1)).size

    assert 0.98 * MOST_PIXELS < width * height < 1.01 * MOST_PIXELS


@pytest.mark.parametrize(("page", "box"), [(2, (0, 0, 50, 50)), (0, (0, 0, 50, 50)), (1, (500, 0, 600, 50)), (1, (50, 50, 50, 50))])
def test_a_part_that_is_not_there_is_an_error_that_says_which(page, box):
    """Another page, a place beside the page, an empty box."""
    with pytest.raises(DatasheetError, match=r"\d"):
        crop_png(drawn(line), page, box)
