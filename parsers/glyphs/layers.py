"""Layers that a document switches off (ISO 32000-1:2008, 8.11)."""

from typing import Any

from pdfminer.pdftypes import PDFObjRef, resolve1
from pdfminer.psparser import PSLiteral


class Layers:
    """Which layers are off when the document opens.

    Args:
        catalog: The document's catalog.
    """

    def __init__(self, catalog: dict[str, Any]) -> None:
        properties = _dict(catalog.get("OCProperties"))
        start = _dict(properties.get("D"))
        base_off = _name(start.get("BaseState")) == "OFF"
        self._off = _ids(properties.get("OCGs")) - _ids(start.get("ON")) if base_off else _ids(start.get("OFF"))

    def off(self, reference: Any) -> bool:  # noqa: ANN401  pdfminer carries no types
        """Whether content that belongs to a layer, or to a rule over several, is hidden.

        Args:
            reference: What marks the content: a layer, or a membership of layers.

        Returns:
            Whether it does not show.
        """
        if not self._off:
            return False
        if isinstance(reference, PDFObjRef) and reference.objid in self._off:
            return True
        members = _dict(reference).get("OCGs")
        ids = _ids(members if isinstance(resolve1(members), list) else [members])
        return bool(ids) and ids <= self._off


def _ids(references: Any) -> set[int]:  # noqa: ANN401  pdfminer carries no types
    found = resolve1(references)
    return {item.objid for item in found if isinstance(item, PDFObjRef)} if isinstance(found, list) else set()


def _dict(value: Any) -> dict[str, Any]:  # noqa: ANN401  pdfminer carries no types
    found = resolve1(value)
    return found if isinstance(found, dict) else {}


def _name(value: Any) -> str:  # noqa: ANN401  pdfminer carries no types
    found = resolve1(value)
    return str(found.name) if isinstance(found, PSLiteral) else ""
