"""Parts that wait for a datasheet, in the database."""

from sqlalchemy import select
from sqlalchemy.orm import Session

from datastore.models.part import WantedRow
from datastore.repositories.changes import Changes, change_of
from service.facts.part import Wanted, wanted_key


class SqlWantedParts:
    """The waiting list of one transaction."""

    def __init__(self, session: Session, changes: Changes) -> None:
        self._session, self._changes = session, changes

    def add(self, wanted: Wanted) -> None:
        """Put one on the list; the same marking is there once, as last said."""
        row = WantedRow(
            spelling=wanted_key(wanted.marking),
            marking=wanted.marking,
            package=wanted.package,
            pins=wanted.pins,
            phrase=wanted.phrase,
            change=self._changes.row(wanted.change),
        )
        self._session.merge(row)
        self._session.flush()

    def listed(self) -> tuple[Wanted, ...]:
        """All, the latest first."""
        rows = self._session.scalars(select(WantedRow).order_by(WantedRow.change_id.desc(), WantedRow.spelling))
        return tuple(Wanted(marking=r.marking, package=r.package, pins=r.pins, phrase=r.phrase, change=change_of(r.change)) for r in rows)

    def drop(self, marking: str) -> None:
        """Take one off the list; nothing happens where it is not on it."""
        if (row := self._session.get(WantedRow, wanted_key(marking))) is not None:
            self._session.delete(row)
            self._session.flush()
