"""The picture reader: RapidOCR's networks, run by onnxruntime on one core, with the networks that its package brings along."""

from functools import cache
from typing import Any

import numpy as np
import pypdfium2 as pdfium
from numpy.typing import NDArray
from rapidocr import RapidOCR

from parsers.ocr.drawn_lines import drawn_lines
from parsers.ocr.seen import Character, Seen, Strip
from service.facts.reading import Box

_SETTINGS = {
    "Global.log_level": "critical",
    # Why so large: the picture is drawn at the size at which it shall be read.
    "Global.max_side_len": 4000,
    # Why: words are found as well in a coarser picture, in half of the memory; they are read in the fine one.
    "Det.limit_type": "max",
    "Det.limit_side_len": 1600,
    # Why without: pages are turned upright before they are read.
    "Global.use_cls": False,
    "EngineConfig.onnxruntime.intra_op_num_threads": 1,
    "EngineConfig.onnxruntime.inter_op_num_threads": 1,
    # Why: with it memory grows with every picture, past what one child may use.
    "EngineConfig.onnxruntime.enable_cpu_mem_arena": False,
}


def look(page: pdfium.PdfPage, longer_side: int) -> Seen:
    """Draw a page and read it.

    Args:
        page: An open page.
        longer_side: How many pixels its longer side shall have. [1]

    Returns:
        Text and drawn lines, in points from the top left of the page as shown.
    """
    scale = longer_side / max(page.get_size())
    picture = np.ascontiguousarray(page.render(scale=scale, rev_byteorder=True).to_numpy()[:, :, :3])
    found = _reader()(picture, return_word_box=True, return_single_char_box=True)
    strips = zip(found.boxes, found.txts, found.word_results, strict=True) if found.boxes is not None else ()
    return Seen(
        strips=tuple(_strip(box, text, characters, scale) for box, text, characters in strips),
        rules=tuple(drawn_lines(picture, scale)),
    )


@cache
def _reader() -> Any:  # noqa: ANN401  the library carries no types
    return RapidOCR(params=_SETTINGS)


def _strip(corners: NDArray[np.float32], text: str, characters: Any, scale: float) -> Strip:  # noqa: ANN401  the library carries no types
    box = _box(corners, scale)
    if "".join(character for character, _, _ in characters) == text.replace(" ", ""):
        placed = tuple(
            Character(text=character, box=_box(np.asarray(place), scale), certainty=certainty) for character, certainty, place in characters
        )
    else:
        placed = _spread(text.replace(" ", ""), box)
    return Strip(characters=placed, spaces=_spaces(text), box=box)


def _spread(text: str, box: Box) -> tuple[Character, ...]:
    """Characters without places of their own are set evenly; nobody is sure of them."""
    width = (box[2] - box[0]) / max(1, len(text))
    boxes = [(box[0] + position * width, box[1], box[0] + (position + 1) * width, box[3]) for position in range(len(text))]
    return tuple(Character(text=mark, box=place, certainty=0.0) for mark, place in zip(text, boxes, strict=True))


def _spaces(text: str) -> frozenset[int]:
    """Positions, not counting spaces, before which a space stands."""
    words = text.split()
    return frozenset(sum(len(word) for word in words[:count]) for count in range(1, len(words)))


def _box(corners: NDArray[Any], scale: float) -> Box:
    left, top = (float(edge) / scale for edge in corners.min(axis=0))
    right, bottom = (float(edge) / scale for edge in corners.max(axis=0))
    return (left, top, right, bottom)
