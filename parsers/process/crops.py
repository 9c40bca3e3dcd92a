"""A piece of a page as a picture, drawn in a child: the process that serves pages never opens a document."""

from parsers.process import tasks
from parsers.process.answers import REFUSALS, picture
from parsers.process.asking import answered
from parsers.process.job import Job
from parsers.process.limits import CROPPING
from service.facts.reading import Box, Refused


def render_crop(data: bytes, page: int, bbox: Box, mark: Box | None = None, *, function: str = tasks.CROP_PNG) -> bytes:
    """Draw a piece of a page.

    Args:
        data: The document.
        page: Counted from 1.
        bbox: The piece, in points from the top left of the page as shown.
        mark: A box to mark in it.
        function: What draws it in the child, as ``module:name``.

    Returns:
        A PNG picture.

    Raises:
        DatasheetError: The document cannot be drawn; the kind and the words say why.
        ForkServerError: Children cannot be started.
    """
    arguments = {"page": page, "bbox": list(bbox), "mark": None if mark is None else list(mark), "function": function}
    said, _ = answered(Job(task=tasks.CROP, data=data, limits=CROPPING, arguments=arguments), picture)
    if isinstance(said, Refused):
        raise REFUSALS[said.kind](said.detail)
    return said
