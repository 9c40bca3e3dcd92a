"""See a part: its names, its datasheets, every printed value with its standing, and where the part was met."""

from dataclasses import dataclass

from service.facts.document import Document
from service.facts.kept_board import KeptBoard
from service.facts.kept_reading import KeptReading
from service.facts.parameter import JUDGED, PARAMETERS, Parameter
from service.facts.part import Part
from service.facts.reading import Conditions, Sheet
from service.facts.result import Result
from service.usecases.ports import Shelf, Store


class UnknownPartError(LookupError):
    """No part goes by this name."""

    def __init__(self, marking: str) -> None:
        super().__init__(f"No part goes by {marking!r}; look the marking up on the bench, or drop its datasheet there.")
        self.marking = marking


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedValue:
    """One printed value as a person sees it.

    Attributes:
        entry: The entry that stands.
        parameter: What it is called.
        holds_for: Its conditions in words.
        history: Every entry, the first one first.
    """

    entry: KeptReading
    parameter: Parameter
    holds_for: str
    history: tuple[KeptReading, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetView:
    """One datasheet of a part.

    Attributes:
        document: The file.
        sheet: As the latest reader saw it; None while it waits.
        judged: Values that judgements start from.
        others: The rest.
    """

    document: Document
    sheet: Sheet | None
    judged: tuple[PrintedValue, ...]
    others: tuple[PrintedValue, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PartView:
    """A part with all that is known of it.

    Attributes:
        part: Its names and sheets.
        sheets: Its datasheets, the one to use first.
        boards: Boards that carry it.
        results: Results that speak of it.
    """

    part: Part
    sheets: tuple[SheetView, ...]
    boards: tuple[KeptBoard, ...]
    results: tuple[Result, ...]


def see_part(store: Store, *, marking: str) -> PartView:
    """Gather everything about one part.

    Args:
        store: Where things are kept.
        marking: Any of the part's names, spelled in any way.

    Raises:
        UnknownPartError: No part goes by this name.
    """
    with store.looking() as shelf:
        part = shelf.parts.find(marking)
        if part is None:
            raise UnknownPartError(marking)
        return PartView(
            part=part,
            sheets=tuple(view for sha256 in part.sheets if (view := _sheet_view(shelf, sha256))),
            boards=shelf.boards.carrying(part.key),
            results=shelf.results.of_part(part.key),
        )


def printed_value(shelf: Shelf, entry: KeptReading) -> PrintedValue:
    """Dress an entry for a person."""
    key = entry.reading.key
    return PrintedValue(
        entry=entry,
        parameter=PARAMETERS.get(key, Parameter(key=key, words=key, symbol=key)),
        holds_for=conditions_in_words(entry.reading.cond),
        history=shelf.readings.history(entry.id),
    )


def conditions_in_words(cond: Conditions) -> str:
    """Say what a printed value holds for, as a datasheet would write it; empty where nothing is printed.

    Args:
        cond: Voltages in V, currents in A, temperatures in degrees Celsius.
    """
    numbers = (
        ("VGS", cond.vgs, "V"),
        ("VDS", cond.vds, "V"),
        ("ID", cond.id, "A"),
        ("IS", cond.is_, "A"),
        ("case", cond.tc, "°C"),
        ("air", cond.ta, "°C"),
        ("solder point", cond.tsp, "°C"),
        ("junction", cond.tj, "°C"),
    )
    said = [f"{name} {_small(value, unit)}" for name, value, unit in numbers if value is not None]
    said += [f"for {cond.t}"] if cond.t and cond.t != "steady" else []
    said += ["steady state"] if cond.t == "steady" else []
    said += [f"limited by the {cond.limited_by}"] if cond.limited_by else []
    said += [text for text in (cond.ch, cond.part, cond.note) if text]
    said += [f"in the {cond.where}"] if cond.where else []
    return ", ".join(said)


def _sheet_view(shelf: Shelf, sha256: str) -> SheetView | None:
    """One datasheet with its values in two groups."""
    document = shelf.documents.find(sha256)
    if document is None:
        return None
    values = [printed_value(shelf, entry) for entry in shelf.readings.of_sheet(sha256)]
    judged = sorted((value for value in values if value.entry.reading.key in JUDGED), key=lambda value: JUDGED.index(value.entry.reading.key))
    return SheetView(
        document=document,
        sheet=shelf.documents.sheet(sha256),
        judged=tuple(judged),
        others=tuple(value for value in values if value.entry.reading.key not in JUDGED),
    )


def _small(value: float, unit: str) -> str:
    """A number with its unit; test currents below a milliampere as datasheets write them."""
    if unit == "A" and 0 < abs(value) < 0.1:
        return f"{value * 1e6:g} µA" if abs(value) < 1e-3 else f"{value * 1e3:g} mA"
    return f"{value:g} {unit}"
