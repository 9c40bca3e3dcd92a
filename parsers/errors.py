"""Errors of reading; the lower libraries' errors end here."""


class DatasheetError(Exception):
    """A document cannot be read.

    Args:
        detail: What, where, how much and what to do.
        seems_to_be: What the document seems to be, from the closed list of the sheet schema, if that can be told.
    """

    kind = "damaged"

    def __init__(self, detail: str, *, seems_to_be: str | None = None) -> None:
        super().__init__(detail)
        self.detail, self.seems_to_be = detail, seems_to_be


class NotAPdfError(DatasheetError):
    """The file does not begin as a PDF does."""

    kind = "not_a_pdf"


class DamagedError(DatasheetError):
    """The file begins as a PDF but cannot be opened."""

    kind = "damaged"


class EncryptedError(DatasheetError):
    """The file needs a password."""

    kind = "encrypted"


class TooLargeError(DatasheetError):
    """The file, its pages or what they unpack to pass a limit."""

    kind = "too_large"


class TooSlowError(DatasheetError):
    """Reading passed its time limit."""

    kind = "too_slow"


class NoTextError(DatasheetError):
    """The pages are pictures, and no reader for pictures is installed."""

    kind = "no_text"


class NotADatasheetError(DatasheetError):
    """The document is no datasheet."""

    kind = "not_a_datasheet"


class OtherComponentError(DatasheetError):
    """The document is a datasheet of another kind of component."""

    kind = "other_component"
