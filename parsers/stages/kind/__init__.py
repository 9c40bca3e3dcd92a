"""Second stage: what kind of document it is, before anybody looks for numbers in it."""

from collections.abc import Sequence

from parsers.errors import NotADatasheetError, OtherComponentError
from parsers.stages.kind.documents import DOCUMENTS
from parsers.stages.kind.weigh import Weights, weigh
from parsers.types import Document, TextLayer

ENOUGH = 5  # least weight on which a document is refused
SURE = 9  # the same, where most pages are pictures and hold next to no text
FEW_LETTERS = 60
MANY_LETTERS = 1_500  # a page of readable text that is the sheet of a switch names some of its quantities
_SILENT = "The text names neither the ratings of a switch nor those of another part; choose the datasheet as its maker publishes it."

_NAMES = {
    "application_note": "an application note",
    "article": "an article",
    "schematic": "a schematic",
    "drawing": "a drawing",
    "bill_of_materials": "a bill of materials",
    "cross_reference": "a cross-reference",
    "manual": "a manual",
    "ic": "an integrated circuit",
    "diode_tvs": "a diode or surge suppressor",
    "resistor": "a resistor",
    "thermistor": "a thermistor",
    "fuse": "a fuse",
    "battery_cell": "a battery cell",
    "igbt": "an IGBT",
    "rf_transistor": "a radio-frequency transistor",
    "current_sensor": "a current sensor",
    "module": "a power module",
    "other": "another component",
}
_DOCUMENTS = {one.kind for one in DOCUMENTS}


def kind_of(document: Document) -> str | None:
    """Tell whether a document is the datasheet of a field-effect switch.

    Args:
        document: With the text of its pages.

    Returns:
        ``mosfet``, or None where there is too little text to tell.

    Raises:
        NotADatasheetError: It is no datasheet; says what it seems to be, if that can be told.
        OtherComponentError: It is the datasheet of another component; says of which.
    """
    found = weigh(document.page_text)
    kind = _kind(found)
    if kind is None and document.text_layer is TextLayer.GOOD and found.letters >= MANY_LETTERS and not found.pictured:
        raise NotADatasheetError(_SILENT)
    return kind


def kind_of_text(pages: Sequence[str]) -> str | None:
    """Tell the same from the text of the pages alone, such as a reader of pictures gives it; less text is too little."""
    return _kind(weigh(pages))


def _kind(found: Weights) -> str | None:
    if found.letters < FEW_LETTERS:
        return None
    if found.switch >= max(found.against, ENOUGH):
        return "mosfet"
    if found.against < (SURE if found.pictured else ENOUGH):
        return None
    raise _refusal(found)


def _refusal(found: Weights) -> NotADatasheetError | OtherComponentError:
    name = _NAMES[found.best]
    if found.best in _DOCUMENTS:
        return NotADatasheetError(f"This seems to be {name}, not the datasheet of a switch; fetch that from its maker.", seems_to_be=found.best)
    return OtherComponentError(f"This seems to be the datasheet of {name}, not of a MOSFET; only those are read.", seems_to_be=found.best)
