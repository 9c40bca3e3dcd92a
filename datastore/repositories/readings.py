"""Readings with their history, in the database."""

from sqlalchemy import ColumnElement, select
from sqlalchemy.orm import Session

from datastore.models.reading import ReadingAliasRow, ReadingEntryRow, ReadingRow
from datastore.page_order import in_page_order
from datastore.plain import from_text, to_text
from datastore.repositories.changes import Changes, change_of
from service.facts.keeping_error import MovedOnError
from service.facts.kept_reading import KeptReading, Standing
from service.facts.reading import Reading


class SqlReadings:
    """Readings of one transaction."""

    def __init__(self, session: Session, changes: Changes) -> None:
        self._session, self._changes = session, changes

    def append(self, entry: KeptReading) -> None:
        """Add the next entry of a reading."""
        place = self._session.get(ReadingRow, entry.id) or ReadingRow(id=entry.id, sha256=entry.sha256, version=0)
        if entry.version != place.version + 1:
            raise MovedOnError(f"the printed value {entry.id} stands at version {place.version}, not {entry.version - 1}; look at it again")
        place.version = entry.version
        self._session.add(
            ReadingEntryRow(
                place=place,
                version=entry.version,
                reading=to_text(entry.reading),
                as_read=to_text(entry.as_read),
                standing=entry.standing,
                reader_version=entry.reader_version,
                change=self._changes.row(entry.change),
                settled=None if entry.settled is None else self._changes.row(entry.settled),
            )
        )
        self._name(entry, place)
        self._session.flush()

    def find(self, reading_id: str) -> KeptReading | None:
        """The entry that stands, by any id of the place."""
        alias = self._session.get(ReadingAliasRow, reading_id)
        return next(iter(self._entries(ReadingRow.id == alias.reading_id, STANDS)), None) if alias else None

    def history(self, reading_id: str) -> tuple[KeptReading, ...]:
        """Every entry, the first one first."""
        alias = self._session.get(ReadingAliasRow, reading_id)
        return self._entries(ReadingRow.id == alias.reading_id) if alias else ()

    def of_sheet(self, sha256: str) -> tuple[KeptReading, ...]:
        """The entries that stand of one file, in the order of the pages."""
        return in_page_order(self._entries(ReadingRow.sha256 == sha256, STANDS))

    def _name(self, entry: KeptReading, place: ReadingRow) -> None:
        """Let the place be found by its first id and by the reader's."""
        for alias in dict.fromkeys((entry.id, entry.as_read.id)):
            if self._session.get(ReadingAliasRow, alias) is None:
                self._session.add(ReadingAliasRow(alias=alias, place=place))

    def _entries(self, *where: ColumnElement[bool]) -> tuple[KeptReading, ...]:
        query = select(ReadingEntryRow).join(ReadingEntryRow.place).where(*where).order_by(ReadingEntryRow.reading_id, ReadingEntryRow.version)
        return tuple(_kept(row) for row in self._session.scalars(query))


STANDS = ReadingEntryRow.version == ReadingRow.version


def _kept(row: ReadingEntryRow) -> KeptReading:
    """Read an entry back."""
    return KeptReading(
        id=row.reading_id,
        version=row.version,
        sha256=row.place.sha256,
        reading=from_text(Reading, row.reading),
        as_read=from_text(Reading, row.as_read),
        standing=Standing(row.standing),
        reader_version=row.reader_version,
        change=change_of(row.change),
        settled=None if row.settled is None else change_of(row.settled),
    )
