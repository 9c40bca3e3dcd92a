"""The task of a child that reads pictures: as the ordinary one, with the picture reader at hand."""

from parsers.ocr import engine, seen
from parsers.process import tasks


def read(data: bytes, *, name: str, function: str) -> bytes:
    """Read a datasheet whose pages are pictures.

    Args:
        data: The document.
        name: Base name of the file.
        function: What reads it, as ``module:name``.

    Returns:
        The sheet, or why it is refused, as JSON.
    """
    seen.use(engine.look)
    return tasks.read(data, name=name, function=function)
