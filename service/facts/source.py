"""Where a number was printed: the file, the page, the box and the words beside it."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A place on a page that a person can look at.

    Attributes:
        sha256: Identity of the file, 64 hexadecimal digits.
        page: Page counted from 1.
        bbox: Box of the number: x0, top, x1, bottom in points from the top left of the page as shown.
        quote: The words of the row.
        reading: Identity of the reading that was taken there, where there is one.
    """

    sha256: str
    page: int
    bbox: tuple[float, float, float, float]
    quote: str
    reading: str | None = None
