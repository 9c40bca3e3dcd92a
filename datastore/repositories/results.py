"""Frozen reports, in the database."""

import json
from collections.abc import Iterable

from sqlalchemy import ColumnElement, select
from sqlalchemy.orm import Session

from datastore.models.result import OutOfDateRow, ResultInputRow, ResultPartRow, ResultRow
from datastore.repositories.changes import Changes, change_of
from service.facts.result import InputKind, OutOfDate, Result, UsedInput


class SqlResults:
    """Results of one transaction."""

    def __init__(self, session: Session, changes: Changes) -> None:
        self._session, self._changes = session, changes

    def freeze(self, result: Result) -> None:
        """Keep a result; the same result is kept once."""
        if self._session.get(ResultRow, result.id) is not None:
            return
        row = ResultRow(
            id=result.id,
            title=result.title,
            report=result.report,
            board=result.board,
            rule_set=result.rule_set,
            engine_version=result.engine_version,
            typed=result.typed,
            look_at=json.dumps(result.look_at),
            change=self._changes.row(result.change),
        )
        row.inputs = [
            ResultInputRow(position=position, kind=used.kind, input_id=used.id, version=used.version, name=used.name)
            for position, used in enumerate(result.inputs)
        ]
        row.parts = [ResultPartRow(position=position, part=part) for position, part in enumerate(result.parts)]
        self._session.add(row)
        self._session.flush()
        self.mark(result.out_of_date)

    def find(self, result_id: str) -> Result | None:
        """Look one up."""
        return next(iter(self._results(ResultRow.id == result_id)), None)

    def listed(self) -> tuple[Result, ...]:
        """All, the latest first."""
        return self._results()

    def of_part(self, part: str) -> tuple[Result, ...]:
        """The results that speak of a part, the latest first."""
        return self._results(ResultRow.parts.any(ResultPartRow.part == part))

    def of_board(self, slug: str) -> tuple[Result, ...]:
        """The results that judge a saved board, the latest first."""
        return self._results(ResultRow.board == slug)

    def using(self, kind: InputKind, input_id: str) -> tuple[Result, ...]:
        """The results that used an input in any version."""
        return self._results(ResultRow.inputs.any((ResultInputRow.kind == kind) & (ResultInputRow.input_id == input_id)))

    def mark(self, reasons: Iterable[OutOfDate]) -> None:
        """Mark results out of date; a reason that is there already is kept once."""
        for reason in reasons:
            row = self._session.get_one(ResultRow, reason.result)
            if any((r.kind, r.input_id, r.version) == (reason.kind, reason.id, reason.version) for r in row.reasons):
                continue
            marked = OutOfDateRow(kind=reason.kind, input_id=reason.id, version=reason.version, reason=reason.reason)
            marked.change = self._changes.row(reason.change)
            row.reasons.append(marked)
            self._session.flush()

    def _results(self, *where: ColumnElement[bool]) -> tuple[Result, ...]:
        rows = self._session.scalars(select(ResultRow).where(*where).order_by(ResultRow.change_id.desc(), ResultRow.id))
        return tuple(_result(row) for row in rows)


def _result(row: ResultRow) -> Result:
    """Read a result back."""
    return Result(
        id=row.id,
        title=row.title,
        report=row.report,
        inputs=tuple(UsedInput(kind=InputKind(used.kind), id=used.input_id, version=used.version, name=used.name) for used in row.inputs),
        parts=tuple(part.part for part in row.parts),
        board=row.board,
        rule_set=row.rule_set,
        engine_version=row.engine_version,
        typed=row.typed,
        look_at=tuple(json.loads(row.look_at)),
        change=change_of(row.change),
        out_of_date=tuple(_reason(reason) for reason in row.reasons),
    )


def _reason(row: OutOfDateRow) -> OutOfDate:
    """Read a reason back."""
    return OutOfDate(
        result=row.result_id, kind=InputKind(row.kind), id=row.input_id, version=row.version, reason=row.reason, change=change_of(row.change)
    )
