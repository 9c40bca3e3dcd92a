"""Reading documents from outside in children that can do nothing but read: ``start`` first thing, then ask."""

from parsers.process.crops import render_crop
from parsers.process.fork_server import ForkServerError
from parsers.process.many_documents import read_documents
from parsers.process.one_document import read_document
from parsers.process.starting import start

__all__ = ["ForkServerError", "read_document", "read_documents", "render_crop", "start"]
