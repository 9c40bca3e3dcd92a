"""Annotations that may show something else than what they lie on (ISO 32000-1:2008, 12.5)."""

from collections.abc import Callable, Iterator
from typing import Any

from pdfminer.pdftypes import PDFStream
from pdfminer.psparser import PSLiteral

from parsers.glyphs.following import followed
from service.facts.reading import Box

_HIDDEN = 2 | 32
"""Flags of an annotation that is hidden or not viewed: table 165."""
_WINDOWS = frozenset(("Popup",))
_MARKINGS = frozenset(("Link", "Highlight", "Underline", "Squiggly"))
"""Kinds that leave what they lie on readable, unless their own look writes over it."""


def shown_notes(annotations: Any, writes: Callable[[PDFStream], bool]) -> Iterator[Box]:  # noqa: ANN401  pdfminer carries no types
    """Boxes of annotations that show something of their own.

    Args:
        annotations: A page's list of them.
        writes: Whether a form writes or pictures something.

    Yields:
        Boxes in the page's own points.
    """
    for item in followed(annotations) or ():
        note = followed(item)
        if isinstance(note, dict) and not int(followed(note.get("F")) or 0) & _HIDDEN and _shows(note, writes):
            x0, y0, x1, y1 = (float(followed(side)) for side in followed(note["Rect"]))
            yield x0, y0, x1, y1


def _shows(note: dict[str, Any], writes: Callable[[PDFStream], bool]) -> bool:
    kind = followed(note.get("Subtype"))
    name = str(kind.name) if isinstance(kind, PSLiteral) else ""
    if name in _MARKINGS:
        return any(writes(look) for look in _looks(note))
    return name not in _WINDOWS


def _looks(note: dict[str, Any]) -> Iterator[PDFStream]:
    """Its normal look, or its looks in all of its states."""
    looks = followed(note.get("AP"))
    normal = followed(looks.get("N")) if isinstance(looks, dict) else None
    for look in normal.values() if isinstance(normal, dict) else (normal,):
        if isinstance(stream := followed(look), PDFStream):
            yield stream
