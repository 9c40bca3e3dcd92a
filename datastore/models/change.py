"""Who changed something, when and why."""

from sqlalchemy.orm import Mapped, mapped_column

from datastore.models.row import Row


class ChangeRow(Row):
    """One act; its number gives the order, because clocks jump."""

    __tablename__ = "change"
    __table_args__ = ({"sqlite_autoincrement": True},)

    id: Mapped[int] = mapped_column(primary_key=True)
    by: Mapped[str]
    at: Mapped[str]
    why: Mapped[str]
