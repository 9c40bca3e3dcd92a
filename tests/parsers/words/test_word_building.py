"""Characters that belong together make a word, and marks that do not belong to a number stay out of it."""

from word_sheets import drawn, page_of, texts, word


def test_a_raised_footnote_mark_never_joins_the_number():
    """200 with a raised 1 is 200, not 2001."""

    def draw(canvas):
        canvas.drawString(40, 150, "200")
        canvas.setFont("Helvetica", 6)
        canvas.drawString(40 + 16.68, 154, "1")

    assert texts(page_of(drawn(draw))) == ["200", "1"] or texts(page_of(drawn(draw))) == ["1", "200"]


def test_a_lowered_mark_after_a_number_stays_out_of_it_too():
    """An index of another size is no digit of the number."""

    def draw(canvas):
        canvas.drawString(40, 150, "35")
        canvas.setFont("Helvetica", 6)
        canvas.drawString(40 + 11.12, 148, "2")

    assert sorted(texts(page_of(drawn(draw)))) == ["2", "35"]


def test_an_index_joins_its_letter():
    """VDS is one word though its index is lowered and smaller."""

    def draw(canvas):
        canvas.drawString(40, 150, "V")
        canvas.setFont("Helvetica", 7)
        canvas.drawString(40 + 6.67, 148, "DS")

    assert texts(page_of(drawn(draw))) == ["VDS"]


def test_figures_join_whatever_the_size_of_the_sign_before_them():
    """A large plus-minus does not tear the two figures of 20 apart."""

    def draw(canvas):
        canvas.setFont("Helvetica", 13)
        canvas.drawString(40, 150, "\u00b1")
        canvas.setFont("Helvetica", 10)
        canvas.drawString(40 + 13 * 0.584, 150, "20")

    assert texts(page_of(drawn(draw))) == ["\u00b120"]


def test_characters_drawn_twice_to_look_bold_count_once():
    """175 drawn again a hair to the right is 175, not 117755."""

    def draw(canvas):
        canvas.drawString(40, 150, "175")
        canvas.drawString(40.4, 150, "175")

    found = word(page_of(drawn(draw)), "175")
    assert not any(glyph.doubt for glyph in found.glyphs)


def test_neighbouring_columns_stay_apart():
    """Minimum, typical and largest value a space apart are three words."""

    def draw(canvas):
        for x, text in ((40, "2"), (49, "3"), (58, "4")):
            canvas.drawString(x, 150, text)

    assert texts(page_of(drawn(draw))) == ["2", "3", "4"]


def test_words_come_in_reading_order_whatever_the_order_of_drawing():
    """The order is that of the page."""

    def draw(canvas):
        canvas.drawString(90, 120, "four")
        canvas.drawString(90, 150, "two")
        canvas.drawString(40, 120, "three")
        canvas.drawString(40, 150, "one")

    assert texts(page_of(drawn(draw))) == ["one", "two", "three", "four"]


def test_a_slanting_watermark_is_no_text_of_the_page():
    """It crosses the lines and belongs to none of them; the second reader forgets it as well."""

    def draw(canvas):
        canvas.drawString(150, 150, "0.50 V")
        canvas.saveState()
        canvas.translate(130, 130)
        canvas.rotate(40)
        canvas.setFillGray(0.8)
        canvas.drawString(0, 0, "SPECIMEN SPECIMEN")
        canvas.restoreState()

    page = page_of(drawn(draw))
    assert texts(page) == ["0.50", "V"]
    assert word(page, "0.50").second == "0.50"


def test_lines_and_boxes_become_rules_and_curves_do_not():
    """A level line, an upright bar drawn as a thin area, and the four edges of a box."""

    def draw(canvas):
        canvas.line(40, 100, 240, 100)
        canvas.rect(60, 50, 0.8, 90, stroke=0, fill=1)
        canvas.rect(100, 150, 50, 30)
        canvas.circle(300, 100, 20)

    rules = page_of(drawn(draw)).rules
    level = sorted(round(rule.top) for rule in rules if rule.top == rule.bottom)
    upright = sorted(round(rule.x0) for rule in rules if rule.x0 == rule.x1)
    assert level == [120, 150, 200]
    assert upright == [60, 100, 150]
