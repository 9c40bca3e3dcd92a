"""Strips as a picture reader gives them, and pages that are pictures, drawn by us."""

import io

import numpy as np
from PIL import Image, ImageDraw, ImageFont

from parsers.ocr.seen import Character, Strip

A4_AT_200 = (1654, 2339)


def strip(text: str, *, left: float = 100.0, top: float = 200.0, height: float = 10.0, advance: float = 5.0, certainty: float = 1.0) -> Strip:
    """A strip of evenly spaced characters; a space is a wider step, as it is on paper."""
    characters, spaces, place = [], set(), left
    for mark in text:
        if mark == " ":
            spaces.add(len(characters))
        else:
            characters.append(Character(text=mark, box=(place, top, place + advance, top + height), certainty=certainty))
        place += advance
    return Strip(characters=tuple(characters), spaces=frozenset(spaces), box=(left, top, place, top + height))


def sheet_of_pictures(lines: list[tuple[int, int, str]], *, rules: list[tuple[int, int, int, int]] = ()) -> bytes:
    """A PDF with one page that is nothing but a picture, 200 dots an inch.

    Args:
        lines: Left edge, upper edge and words, in dots.
        rules: Lines to draw, in dots.
    """
    picture = Image.new("L", A4_AT_200, 255)
    drawing = ImageDraw.Draw(picture)
    font = ImageFont.load_default(size=32)
    for left, top, words in lines:
        drawing.text((left, top), words, font=font, fill=0)
    for rule in rules:
        drawing.line(rule, fill=0, width=3)
    written = io.BytesIO()
    picture.save(written, "PDF", resolution=200)
    return written.getvalue()


def pages_of_pictures(count: int) -> bytes:
    """A PDF of several pages of small white pictures."""
    pages = [Image.new("L", (60, 80), 255) for _ in range(count)]
    written = io.BytesIO()
    pages[0].save(written, "PDF", save_all=True, append_images=pages[1:])
    return written.getvalue()


def ruled_picture(*rules: tuple[int, int, int, int]) -> np.ndarray:
    """Black lines on white, as an array of pixels."""
    picture = Image.new("RGB", (800, 600), (255, 255, 255))
    for rule in rules:
        ImageDraw.Draw(picture).line(rule, fill=(0, 0, 0), width=2)
    return np.asarray(picture)
