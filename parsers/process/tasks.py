"""What a child may be asked: each takes a document's bytes and gives bytes."""

import json
from collections.abc import Callable

from parsers.errors import DatasheetError
from parsers.process import answers
from parsers.process.child import named
from parsers.stages.open_document import opened
from service.facts.reading import Refused, Sheet

COUNT, READ, CROP = (f"{__name__}:{name}" for name in ("count_pages", "read", "crop"))
READ_DATASHEET = "parsers.pipeline:read_datasheet"
CROP_PNG = "parsers.render:crop_png"


def count_pages(data: bytes) -> bytes:
    """How many pages a document has, or why it cannot be opened, as JSON.

    Args:
        data: The document.
    """
    try:
        with opened(data) as pdf:
            return json.dumps({"pages": len(pdf)}).encode()
    except DatasheetError as error:
        return answers.refusal(_refused(error))


def read(data: bytes, *, name: str, function: str) -> bytes:
    """Read a datasheet: the sheet, or why it is refused, as JSON.

    Args:
        data: The document.
        name: Base name of the file.
        function: What reads it, as ``module:name``.
    """
    read_datasheet: Callable[[bytes, str], Sheet] = named(function)
    try:
        return answers.written(read_datasheet(data, name))
    except DatasheetError as error:
        return answers.refusal(_refused(error))


def crop(data: bytes, *, page: int, bbox: list[float], mark: list[float] | None, function: str) -> bytes:
    """Draw a piece of a page as a PNG picture, or say why it cannot be drawn, as JSON.

    Args:
        data: The document.
        page: Counted from 1.
        bbox: The piece, in points from the top left of the page as shown.
        mark: A box to mark in it.
        function: What draws it, as ``module:name``.
    """
    crop_png: Callable[..., bytes] = named(function)
    try:
        return crop_png(data, page, tuple(bbox), mark=None if mark is None else tuple(mark))
    except DatasheetError as error:
        return answers.refusal(_refused(error))


def _refused(error: DatasheetError) -> Refused:
    return Refused(kind=error.kind, seems_to_be=error.seems_to_be, detail=error.detail)
