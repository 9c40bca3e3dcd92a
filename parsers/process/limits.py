"""What one child may use, and what a document may be, before reading is given up.

The figures are several times what the hungriest of 80 ordinary datasheets needed: 219 MB and half of the processor time.
"""

import math
from dataclasses import dataclass

from parsers.ocr.effort import MOST_PAGES

MEBIBYTE = 1 << 20

MOST_DOCUMENT_BYTES = 32 * MEBIBYTE
"""A larger file is not read; datasheets are a few megabytes at most. [byte]"""
MOST_ANSWER_BYTES = 8 * MEBIBYTE
"""A longer answer of a child is not taken. [byte]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """What one child may use.

    Attributes:
        memory_bytes: Address space. [byte]
        processor_s: Processor time. [s]
        open_files: Files open at the same time. [1]
    """

    memory_bytes: int
    processor_s: int
    open_files: int = 64

    @property
    def wall_s(self) -> int:
        """Time by the clock [s]: a busy machine is allowed for, a child that sleeps is not waited for."""
        return 2 * self.processor_s + 30


COUNTING = Limits(memory_bytes=512 * MEBIBYTE, processor_s=10)
"""For counting the pages, before anything else is known of a document."""
CROPPING = Limits(memory_bytes=1024 * MEBIBYTE, processor_s=20)
"""For drawing a piece of one page."""


def reading_limits(pages: int) -> Limits:
    """For reading a document that has text.

    Args:
        pages: How many pages it has. [1]

    Returns:
        1 GiB, and processor time that grows with the pages up to 90 s.
    """
    return Limits(memory_bytes=1024 * MEBIBYTE, processor_s=math.ceil(min(90, 15 + 1.5 * pages)))


def picture_limits(pages: int) -> Limits:
    """For reading a document whose pages are pictures: two readings of each page.

    Args:
        pages: How many pages it has. [1]

    Returns:
        2 GiB, and 20 s of processor time a page and reading.
    """
    return Limits(memory_bytes=2048 * MEBIBYTE, processor_s=15 + 2 * 20 * min(pages, MOST_PAGES), open_files=128)
