"""Changes as rows: one row for one act, however many rows it touches."""

from sqlalchemy.orm import Session

from datastore.models.change import ChangeRow
from service.facts.change import Change


class Changes:
    """Remembers the acts of one transaction.

    Args:
        session: The transaction.
    """

    def __init__(self, session: Session) -> None:
        self._session = session
        self._rows: dict[Change, ChangeRow] = {}

    def row(self, change: Change) -> ChangeRow:
        """Give the row of an act, entering it the first time."""
        if change not in self._rows:
            self._rows[change] = ChangeRow(by=change.by, at=change.at, why=change.why)
            self._session.add(self._rows[change])
            # Why at once: numbers give the order of history, so they must be given in the order of the acts.
            self._session.flush()
        return self._rows[change]


def change_of(row: ChangeRow) -> Change:
    """Read an act back."""
    return Change(by=row.by, at=row.at, why=row.why)
