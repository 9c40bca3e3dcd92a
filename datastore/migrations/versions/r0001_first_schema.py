"""The first schema: files, readings with their history, parts, boards and results.

Constraints and indexes are named by the rule in datastore.models.row.
"""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Go forward."""
    op.create_table("change", _number(), _text("by"), _text("at"), _text("why"), sqlite_autoincrement=True)
    _documents()
    _readings()
    _parts()
    _boards()
    _results()


def _documents() -> None:
    op.create_table("document", _key("sha256"), _text("name"), sa.Column("size", sa.Integer, nullable=False), _change())
    op.create_table(
        "sheet",
        _number(),
        _text("sha256", sa.ForeignKey("document.sha256")),
        _text("reader_version"),
        sa.Column("refused", sa.Boolean, nullable=False),
        _text("sheet"),
        sqlite_autoincrement=True,
    )
    op.create_index(None, "sheet", ["sha256"])


def _readings() -> None:
    op.create_table("reading", _key("id"), _text("sha256", sa.ForeignKey("document.sha256")), _version(key=False))
    op.create_index(None, "reading", ["sha256"])
    op.create_table("reading_alias", _key("alias"), _text("reading_id", sa.ForeignKey("reading.id")))
    op.create_index(None, "reading_alias", ["reading_id"])
    op.create_table(
        "reading_entry",
        _key("reading_id", sa.ForeignKey("reading.id")),
        _version(),
        *map(_text, ("reading", "as_read", "standing", "reader_version")),
        _change(),
        sa.Column("settled_id", sa.Integer, sa.ForeignKey("change.id")),
    )


def _parts() -> None:
    op.create_table("part", _key("key"), _text("marking"))
    op.create_table(
        "part_name",
        _number(),
        _text("part", sa.ForeignKey("part.key")),
        *map(_text, ("text", "spelling", "kind", "fold")),
        _change(),
        sa.UniqueConstraint("part", "spelling"),
        sqlite_autoincrement=True,
    )
    op.create_index(None, "part_name", ["spelling"])
    op.create_table("name_gram", _key("gram"), sa.Column("name_id", sa.Integer, sa.ForeignKey("part_name.id"), primary_key=True))
    op.create_table(
        "part_sheet",
        _number(),
        _text("part", sa.ForeignKey("part.key")),
        _text("sha256", sa.ForeignKey("document.sha256")),
        sa.UniqueConstraint("part", "sha256"),
        sqlite_autoincrement=True,
    )
    op.create_index(None, "part_sheet", ["sha256"])
    op.create_table("typed_part", _key("part", sa.ForeignKey("part.key")), _version(), _text("switch"), _change())
    op.create_table("wanted", _key("spelling"), *map(_text, ("marking", "package", "phrase")), sa.Column("pins", sa.Integer), _change())


def _boards() -> None:
    op.create_table("board", _key("slug"), _version(), *map(_text, ("title", "text", "document")), _change())
    op.create_table(
        "board_part",
        _key("slug"),
        _version(),
        _position(),
        _text("part"),
        sa.ForeignKeyConstraint(["slug", "version"], ["board.slug", "board.version"]),
    )
    op.create_index(None, "board_part", ["part"])


def _results() -> None:
    op.create_table(
        "result",
        _key("id"),
        *map(_text, ("title", "report", "rule_set", "engine_version", "look_at")),
        sa.Column("board", sa.String),
        sa.Column("typed", sa.Boolean, nullable=False),
        _change(),
    )
    op.create_index(None, "result", ["board"])
    of_result = sa.ForeignKey("result.id")
    used = ("kind", "input_id")
    op.create_table("result_input", _key("result_id", of_result), _position(), *map(_text, used), _version(key=False), _text("name"))
    op.create_index(None, "result_input", ["kind", "input_id"])
    op.create_table("result_part", _key("result_id", sa.ForeignKey("result.id")), _position(), _text("part"))
    op.create_index(None, "result_part", ["part"])
    op.create_table(
        "out_of_date",
        _number(),
        _text("result_id", sa.ForeignKey("result.id")),
        *map(_text, used),
        _version(key=False),
        _text("reason"),
        _change(),
        sa.UniqueConstraint("result_id", "kind", "input_id", "version"),
        sqlite_autoincrement=True,
    )


def _number() -> sa.Column[int]:
    """A number that the database gives, never twice."""
    return sa.Column("id", sa.Integer, primary_key=True)


def _key(name: str, *of: sa.ForeignKey) -> sa.Column[str]:
    """A text that identifies a row, alone or with others."""
    return sa.Column(name, sa.String, *of, primary_key=True)


def _text(name: str, *of: sa.ForeignKey) -> sa.Column[str]:
    """A text that is always there."""
    return sa.Column(name, sa.String, *of, nullable=False)


def _version(*, key: bool = True) -> sa.Column[int]:
    """A version, counted from 1."""
    return sa.Column("version", sa.Integer, primary_key=key, nullable=False)


def _position() -> sa.Column[int]:
    """A place in an order."""
    return sa.Column("position", sa.Integer, primary_key=True)


def _change() -> sa.Column[int]:
    """Who, when and why."""
    return sa.Column("change_id", sa.Integer, sa.ForeignKey("change.id"), nullable=False)
