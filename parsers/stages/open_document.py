"""First stage: a PDF's bytes become a document whose pages the fast reader has all read, and the pages worth more are chosen."""

import contextlib
import hashlib
from collections.abc import Iterator

import pypdfium2 as pdfium

from parsers.errors import DamagedError, EncryptedError, NotAPdfError, TooLargeError
from parsers.stages.page_choice import chosen_pages
from parsers.stages.text_layer import text_layer_of
from parsers.types import Document

MOST_BYTES = 32 * 2**20
MOST_PAGES = 2_000


def open_document(data: bytes) -> Document:
    """Open a PDF, read the plain text of every page, choose the pages worth reading in full and judge what the text is worth.

    Args:
        data: The file's bytes.

    Returns:
        The document; it keeps the bytes.

    Raises:
        NotAPdfError: The file does not begin with ``%PDF-``.
        EncryptedError: It needs a password.
        DamagedError: It cannot be opened, or has no pages.
        TooLargeError: It has too many bytes or pages.
    """
    with opened(data) as pdf:
        texts = tuple(_text(pdf, index) for index in range(len(pdf)))
    chosen = chosen_pages(texts)
    return Document(
        data=data,
        sha256=hashlib.sha256(data).hexdigest(),
        pages=len(texts),
        page_text=texts,
        chosen=chosen,
        text_layer=text_layer_of(data, texts, chosen),
    )


@contextlib.contextmanager
def opened(data: bytes) -> Iterator[pdfium.PdfDocument]:
    """Hold a PDF open with the fast reader, its errors turned into ours.

    Args:
        data: The file's bytes.

    Yields:
        The open document.

    Raises:
        NotAPdfError: The file does not begin with ``%PDF-``.
        EncryptedError: It needs a password.
        DamagedError: It cannot be opened, or has no pages.
        TooLargeError: It has too many bytes or pages.
    """
    if not data.startswith(b"%PDF-"):
        raise NotAPdfError("The file does not begin with %PDF-; choose the PDF as its maker publishes it.")
    if len(data) > MOST_BYTES:
        raise TooLargeError(f"The file has {len(data) / 2**20:.0f} MiB and {MOST_BYTES // 2**20} MiB is the most that is read.")
    try:
        pdf = pdfium.PdfDocument(data)
    except pdfium.PdfiumError as error:
        if any(sign in str(error).lower() for sign in ("password", "security scheme")):
            raise EncryptedError("The file asks for a password, or for a program with its own key; save a copy without it and read that.") from error
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
            # Why all of it by range: asked by area, the reader finds nothing on a page that /Rotate turns to landscape.
            return str(text.get_text_range())
        finally:
            text.close()
    except pdfium.PdfiumError:
        return ""
    finally:
        page.close()
