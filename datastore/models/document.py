"""Files that were taken in, and the sheets read from them."""

from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column, relationship

from datastore.models.change import ChangeRow
from datastore.models.row import Row


class DocumentRow(Row):
    """A kept file."""

    __tablename__ = "document"

    sha256: Mapped[str] = mapped_column(primary_key=True)
    name: Mapped[str]
    size: Mapped[int]
    change_id: Mapped[int] = mapped_column(ForeignKey("change.id"))

    change: Mapped[ChangeRow] = relationship(lazy="joined", innerjoin=True)


class SheetRow(Row):
    """What one reading of a file gave, word for word; the largest number is the latest."""

    __tablename__ = "sheet"
    __table_args__ = ({"sqlite_autoincrement": True},)

    id: Mapped[int] = mapped_column(primary_key=True)
    sha256: Mapped[str] = mapped_column(ForeignKey("document.sha256"), index=True)
    reader_version: Mapped[str]
    refused: Mapped[bool]
    sheet: Mapped[str]
