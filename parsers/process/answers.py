"""A sheet on its way from the child to the parent: JSON, written by the child, doubted by the parent.

The child has worked on a file from outside, so its answer counts as coming from outside.
"""

import json
from dataclasses import fields, is_dataclass
from typing import Any

from parsers import errors
from parsers.process.shape import ShapeError, shaped
from service.facts.reading import Refused, Sheet

PNG = b"\x89PNG\r\n\x1a\n"
"""A PNG picture begins so: ISO/IEC 15948, section 5.2."""
REFUSALS: dict[str, type[errors.DatasheetError]] = {
    kind.kind: kind
    for kind in (
        errors.NotAPdfError,
        errors.DamagedError,
        errors.EncryptedError,
        errors.TooLargeError,
        errors.TooSlowError,
        errors.NoTextError,
        errors.NotADatasheetError,
        errors.OtherComponentError,
    )
}
"""The kinds of refusal, with the error that each stands for."""


def written(sheet: Sheet) -> bytes:
    """A sheet as JSON.

    Args:
        sheet: What was read.

    Raises:
        ValueError: A number is not finite.
    """
    return json.dumps(sheet, default=_as_dict, allow_nan=False).encode()


def refusal(refused: Refused) -> bytes:
    """A refusal as JSON.

    Args:
        refused: Why nothing was read.
    """
    return json.dumps({"refused": refused}, default=_as_dict).encode()


def page_count(answer: bytes) -> int | Refused:
    """The number of pages, or why they cannot be counted.

    Args:
        answer: What the counting child sent.

    Raises:
        ShapeError: It is neither.
    """
    content = _understood(answer)
    if set(content) == {"refused"}:
        return _refused(content["refused"])
    pages = content.get("pages")
    if type(pages) is not int or pages < 1:
        raise ShapeError("no number of pages")
    return pages


def read_sheet(answer: bytes, *, pages: int) -> Sheet | Refused:
    """The sheet that a child read, or why it refuses.

    Args:
        answer: What the reading child sent.
        pages: How many pages the document has.

    Raises:
        ShapeError: It is no sheet, or one with readings on pages that the document does not have.
    """
    content = _understood(answer)
    if set(content) == {"refused"}:
        return _refused(content["refused"])
    sheet = shaped(Sheet, content)
    if sheet.refused is not None and sheet.refused.kind not in REFUSALS:
        raise ShapeError("an unknown kind of refusal")
    placed = {reading.page for reading in sheet.readings} | {row.page for row in sheet.unaccounted}
    if any(not 1 <= page <= pages for page in placed):
        raise ShapeError(f"a reading on a page that the document of {pages} pages does not have")
    return sheet


def picture(answer: bytes) -> bytes | Refused:
    """The picture that a child drew, or why it refuses.

    Args:
        answer: What the drawing child sent.

    Raises:
        ShapeError: It is neither.
    """
    return answer if answer.startswith(PNG) else _refused(_understood(answer).get("refused"))


def _understood(answer: bytes) -> dict[str, Any]:
    try:
        content = json.loads(answer, parse_constant=_no_constant)
    except (ValueError, RecursionError) as error:
        raise ShapeError(f"no JSON: {type(error).__name__}") from error
    if not isinstance(content, dict):
        raise ShapeError("no JSON object")
    return content


def _refused(content: object) -> Refused:
    refused = shaped(Refused, content)
    if refused.kind not in REFUSALS:
        raise ShapeError("an unknown kind of refusal")
    return refused


def _no_constant(name: str) -> float:
    raise ShapeError(f"{name} is no number")


def _as_dict(item: object) -> dict[str, object]:
    if not is_dataclass(item):
        raise TypeError(f"{type(item).__name__} cannot be written")
    return {field.name: getattr(item, field.name) for field in fields(item)}
