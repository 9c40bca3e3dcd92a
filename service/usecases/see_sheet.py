"""See a datasheet: how far its reading has come, and which parts it speaks of."""

from dataclasses import dataclass

from service.facts.document import Document, DocumentState
from service.facts.part import Part, part_key
from service.facts.reading import Sheet
from service.usecases.ports import Store
from service.usecases.see_place import UnknownPlaceError


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetState:
    """A file and its reading.

    Attributes:
        document: The file.
        sheet: What was read; None while it waits.
        parts: The parts that it is a datasheet of.
    """

    document: Document
    sheet: Sheet | None
    parts: tuple[Part, ...]

    @property
    def main(self) -> Part | None:
        """The part that the sheet is about in the first place; None while that is not clear."""
        wanted = part_key(self.sheet.part or "") if self.sheet and not self.sheet.refused else ""
        named = next((part for part in self.parts if part.key == wanted), None)
        return named or (self.parts[0] if len(self.parts) == 1 else None)


def see_sheet(store: Store, *, sha256: str) -> SheetState:
    """Gather a file with its reading.

    Raises:
        UnknownPlaceError: There is no such file.
    """
    with store.looking() as shelf:
        document = shelf.documents.find(sha256)
        if document is None:
            raise UnknownPlaceError(f"file {sha256[:12]!r}")
        waits = document.state is DocumentState.WAITING
        return SheetState(document=document, sheet=None if waits else shelf.documents.sheet(sha256), parts=shelf.parts.of_sheet(sha256))
