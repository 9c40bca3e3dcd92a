"""Parts under all their names, in the database."""

from sqlalchemy import ColumnElement, func, select
from sqlalchemy.orm import Session

from datastore.grams import grams
from datastore.models.part import NameGramRow, PartNameRow, PartRow, PartSheetRow, TypedPartRow
from datastore.plain import from_text, to_text
from datastore.repositories.changes import Changes, change_of
from service.facts.keeping_error import MovedOnError
from service.facts.part import NameKind, Part, PartName, TypedPart, part_key
from service.facts.switch import Switch


class SqlParts:
    """Parts of one transaction."""

    def __init__(self, session: Session, changes: Changes) -> None:
        self._session, self._changes = session, changes

    def add(self, part: Part) -> None:
        """Enter a part by its key and marking; one that is there already stays as it is."""
        if self._session.get(PartRow, part.key) is None:
            self._session.add(PartRow(key=part.key, marking=part.marking))
            self._session.flush()

    def find(self, marking: str) -> Part | None:
        """The part that goes by this very name; its own number before a name that somebody gave to another."""
        spelling = part_key(marking)
        named = self._session.scalars(select(PartNameRow.part).where(PartNameRow.spelling == spelling).order_by(PartNameRow.id).limit(1)).first()
        key = spelling if named is None or self._session.get(PartRow, spelling) is not None else named
        return next(iter(self._parts(PartRow.key == key)), None)

    def listed(self) -> tuple[Part, ...]:
        """All, by key."""
        return self._parts()

    def of_sheet(self, sha256: str) -> tuple[Part, ...]:
        """The parts that a file is a datasheet of."""
        return self._parts(PartRow.sheets.any(PartSheetRow.sha256 == sha256))

    def name(self, name: PartName) -> None:
        """Add a name; one that is there already stays as it is."""
        spelling = part_key(name.text)
        if self._session.scalars(select(PartNameRow).where(PartNameRow.part == name.part, PartNameRow.spelling == spelling)).first():
            return
        row = PartNameRow(part=name.part, text=name.text, spelling=spelling, kind=name.kind, fold=name.fold, change=self._changes.row(name.change))
        self._session.add(row)
        self._session.flush()
        self._session.add_all(NameGramRow(gram=gram, name_id=row.id) for gram in sorted(grams(name.fold)))
        self._session.flush()

    def link(self, key: str, sha256: str) -> None:
        """Say that a file is a datasheet of the part, and the one to use first from now on."""
        for known in self._session.scalars(select(PartSheetRow).where(PartSheetRow.part == key, PartSheetRow.sha256 == sha256)):
            self._session.delete(known)
        self._session.flush()
        self._session.add(PartSheetRow(part=key, sha256=sha256))
        self._session.flush()

    def type_in(self, typed: TypedPart) -> None:
        """Add a typing."""
        latest = self._typed(typed.part)
        version = 0 if latest is None else latest.version
        if typed.version != version + 1:
            raise MovedOnError(f"the typed figures of {typed.part} stand at version {version}, not {typed.version - 1}; look at them again")
        change = self._changes.row(typed.change)
        self._session.add(TypedPartRow(part=typed.part, version=typed.version, switch=to_text(typed.switch), change=change))
        self._session.flush()

    def near(self, fold: str, *, most: int) -> tuple[PartName, ...]:
        """Names that share the most pairs of characters; of those that share equally many, the shorter ones."""
        shares = (
            select(PartNameRow.id)
            .join(NameGramRow, NameGramRow.name_id == PartNameRow.id)
            .where(NameGramRow.gram.in_(grams(fold)))
            .group_by(PartNameRow.id)
            .order_by(func.count().desc(), func.length(PartNameRow.fold), PartNameRow.id)
            .limit(most)
        )
        ids = self._session.scalars(shares).all()
        rows = {row.id: row for row in self._session.scalars(select(PartNameRow).where(PartNameRow.id.in_(ids)))}
        return tuple(_name(rows[key]) for key in ids)

    def _parts(self, *where: ColumnElement[bool]) -> tuple[Part, ...]:
        rows = self._session.scalars(select(PartRow).where(*where).order_by(PartRow.key).execution_options(populate_existing=True))
        return tuple(_part(row) for row in rows)

    def _typed(self, key: str) -> TypedPart | None:
        row = self._session.scalars(select(TypedPartRow).where(TypedPartRow.part == key).order_by(TypedPartRow.version.desc()).limit(1)).first()
        return None if row is None else _typing(row)


def _part(row: PartRow) -> Part:
    """Read a part back."""
    return Part(
        key=row.key,
        marking=row.marking,
        names=tuple(_name(name) for name in row.names),
        sheets=tuple(sheet.sha256 for sheet in row.sheets),
        typed=_typing(row.typings[-1]) if row.typings else None,
    )


def _typing(row: TypedPartRow) -> TypedPart:
    """Read a typing back."""
    return TypedPart(part=row.part, version=row.version, switch=from_text(Switch, row.switch), change=change_of(row.change))


def _name(row: PartNameRow) -> PartName:
    """Read a name back."""
    return PartName(part=row.part, text=row.text, kind=NameKind(row.kind), fold=row.fold, change=change_of(row.change))
