"""Files that were taken in, in the database."""

from sqlalchemy import ColumnElement, func, select
from sqlalchemy.orm import Session

from datastore.models.document import DocumentRow, SheetRow
from datastore.plain import from_text, to_text
from datastore.repositories.changes import Changes, change_of
from service.facts.document import Document, DocumentState
from service.facts.reading import Sheet


class SqlDocuments:
    """Documents of one transaction."""

    def __init__(self, session: Session, changes: Changes) -> None:
        self._session, self._changes = session, changes

    def add(self, document: Document) -> Document:
        """Enter a file; one that is there already is given back as it stands."""
        if (known := self.find(document.sha256)) is not None:
            return known
        change = self._changes.row(document.taken_in)
        self._session.add(DocumentRow(sha256=document.sha256, name=document.name, size=document.size, change=change))
        self._session.flush()
        return self._documents(DocumentRow.sha256 == document.sha256)[0]

    def find(self, sha256: str) -> Document | None:
        """Look one up."""
        return next(iter(self._documents(DocumentRow.sha256 == sha256)), None)

    def listed(self) -> tuple[Document, ...]:
        """All, the latest first."""
        return self._documents()

    def keep_sheet(self, sheet: Sheet) -> None:
        """Keep what a reader saw; the very same again changes nothing."""
        text, latest = to_text(sheet), self._latest(sheet.sha256)
        if latest is not None and latest.sheet == text:
            return
        self._session.add(SheetRow(sha256=sheet.sha256, reader_version=sheet.reader_version, refused=sheet.refused is not None, sheet=text))
        self._session.flush()

    def sheet(self, sha256: str) -> Sheet | None:
        """The sheet as the latest reader saw it."""
        latest = self._latest(sha256)
        return None if latest is None else from_text(Sheet, latest.sheet)

    def _latest(self, sha256: str) -> SheetRow | None:
        return self._session.scalars(select(SheetRow).where(SheetRow.sha256 == sha256).order_by(SheetRow.id.desc()).limit(1)).first()

    def _documents(self, *where: ColumnElement[bool]) -> tuple[Document, ...]:
        """Documents with what became of them; the sheets themselves stay where they are, they are long."""
        latest = select(func.max(SheetRow.id)).where(SheetRow.sha256 == DocumentRow.sha256).correlate(DocumentRow).scalar_subquery()
        query = select(DocumentRow, SheetRow.refused, SheetRow.reader_version).outerjoin(SheetRow, SheetRow.id == latest).where(*where)
        return tuple(_document(*found) for found in self._session.execute(query.order_by(DocumentRow.change_id.desc(), DocumentRow.sha256)))


def _document(row: DocumentRow, refused: bool | None, reader_version: str | None) -> Document:  # noqa: FBT001 - a column of the query
    """Read a document back."""
    state = DocumentState.WAITING if refused is None else DocumentState.REFUSED if refused else DocumentState.READ
    return Document(sha256=row.sha256, name=row.name, size=row.size, taken_in=change_of(row.change), state=state, reader_version=reader_version)
