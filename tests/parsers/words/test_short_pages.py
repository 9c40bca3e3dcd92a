"""A page with next to no text is a picture, unless what little it says is a figure with a name and nothing is drawn beside it."""

import pytest
from word_sheets import drawn

from parsers.stages.open_document import open_document


@pytest.mark.parametrize(("text", "layer"), [("VDS 40 V", "good"), ("7", "none"), ("Figures", "none")])
def test_a_short_page_is_told_from_a_picture_with_a_number(text, layer):
    """Eight characters may be a value; a page number alone is none."""
    assert open_document(drawn(lambda canvas: canvas.drawString(50, 200, text))).text_layer == layer
