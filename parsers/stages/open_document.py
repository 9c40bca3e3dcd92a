"""First stage: a PDF's bytes become a document whose pages the fast reader has all read."""

import contextlib
import hashlib
from collections.abc import Iterator

import pypdfium2 as pdfium

from parsers.errors import DamagedError, EncryptedError, NotAPdfError, TooLargeError
from parsers.types import Document, TextLayer

MOST_PAGES = 2_000


def open_document(data: bytes) -> Document:
    """Open a PDF, read the plain text of every page and choose the pages worth reading in full.

    Args:
        data: The file's bytes.

    Returns:
        The document; it keeps the bytes and holds no handle open.

    Raises:
        NotAPdfError: The file does not begin with ``%PDF-``.
        EncryptedError: It needs a password.
        DamagedError: It cannot be opened, or has no pages.
        TooLargeError: It has too many pages.
    """
    with opened(data) as pdf:
        texts = tuple(_text(pdf, index) for index in range(len(pdf)))
    return Document(
        data=data,
        sha256=hashlib.sha256(data).hexdigest(),
        pages=len(texts),
        page_text=texts,
        chosen=tuple(range(1, len(texts) + 1)),
        text_layer=TextLayer.GOOD if sum(map(len, texts)) > 30 else TextLayer.NONE,
    )


@contextlib.contextmanager
def opened(data: bytes) -> Iterator[pdfium.PdfDocument]:
    """Hold a PDF open with the fast reader, its errors turned into ours."""
    if not data.startswith(b"%PDF-"):
        raise NotAPdfError("The file does not begin with %PDF-; choose the PDF as its maker publishes it.")
    try:
        pdf = pdfium.PdfDocument(data)
    except pdfium.PdfiumError as error:
        if "password" in str(error).lower():
            raise EncryptedError("The file asks for a password; save a copy without one and read that.") from error
        raise DamagedError(f"The file cannot be opened ({error}); fetch it again from its maker.") from error
    try:
        if not len(pdf):
            raise DamagedError("The file has no pages; fetch it again from its maker.")
        if len(pdf) > MOST_PAGES:
            raise TooLargeError(f"The file has {len(pdf)} pages and {MOST_PAGES} is the most that is read; cut out the datasheet's own pages.")
        yield pdf
    finally:
        pdf.close()


def _text(pdf: pdfium.PdfDocument, index: int) -> str:
    """Plain text of one page; a page that cannot be loaded has none."""
    try:
        page = pdf[index]
    except pdfium.PdfiumError:
        return ""
    try:
        text = page.get_textpage()
        try:
            return str(text.get_text_range())
        finally:
            text.close()
    except pdfium.PdfiumError:
        return ""
    finally:
        page.close()
