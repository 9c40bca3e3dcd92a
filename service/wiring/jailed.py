"""Documents from outside, opened in a child that can do nothing else."""

from service.facts.reading import Box, Sheet


class JailedReader:
    """Reads a datasheet in a child that can do nothing else."""

    @property
    def version(self) -> str:
        """Version of the reader."""
        from parsers.version import READER_VERSION

        return READER_VERSION

    def read(self, name: str, data: bytes) -> Sheet:
        """Read one file; what cannot be read gives a refused sheet."""
        from parsers.process import read_document

        return read_document(name, data)


# Why this large: no page is larger (ISO 32000-1, annex C: 14,400 units), and a piece is cut off at the page's edge. [pt]
WHOLE_PAGE = (0.0, 0.0, 14_400.0, 14_400.0)


class JailedCropper:
    """Draws a piece of a page in a child that can do nothing else."""

    def crop(self, data: bytes, *, page: int, box: Box | None, mark: Box | None = None) -> bytes:
        """Draw the box, or the whole page, as PNG."""
        from parsers.process import render_crop

        return render_crop(data, page, box or WHOLE_PAGE, mark)
