"""Alembic's door: runs the steps on the connection that datastore.migrate hands in."""

from alembic import context

from datastore.models import METADATA

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=METADATA,
    # Why: SQLite cannot alter a table in place; in batch mode a step copies the table, on other databases it alters it.
    render_as_batch=True,
    # Why: the transaction belongs to the caller, from the look at the revision to the last statement.
    transactional_ddl=False,
)
context.run_migrations()
