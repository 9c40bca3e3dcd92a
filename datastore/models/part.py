"""Parts, their names, their datasheets, and what was typed without one."""

from sqlalchemy import ForeignKey, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column, relationship

from datastore.models.change import ChangeRow
from datastore.models.row import Row


class PartNameRow(Row):
    """A name of a part; ``spelling`` is its part_key, by which an exact name is found."""

    __tablename__ = "part_name"
    __table_args__ = (UniqueConstraint("part", "spelling"), {"sqlite_autoincrement": True})

    id: Mapped[int] = mapped_column(primary_key=True)
    part: Mapped[str] = mapped_column(ForeignKey("part.key"))
    text: Mapped[str]
    spelling: Mapped[str] = mapped_column(index=True)
    kind: Mapped[str]
    fold: Mapped[str]
    change_id: Mapped[int] = mapped_column(ForeignKey("change.id"))

    change: Mapped[ChangeRow] = relationship(lazy="joined", innerjoin=True)


class NameGramRow(Row):
    """A pair of characters in a folded name, to find similar ones with plain SQL on every database."""

    __tablename__ = "name_gram"

    gram: Mapped[str] = mapped_column(primary_key=True)
    name_id: Mapped[int] = mapped_column(ForeignKey("part_name.id"), primary_key=True)


class PartSheetRow(Row):
    """A file is a datasheet of a part; the largest number is the one to use first."""

    __tablename__ = "part_sheet"
    __table_args__ = (UniqueConstraint("part", "sha256"), {"sqlite_autoincrement": True})

    id: Mapped[int] = mapped_column(primary_key=True)
    part: Mapped[str] = mapped_column(ForeignKey("part.key"))
    sha256: Mapped[str] = mapped_column(ForeignKey("document.sha256"), index=True)


class TypedPartRow(Row):
    """One typing of a part's figures."""

    __tablename__ = "typed_part"

    part: Mapped[str] = mapped_column(ForeignKey("part.key"), primary_key=True)
    version: Mapped[int] = mapped_column(primary_key=True)
    switch: Mapped[str]
    change_id: Mapped[int] = mapped_column(ForeignKey("change.id"))

    change: Mapped[ChangeRow] = relationship(lazy="joined", innerjoin=True)


class PartRow(Row):
    """A part."""

    __tablename__ = "part"

    key: Mapped[str] = mapped_column(primary_key=True)
    marking: Mapped[str]

    names: Mapped[list[PartNameRow]] = relationship(lazy="selectin", viewonly=True, order_by=PartNameRow.id)
    sheets: Mapped[list[PartSheetRow]] = relationship(lazy="selectin", viewonly=True, order_by=PartSheetRow.id.desc())
    typings: Mapped[list[TypedPartRow]] = relationship(lazy="selectin", viewonly=True, order_by=TypedPartRow.version)


class WantedRow(Row):
    """A part that waits for a datasheet: a list of things to do, so its lines come and go."""

    __tablename__ = "wanted"

    spelling: Mapped[str] = mapped_column(primary_key=True)
    marking: Mapped[str]
    package: Mapped[str]
    pins: Mapped[int | None]
    phrase: Mapped[str]
    change_id: Mapped[int] = mapped_column(ForeignKey("change.id"))

    change: Mapped[ChangeRow] = relationship(lazy="joined", innerjoin=True)
