"""What the lower library raises over a file that contradicts itself."""

from pdfminer.pdfexceptions import PDFException
from pdfminer.psexceptions import PSException

UNREADABLE = (
    PDFException, PSException, KeyError, TypeError, ValueError, AttributeError, IndexError, AssertionError, RecursionError, OverflowError,
)  # fmt: skip
"""It has errors of its own, and lets others through."""
