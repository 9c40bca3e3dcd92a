"""Saved boards, in the database."""

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from datastore.models.board import BoardPartRow, BoardRow
from datastore.repositories.changes import Changes, change_of
from service.facts.keeping_error import MovedOnError
from service.facts.kept_board import KeptBoard


class SqlBoards:
    """Boards of one transaction."""

    def __init__(self, session: Session, changes: Changes) -> None:
        self._session, self._changes = session, changes

    def save(self, board: KeptBoard) -> None:
        """Add a version."""
        standing = self.find(board.slug)
        version = 0 if standing is None else standing.version
        if board.version != version + 1:
            raise MovedOnError(f"the board {board.slug} stands at version {version}, not {board.version - 1}; look at it again")
        row = BoardRow(slug=board.slug, version=board.version, title=board.title, text=board.text, document=board.document)
        row.change = self._changes.row(board.change)
        row.parts = [BoardPartRow(position=position, part=part) for position, part in enumerate(board.parts)]
        self._session.add(row)
        self._session.flush()

    def find(self, slug: str) -> KeptBoard | None:
        """The version that stands."""
        return next(reversed(self.history(slug)), None)

    def history(self, slug: str) -> tuple[KeptBoard, ...]:
        """Every version, the first one first."""
        rows = self._session.scalars(select(BoardRow).where(BoardRow.slug == slug).order_by(BoardRow.version))
        return tuple(_board(row) for row in rows)

    def listed(self) -> tuple[KeptBoard, ...]:
        """The standing version of each, the latest first."""
        last = select(BoardRow.slug, func.max(BoardRow.version).label("version")).group_by(BoardRow.slug).subquery()
        query = select(BoardRow).join(last, (BoardRow.slug == last.c.slug) & (BoardRow.version == last.c.version))
        return tuple(_board(row) for row in self._session.scalars(query.order_by(BoardRow.change_id.desc(), BoardRow.slug)))

    def carrying(self, part: str) -> tuple[KeptBoard, ...]:
        """The boards whose standing version carries a part."""
        return tuple(board for board in self.listed() if part in board.parts)


def _board(row: BoardRow) -> KeptBoard:
    """Read a version back."""
    return KeptBoard(
        slug=row.slug,
        version=row.version,
        title=row.title,
        text=row.text,
        document=row.document,
        parts=tuple(part.part for part in row.parts),
        change=change_of(row.change),
    )
