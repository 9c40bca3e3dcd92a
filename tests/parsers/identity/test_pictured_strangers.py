"""A scanned document that is no switch's datasheet is refused with what it seems to be, once it has been looked at."""

import io

import pytest
from PIL import Image

from parsers.errors import OtherComponentError
from parsers.ocr import seen
from parsers.ocr.seen import Character, Seen, Strip
from parsers.pipeline import read_datasheet

RELAY = "Power relay, 12 A. Coil voltage 12 V, coil resistance 360 ohm, contact resistance 0.1 ohm, insulation resistance high, crimp terminals"


def strip(text):
    """A line as a reader of pictures gives it: each character in a box of its own."""
    boxes = [(20.0 + 4 * at, 100.0, 24.0 + 4 * at, 110.0) for at in range(len(text))]
    characters = tuple(Character(text=letter, box=box, certainty=0.99) for letter, box in zip(text, boxes, strict=True) if letter != " ")
    spaces = frozenset(len(text[:at].replace(" ", "")) for at, letter in enumerate(text) if letter == " ")
    return Strip(characters=characters, spaces=spaces, box=(20.0, 100.0, boxes[-1][2], 110.0))


def test_a_scanned_relay_is_named(monkeypatch):
    """Its text is known only after looking, and then says what it is."""
    buffer = io.BytesIO()
    Image.new("L", (400, 300), 255).save(buffer, "PDF")
    monkeypatch.setattr(seen, "_looks", [lambda *_: Seen(strips=(strip(RELAY),), rules=())])

    with pytest.raises(OtherComponentError, match="not of a MOSFET") as refusal:
        read_datasheet(buffer.getvalue(), "scan.pdf")

    assert refusal.value.seems_to_be == "other"
