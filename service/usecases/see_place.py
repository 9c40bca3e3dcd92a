"""See the place on the page where a value was read: its crop, or the whole page with the number boxed."""

from service.facts.document import Document
from service.facts.kept_reading import KeptReading
from service.facts.reading import Box
from service.usecases.ports import Cropper, Store

# Why: a row alone is hard to place; a little of its neighbours and of its unit's cell show where it belongs. [pt]
BESIDE_ROW, ABOVE_ROW = 24.0, 7.0


class UnknownPlaceError(LookupError):
    """No such reading, file or page."""

    def __init__(self, what: str) -> None:
        super().__init__(f"There is no {what} in this data folder.")


def row_crop(store: Store, cropper: Cropper, *, reading_id: str) -> bytes:
    """The row that a value stands in, as PNG, with the number marked.

    Args:
        store: Where the file is kept.
        cropper: Renders it.
        reading_id: The reading.

    Raises:
        UnknownPlaceError: There is no such reading.
    """
    entry = entry_of(store, reading_id)
    reading = entry.reading
    return cropper.crop(store.files.get(entry.sha256), page=reading.page, box=widened(reading.row_bbox), mark=reading.bbox)


def page_picture(store: Store, cropper: Cropper, *, sha256: str, page: int, reading_id: str | None) -> bytes:
    """A whole page as PNG, with a number marked where a reading is named.

    Raises:
        UnknownPlaceError: There is no such file or reading.
    """
    document_of(store, sha256)
    mark = entry_of(store, reading_id).reading.bbox if reading_id else None
    return cropper.crop(store.files.get(sha256), page=page, box=None, mark=mark)


def entry_of(store: Store, reading_id: str) -> KeptReading:
    """The entry that stands of a reading."""
    with store.looking() as shelf:
        entry = shelf.readings.find(reading_id)
    if entry is None:
        raise UnknownPlaceError(f"reading {reading_id!r}")
    return entry


def document_of(store: Store, sha256: str) -> Document:
    """A kept file's record."""
    with store.looking() as shelf:
        document = shelf.documents.find(sha256)
    if document is None:
        raise UnknownPlaceError(f"file {sha256[:12]!r}")
    return document


def widened(box: Box) -> Box:
    """A box with a little around it; what lies outside the page is cut off by the renderer."""
    x0, top, x1, bottom = box
    return (max(x0 - BESIDE_ROW, 0.0), max(top - ABOVE_ROW, 0.0), x1 + BESIDE_ROW, bottom + ABOVE_ROW)
