"""Saved boards, version by version."""

from sqlalchemy import ForeignKey, ForeignKeyConstraint
from sqlalchemy.orm import Mapped, mapped_column, relationship

from datastore.models.change import ChangeRow
from datastore.models.row import Row


class BoardRow(Row):
    """One version of a board document."""

    __tablename__ = "board"

    slug: Mapped[str] = mapped_column(primary_key=True)
    version: Mapped[int] = mapped_column(primary_key=True)
    title: Mapped[str]
    text: Mapped[str]
    document: Mapped[str]
    change_id: Mapped[int] = mapped_column(ForeignKey("change.id"))

    change: Mapped[ChangeRow] = relationship(lazy="joined", innerjoin=True)
    parts: Mapped[list["BoardPartRow"]] = relationship(lazy="selectin", order_by="BoardPartRow.position")


class BoardPartRow(Row):
    """A part that a board version carries; a board may name a part that the store does not know yet."""

    __tablename__ = "board_part"
    __table_args__ = (ForeignKeyConstraint(["slug", "version"], ["board.slug", "board.version"]),)

    slug: Mapped[str] = mapped_column(primary_key=True)
    version: Mapped[int] = mapped_column(primary_key=True)
    position: Mapped[int] = mapped_column(primary_key=True)
    part: Mapped[str] = mapped_column(index=True)
