"""The root of all rows; constraints get names by rule, so that a migration can find them on every database."""

from sqlalchemy import MetaData
from sqlalchemy.orm import DeclarativeBase


class Row(DeclarativeBase):
    """A database row; rows stay inside datastore."""

    metadata = MetaData(
        naming_convention={
            "ix": "ix_%(table_name)s_%(column_0_N_name)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "ck": "ck_%(table_name)s_%(constraint_name)s",
            "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
            "pk": "pk_%(table_name)s",
        }
    )
