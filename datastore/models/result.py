"""Frozen reports, what they used, and why they are out of date."""

from sqlalchemy import ForeignKey, Index, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column, relationship

from datastore.models.change import ChangeRow
from datastore.models.row import Row


class ResultInputRow(Row):
    """An input of a result, by identity and version."""

    __tablename__ = "result_input"
    __table_args__ = (Index(None, "kind", "input_id"),)

    result_id: Mapped[str] = mapped_column(ForeignKey("result.id"), primary_key=True)
    position: Mapped[int] = mapped_column(primary_key=True)
    kind: Mapped[str]
    input_id: Mapped[str]
    version: Mapped[int]
    name: Mapped[str]


class ResultPartRow(Row):
    """A part that a result speaks of."""

    __tablename__ = "result_part"

    result_id: Mapped[str] = mapped_column(ForeignKey("result.id"), primary_key=True)
    position: Mapped[int] = mapped_column(primary_key=True)
    part: Mapped[str] = mapped_column(index=True)


class OutOfDateRow(Row):
    """A reason why a result is out of date."""

    __tablename__ = "out_of_date"
    __table_args__ = (UniqueConstraint("result_id", "kind", "input_id", "version"), {"sqlite_autoincrement": True})

    id: Mapped[int] = mapped_column(primary_key=True)
    result_id: Mapped[str] = mapped_column(ForeignKey("result.id"))
    kind: Mapped[str]
    input_id: Mapped[str]
    version: Mapped[int]
    reason: Mapped[str]
    change_id: Mapped[int] = mapped_column(ForeignKey("change.id"))

    change: Mapped[ChangeRow] = relationship(lazy="joined", innerjoin=True)


class ResultRow(Row):
    """A frozen report; never changed once written."""

    __tablename__ = "result"

    id: Mapped[str] = mapped_column(primary_key=True)
    title: Mapped[str]
    report: Mapped[str]
    board: Mapped[str | None] = mapped_column(index=True)
    rule_set: Mapped[str]
    engine_version: Mapped[str]
    typed: Mapped[bool]
    look_at: Mapped[str]
    change_id: Mapped[int] = mapped_column(ForeignKey("change.id"))

    change: Mapped[ChangeRow] = relationship(lazy="joined", innerjoin=True)
    inputs: Mapped[list[ResultInputRow]] = relationship(lazy="selectin", order_by=ResultInputRow.position)
    parts: Mapped[list[ResultPartRow]] = relationship(lazy="selectin", order_by=ResultPartRow.position)
    reasons: Mapped[list[OutOfDateRow]] = relationship(lazy="selectin", order_by=OutOfDateRow.id)
