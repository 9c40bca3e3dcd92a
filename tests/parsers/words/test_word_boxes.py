"""Boxes lie on the page as shown: what is cut out of the rendered page is what was read."""

import pytest
from word_sheets import SIZE, darkest, drawn, page_of, pixels, texts, with_page, word

from parsers.stages.open_document import open_document
from parsers.stages.words import read_page

BLACK, PAPER = 100, 250


def sheet(rotate: int) -> bytes:
    """A page that shows one line upright whatever its /Rotate; pages turned by a quarter are drawn on a page of swapped sides."""

    def draw(canvas):
        if rotate == 90:
            canvas.translate(SIZE[1], 0)
            canvas.rotate(90)
        elif rotate == 180:
            canvas.translate(SIZE[0], SIZE[1])
            canvas.rotate(180)
        elif rotate == 270:
            canvas.translate(0, SIZE[0])
            canvas.rotate(-90)
        canvas.drawString(120, 150, "Blocking voltage 47 V")
        canvas.drawString(120, 120, "Steady current")

    size = (SIZE[1], SIZE[0]) if rotate in (90, 270) else SIZE
    return with_page(drawn(draw, size=size), Rotate=rotate)


def assert_ink_in_the_box_alone(data, page, found):
    """Ink lies in the box, and none in a strip on either side of it."""
    picture = pixels(data)
    x0, top, x1, bottom = page.as_shown(found.box)
    assert darkest(picture, (x0, top, x1, bottom)) < BLACK
    assert darkest(picture, (x0, top - 2, x1, top)) > PAPER
    assert darkest(picture, (x0, bottom, x1, bottom + 2)) > PAPER


@pytest.mark.parametrize("rotate", [0, 90, 180, 270])
def test_the_digits_stand_in_their_box_however_the_page_is_rotated(rotate):
    """The line was drawn 120 from the left and 150 above the lower edge of a page 400 by 300 as shown."""
    data = sheet(rotate)
    page = page_of(data)
    found = word(page, "47")

    assert (page.width, page.height, page.turned) == (*SIZE, 0)
    assert found.box[1] < 150 < found.box[3]
    assert word(page, "Blocking").box[0] == pytest.approx(120, abs=0.01)
    assert_ink_in_the_box_alone(data, page, found)


@pytest.mark.parametrize("rotate", [0, 90, 180, 270])
@pytest.mark.parametrize(
    ("media", "crop"),
    [
        ([0, 0, 400, 400], [60, 50, 380, 290]),
        ([50, 40, 400, 400], None),
        ([-100, -200, 400, 400], [30, 20, 390, 380]),
        ([0, 0, 400, 400], [-500, -500, 5000, 5000]),
    ],
)
def test_the_digits_stand_in_their_box_on_a_shifted_or_cropped_page(rotate, media, crop):
    """Neither a page that starts elsewhere nor a crop moves a box off its digits, on rotated pages too."""
    data = with_page(sheet(rotate), MediaBox=media, **({"CropBox": crop} if crop else {}))
    page = page_of(data)

    assert_ink_in_the_box_alone(data, page, word(page, "47"))


@pytest.mark.parametrize("rotate", [90, 180, 270])
def test_a_page_of_turned_text_is_turned_and_its_boxes_lead_back(rotate):
    """Text that lies on its side is read as if upright, and as_shown finds its digits on the page as shown."""
    data = with_page(sheet(0), Rotate=rotate)
    page = page_of(data)
    found = word(page, "47")

    assert page.turned in (90, 180, 270)
    assert texts(page)[:4] == ["Blocking", "voltage", "47", "V"]
    x0, top, x1, bottom = page.as_shown(found.box)
    picture = pixels(data)
    assert darkest(picture, (x0, top, x1, bottom)) < BLACK
    strip = (x0 - 2, top, x0, bottom) if rotate in (90, 270) else (x0, top - 2, x1, top)
    assert darkest(picture, strip) > PAPER


def test_a_single_turned_word_is_kept_apart_from_the_lines():
    """A label on its side neither joins a line nor reads backwards."""

    def draw(canvas):
        canvas.drawString(40, 150, "Steady current 12 A and much more of it on one line")
        canvas.rotate(90)
        canvas.drawString(100, -30, "214 K")

    page = page_of(drawn(draw))

    assert not word(page, "214").glyphs[0].upright
    assert word(page, "12").glyphs[0].upright


@pytest.mark.corpus
@pytest.mark.parametrize(
    ("name", "number"),
    [("infineon__IPB020N08N5.pdf", 4), ("cet__CEP540N.pdf", 1), ("philips__PMV31XN.pdf", 2), ("toshiba__2SK3569.pdf", 2)],
)
def test_numbers_of_real_sheets_stand_in_their_boxes(shared, name, number):
    """Every number of a page whose boxes other readers misplace has ink in its box."""
    data = (shared / "corpus" / "pdf" / name).read_bytes()
    page = read_page(open_document(data), number)
    picture = pixels(data, number)
    numbers = [found for found in page.words if found.text.replace(".", "").isdecimal()]

    assert len(numbers) > 10
    for found in numbers:
        assert min(found.box[0], found.box[1]) >= 0
        assert found.box[2] <= page.width
        low, high = picture.crop(tuple(round(side * 4) for side in found.box)).getextrema()
        assert high - low > BLACK, found.text
