"""Readings: an identity, the ids that readers gave it, and a history of entries."""

from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column, relationship

from datastore.models.change import ChangeRow
from datastore.models.row import Row


class ReadingRow(Row):
    """A place on a page with a stable identity; ``version`` points to the entry that stands."""

    __tablename__ = "reading"

    id: Mapped[str] = mapped_column(primary_key=True)
    sha256: Mapped[str] = mapped_column(ForeignKey("document.sha256"), index=True)
    version: Mapped[int]


class ReadingAliasRow(Row):
    """An id that some reader version gave to the place."""

    __tablename__ = "reading_alias"

    alias: Mapped[str] = mapped_column(primary_key=True)
    reading_id: Mapped[str] = mapped_column(ForeignKey("reading.id"), index=True)

    place: Mapped[ReadingRow] = relationship(lazy="raise")


class ReadingEntryRow(Row):
    """One entry of a history; never changed once written."""

    __tablename__ = "reading_entry"

    reading_id: Mapped[str] = mapped_column(ForeignKey("reading.id"), primary_key=True)
    version: Mapped[int] = mapped_column(primary_key=True)
    reading: Mapped[str]
    as_read: Mapped[str]
    standing: Mapped[str]
    reader_version: Mapped[str]
    change_id: Mapped[int] = mapped_column(ForeignKey("change.id"))
    settled_id: Mapped[int | None] = mapped_column(ForeignKey("change.id"))

    place: Mapped[ReadingRow] = relationship(lazy="joined", innerjoin=True)
    change: Mapped[ChangeRow] = relationship(lazy="joined", innerjoin=True, foreign_keys=[change_id])
    settled: Mapped[ChangeRow | None] = relationship(lazy="joined", foreign_keys=[settled_id])
