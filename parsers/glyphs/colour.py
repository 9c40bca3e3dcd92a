"""How light a colour of the content stream is, so that text without contrast is noticed."""

from typing import Any

from pdfminer.pdftypes import resolve1
from pdfminer.psparser import PSLiteral

_RED, _GREEN, _BLUE = 0.299, 0.587, 0.114
"""Shares of the three in lightness: ISO 32000-1:2008, 10.3.3 (conversion from DeviceRGB to DeviceGray)."""


def lightness(operands: list[Any], family: str) -> float | None:
    """How light a colour is.

    Args:
        operands: Its components.
        family: Its colour space: gray, rgb, cmyk, tint or unknown.

    Returns:
        0 for black to 1 for white, None where it cannot be told, as for patterns. [1]
    """
    parts = [part for part in operands if isinstance(part, float)]
    match family, len(parts):
        case "tint", 1:
            return 1 - _unit(parts[0])
        case (("gray" | "other"), 1):
            return _unit(parts[0])
        case (("rgb" | "other"), 3):
            return _RED * _unit(parts[0]) + _GREEN * _unit(parts[1]) + _BLUE * _unit(parts[2])
        case (("cmyk" | "other"), 4):
            inked = _RED * _unit(parts[0]) + _GREEN * _unit(parts[1]) + _BLUE * _unit(parts[2]) + _unit(parts[3])
            return 1 - min(1.0, inked)
    return None


def colour_family(name: str, spaces: dict[str, Any]) -> str:
    """The family of a colour space.

    Args:
        name: Its name in the content stream.
        spaces: The colour spaces of the page's resources.

    Returns:
        gray, rgb, cmyk, tint (one or more inks), other (by its number of components) or unknown.
    """
    space = resolve1(spaces.get(name)) if name in spaces else name
    head = resolve1(space[0]) if isinstance(space, list) and space else space
    kind = str(head.name) if isinstance(head, PSLiteral) else str(head)
    return {
        "DeviceGray": "gray", "CalGray": "gray", "G": "gray", "DeviceRGB": "rgb", "CalRGB": "rgb", "RGB": "rgb", "DeviceCMYK": "cmyk", "CMYK": "cmyk",
        "Separation": "tint", "ICCBased": "other",
    }.get(kind, "unknown")  # fmt: skip


def _unit(part: float) -> float:
    return min(1.0, max(0.0, part))
