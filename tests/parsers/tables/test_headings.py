"""Lines that head a table, and lines that only sound like it."""

import pytest
from hand_made import page

from parsers.grid import Role
from parsers.stages.headings import headings_in
from parsers.stages.lines import lines_in


def roles(*rows):
    """Roles of the first heading of a page, left to right."""
    found = headings_in(lines_in(page(*rows)))
    return [head.role.value for head in found[0][2]] if found else []


@pytest.mark.parametrize(
    ("row", "expected"),
    [
        (((50, "Parameter"), (250, "Symbol"), (350, "Limit"), (450, "Unit")), ["label", "symbol", "value", "unit"]),
        (
            ((50, "Symbol"), (150, "Parameter"), (350, "Min."), (400, "Typ."), (450, "Max."), (500, "Units")),
            ["symbol", "label", "min", "typ", "max", "unit"],
        ),
        (((50, "Rating"), (250, "Symbol"), (350, "Value"), (450, "Unit")), ["label", "symbol", "value", "unit"]),
        (((50, "Symbol"), (150, "Test Conditions"), (350, "Maximum Ratings")), ["symbol", "condition", "max"]),
        (
            ((50, "参数"), (250, "符号"), (350, "最小值"), (400, "典型值"), (450, "最大值"), (500, "单位")),
            ["label", "symbol", "min", "typ", "max", "unit"],
        ),
        (((50, "項目"), (250, "記号"), (350, "定格"), (450, "単位")), ["label", "symbol", "value", "unit"]),
        (((50, "Symbol"), (150, "Parameter"), (350, "QX60N06"), (450, "Units")), ["symbol", "label", "value", "unit"]),
        (((50, "Parameter"), (350, "10 s"), (420, "Steady State"), (500, "Unit")), ["label", "value", "value", "unit"]),
    ],
)
def test_a_line_of_heading_words_names_its_columns(row, expected):
    """English, Chinese, Japanese, a part number, durations."""
    assert roles((100, *row)) == expected


@pytest.mark.parametrize(
    "text",
    ["Absolute Maximum Ratings", "Typical Characteristics of the device under test", "The maximum value of each unit is tested in the factory"],
)
def test_a_caption_or_a_sentence_is_no_heading(text):
    """Words of the vocabulary stand in many sentences."""
    assert roles((100, (50, text))) == []


def test_a_heading_over_two_lines_is_one():
    """Values stands over Min. Typ. Max. and takes no column of its own."""
    found = roles((100, (50, "Parameter"), (250, "Symbol"), (400, "Values"), (500, "Unit")), (112, (350, "Min."), (400, "Typ."), (450, "Max.")))

    assert found == ["label", "symbol", "min", "typ", "max", "unit"]


def test_a_caption_close_above_gives_no_columns():
    """Maximum ratings over the names is a caption, though both its words head columns elsewhere."""
    found = roles((88, (50, "Maximum ratings")), (100, (50, "Parameter"), (250, "Symbol"), (400, "Value"), (500, "Unit")))

    assert found == [Role.LABEL, Role.SYMBOL, Role.VALUE, Role.UNIT]
