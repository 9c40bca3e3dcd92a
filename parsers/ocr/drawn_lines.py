"""Long straight dark lines of a picture: the rules of its tables."""

from collections.abc import Iterator
from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

from parsers.types import Rule

_DARK = 140
"""A pixel is ink when its lightness is below this, of 255. [1]"""
_SHORTEST_PT = 18.0
"""A shorter line may be part of a letter or a symbol. [pt]"""
_THICKEST_PT = 3.0
"""A thicker one is a bar or a picture. [pt]"""
_BRIDGED_PT = 3.0
"""A shorter gap is a fault of the scan. [pt]"""
_SLANT = 0.01
"""How much of its length a line may rise. [1]"""


def drawn_lines(picture: NDArray[np.uint8], scale: float) -> Iterator[Rule]:
    """Find horizontal and vertical lines.

    Args:
        picture: Rows, columns, red green blue.
        scale: Pixels a point. [1/pt]

    Yields:
        Lines, in points from the top left; pieces of one line that was scanned aslant are one.
    """
    ink = (cv2.cvtColor(picture, cv2.COLOR_RGB2GRAY) < _DARK).astype(np.uint8)
    shortest, bridged = max(3, round(_SHORTEST_PT * scale)), max(1, round(_BRIDGED_PT * scale))
    for along, across in (((1, shortest), (3, 1)), ((shortest, 1), (1, 3))):
        # Why widened first: a line that lies a little aslant is no straight run of pixels.
        runs = cv2.morphologyEx(cv2.dilate(ink, np.ones(across, np.uint8)), cv2.MORPH_OPEN, np.ones(along, np.uint8))
        whole = cv2.morphologyEx(runs, cv2.MORPH_CLOSE, np.ones((1, bridged) if along[0] == 1 else (bridged, 1), np.uint8))
        for left, top, width, height, _ in cv2.connectedComponentsWithStats(whole)[2][1:]:
            if min(width, height) <= _THICKEST_PT * scale + _SLANT * max(width, height):
                yield _middle(left / scale, top / scale, width / scale, height / scale)


def _middle(left: Any, top: Any, width: Any, height: Any) -> Rule:  # noqa: ANN401  numpy's own numbers
    if width >= height:
        middle = float(top + height / 2)
        return Rule(x0=float(left), top=middle, x1=float(left + width), bottom=middle)
    middle = float(left + width / 2)
    return Rule(x0=middle, top=float(top), x1=middle, bottom=float(top + height))
