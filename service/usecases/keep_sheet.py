"""Take a datasheet in, and keep what was read from it."""

from dataclasses import dataclass

from service.facts.change import Change
from service.facts.document import Document
from service.facts.part import NameKind, Part, PartName, part_key
from service.facts.reading import Sheet
from service.usecases.append_readings import append_readings
from service.usecases.follow_readings import follow_readings
from service.usecases.ports import MarkingReader, Reader, Shelf, Store

LONGEST_NAME = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenIn:
    """A file that was brought.

    Attributes:
        document: As it stands in the store.
        known: Whether it was there already, under whatever name.
    """

    document: Document
    known: bool


def take_in(name: str, data: bytes, *, store: Store, change: Change) -> TakenIn:
    """Keep a file before anybody reads it, so that a reading that is cut off can be begun again.

    Args:
        name: Its name; folders in it are left out.
        data: Its contents.
        store: Where it is kept.
        change: Who brought it, when and why.

    Returns:
        The document; the one that is there where the same contents came before, also at the same moment.
    """
    sha256 = store.files.put(data)
    base = name.replace("\\", "/").rpartition("/")[2].strip()[:LONGEST_NAME] or "unnamed.pdf"
    with store.changing() as shelf:
        known = shelf.documents.find(sha256) is not None
        return TakenIn(document=shelf.documents.add(Document(sha256=sha256, name=base, size=len(data), taken_in=change)), known=known)


def read_in(sha256: str, *, store: Store, reader: Reader, markings: MarkingReader, change: Change) -> Sheet:
    """Read a file that was taken in, and keep what was read.

    Args:
        sha256: The file.
        store: Where it is kept.
        reader: Reads it, outside of any transaction.
        markings: Folds the part's names.
        change: Who has it read, when and why.

    Raises:
        FileNotFoundError: It was never taken in.
        DamagedFileError: The stored file was changed on the disk.
    """
    with store.looking() as shelf:
        document = shelf.documents.find(sha256)
    if document is None:
        raise FileNotFoundError(f"no file with the SHA-256 {sha256} was taken in")
    sheet = reader.read(document.name, store.files.get(sha256))
    keep_sheet(sheet, store=store, markings=markings, change=change)
    return sheet


def keep_sheet(sheet: Sheet, *, store: Store, markings: MarkingReader, change: Change) -> None:
    """Keep what was read from a file that was taken in: the sheet, its readings and the parts that it names, or nothing of it.

    Args:
        sheet: What a reader saw; a refused one keeps its reason and leaves earlier readings alone.
        store: Where it is kept.
        markings: Folds the part's names.
        change: Who had it read, when and why.
    """
    with store.changing() as shelf:
        shelf.documents.keep_sheet(sheet)
        append_readings(shelf, follow_readings(shelf.readings.of_sheet(sheet.sha256), sheet, change))
        if sheet.refused is None:
            _keep_parts(shelf, sheet, markings, change)


def _keep_parts(shelf: Shelf, sheet: Sheet, markings: MarkingReader, change: Change) -> None:
    """Every part that the sheet covers stands under its number, and no longer waits."""
    for number in dict.fromkeys((sheet.part, *sheet.also)):
        key = part_key(number or "")
        if number is None or not key:
            continue
        shelf.parts.add(Part(key=key, marking=number))
        shelf.parts.name(PartName(part=key, text=number, kind=NameKind.PART_NUMBER, fold=markings.fold(number), change=change))
        known = shelf.parts.find(key)
        # Why not again: a sheet that is read once more must not push itself before a newer revision.
        if known is not None and sheet.sha256 not in known.sheets:
            shelf.parts.link(key, sheet.sha256)
        shelf.wanted.drop(number)
