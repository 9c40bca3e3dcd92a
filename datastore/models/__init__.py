"""The rows, one subject a file; importing this package makes the whole schema known."""

from datastore.models import board, change, document, part, reading, result
from datastore.models.row import Row

METADATA = Row.metadata

__all__ = ["METADATA", "board", "change", "document", "part", "reading", "result"]
