"""Following references from object to object, and not for ever."""

from typing import Any

from pdfminer.pdftypes import PDFObjRef

_MOST_STEPS = 32
"""A longer chain of references is a circle. [1]"""


def followed(item: Any) -> Any:  # noqa: ANN401  pdfminer carries no types
    """What an object refers to in the end.

    Args:
        item: An object, or a reference to one.

    Returns:
        The object; None where references only lead to each other.
    """
    for _ in range(_MOST_STEPS):
        if not isinstance(item, PDFObjRef):
            return item
        item = item.resolve()
    return None
