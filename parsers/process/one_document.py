"""One document, read in children of its own: one counts the pages, one reads, and one more reads pages that are pictures."""

import hashlib
from dataclasses import replace
from importlib.util import find_spec

from parsers.process import answers, jail, tasks
from parsers.process.asking import answered
from parsers.process.job import Job
from parsers.process.limits import COUNTING, MEBIBYTE, MOST_DOCUMENT_BYTES, Limits, picture_limits, reading_limits
from parsers.process.shape import clean
from parsers.version import READER_VERSION
from service.facts.reading import Refused, Sheet

REDUCED = "reduced_isolation"
READ_PICTURES = "parsers.process.picture_task:read"


def read_document(name: str, data: bytes, *, function: str = tasks.READ_DATASHEET) -> Sheet:
    """Read one document; whatever the file does, the caller gets a sheet.

    Args:
        name: Base name of the file.
        data: The file's bytes.
        function: What reads it in the child, as ``module:name``.

    Returns:
        The sheet, or one that says why the document is refused; both say how the reading was shut in.

    Raises:
        ForkServerError: Children cannot be started; the document is not to blame.
    """
    unread = Sheet(reader_version=READER_VERSION, file=clean(name), sha256=hashlib.sha256(data).hexdigest())
    refused = _refused_unopened(data)
    if refused is not None:
        return replace(unread, refused=refused)
    counting = Job(task=tasks.COUNT, data=data, limits=COUNTING)
    counted, isolation = answered(counting, answers.page_count)
    if isinstance(counted, Refused):
        return _stamped(replace(unread, refused=counted), isolation)
    unread = replace(unread, pages=counted)
    sheet = _read(unread, data, function, task=tasks.READ, limits=reading_limits(counted))
    if sheet.refused is not None and sheet.refused.kind == "no_text" and pictures_can_be_read():
        return _read(unread, data, function, task=READ_PICTURES, limits=picture_limits(counted))
    return sheet


def pictures_can_be_read() -> bool:
    """Whether the extra ``ocr`` is installed."""
    return find_spec("rapidocr") is not None and find_spec("onnxruntime") is not None


def _refused_unopened(data: bytes) -> Refused | None:
    """Why a file is refused before any library sees it."""
    if len(data) > MOST_DOCUMENT_BYTES:
        size, most = len(data) / MEBIBYTE, MOST_DOCUMENT_BYTES // MEBIBYTE
        detail = f"The file has {size:.1f} MiB and {most} MiB is the most that is read; cut out the datasheet's own pages."
        return Refused(kind="too_large", seems_to_be=None, detail=detail)
    if not data.startswith(b"%PDF-"):
        detail = "The file does not begin with %PDF-, so it is no PDF whatever its name says; choose the PDF as its maker publishes it."
        return Refused(kind="not_a_pdf", seems_to_be=None, detail=detail)
    return None


def _read(unread: Sheet, data: bytes, function: str, *, task: str, limits: Limits) -> Sheet:
    job = Job(task=task, data=data, limits=limits, arguments={"name": unread.file, "function": function})
    said, isolation = answered(job, lambda answer: answers.read_sheet(answer, pages=unread.pages))
    if isinstance(said, Refused):
        said = replace(unread, refused=said)
    # Why set again: what is known here is not taken from a child.
    own = replace(said, reader_version=unread.reader_version, file=unread.file, sha256=unread.sha256, pages=unread.pages)
    return _stamped(own, isolation)


def _stamped(sheet: Sheet, isolation: dict[str, str]) -> Sheet:
    """Say how the reading was shut in, and flag it where that was not enough."""
    flags = tuple(flag for flag in sheet.flags if flag != REDUCED)
    return replace(sheet, isolation=isolation, flags=(*flags, REDUCED) if jail.is_reduced(isolation) else flags)
