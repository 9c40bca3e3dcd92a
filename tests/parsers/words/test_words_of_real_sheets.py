"""On the labelled real sheets: text layers, chosen pages, and whether each labelled number stands on its page as a word that both readers see."""

import json
import re

import pytest

from parsers.glyphs.agreement import agrees
from parsers.stages.open_document import open_document
from parsers.stages.words import read_page

NUMBER = re.compile(r"\d+(?:[.,]\d+)?|[.,]\d+")
EVERY = 6
"""One sheet in so many is read here; the whole corpus is a command of its own."""


def labelled(shared):
    """Every sixth sheet with its labels."""
    lines = (shared / "corpus" / "labels.jsonl").read_text(encoding="utf-8").splitlines()
    return [json.loads(line) for line in lines[::EVERY]]


def numbers_of(page):
    """Words by the absolute value of each number in them."""
    found = {}
    for word in page.words:
        for text in NUMBER.findall(word.text):
            found.setdefault(abs(float(text.replace(",", "."))), []).append(word)
    return found


@pytest.mark.corpus
def test_labelled_numbers_are_words_that_both_readers_see(shared):
    """No labelled page is left out, at most 5 numbers in 1,000 are no word of their page, and the readers agree on 97 in 100."""
    labels = left_out = missing = agreed = 0
    for sheet in labelled(shared):
        document = open_document((shared / "corpus" / "pdf" / sheet["file"]).read_bytes())
        assert document.text_layer == sheet["text_layer"], sheet["file"]
        if sheet["text_layer"] == "none":
            continue
        pages = {number: numbers_of(read_page(document, number)) for number in {value["page"] for value in sheet["values"]}}
        for value in sheet["values"]:
            words = pages[value["page"]].get(abs(value["value"]), [])
            labels += 1
            left_out += value["page"] not in document.chosen
            missing += not words
            agreed += any(agrees(word) for word in words)

    assert labels > 500
    assert left_out == 0
    assert missing <= 0.005 * labels
    assert agreed >= 0.97 * labels
