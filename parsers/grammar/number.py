"""Numbers as sheets print them, by a fixed grammar."""

import re
from dataclasses import dataclass, replace

MINUS = "-\u2212\u2013\u2014\u00ad\uff0d\u2010\u2011\u2012"
"""Characters that sheets set for a minus sign."""
_DIGITS = r"(?:[1-9][0-9]{0,2}(?:[,\u00a0 ][0-9]{3})+(?:\.[0-9]+)?(?![0-9])|[0-9]{1,6}(?:\s?[.,]\s?[0-9]{1,6})?|\.[0-9]{1,6})"
_NUMBER = re.compile(rf"(?:(?P<sign>±|\+\s?/\s?[{MINUS}]|\+|[{MINUS}])\s?)?(?P<digits>{_DIGITS})")
_PLACEHOLDER = re.compile(rf"^[{MINUS}_.*/\s…]*$")
_MARK = re.compile(r"\(cid:[0-9]+\)|[\ue000-\uf8ff]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """A number found in text.

    Attributes:
        value: With its sign.
        sign: "+-" for a rating of both signs.
        printed: Its characters.
        start: Where it begins in the text.
        end: Where it ends.
    """

    value: float
    sign: str | None
    printed: str
    start: int
    end: int


def without_marks(text: str) -> str:
    """Text without glyphs that no font map names; blanks of the same length keep the places."""
    return _MARK.sub(lambda found: " " * len(found.group()), text)


def is_placeholder(text: str) -> bool:
    """Whether a cell holds only dashes: no value is given."""
    return bool(_PLACEHOLDER.match(without_marks(text)))


def number_at(text: str, start: int = 0) -> Number | None:
    """The number that begins at a place.

    Args:
        text: Any text.
        start: Where to look.

    Returns:
        The number, or None where no number begins.
    """
    found = _NUMBER.match(text, start)
    return None if found is None else _number(found)


def numbers_in(text: str) -> tuple[Number, ...]:
    """All numbers of a text that stand free of letters before them."""
    return tuple(_number(found) for found in _NUMBER.finditer(text) if not _joined(text, found))


def _joined(text: str, found: re.Match[str]) -> bool:
    """Whether letters, digits of another script, a point or an underscore before a number, or one after it, make it part of something else."""
    before, after = text[: found.start()][-1:], text[found.end() :][:1]
    return before.isalnum() or (before in {".", "_"} and bool(before)) or after == "_"


def _number(found: re.Match[str]) -> Number:
    sign = found["sign"] or ""
    both = sign.startswith("±") or len(sign) > 1
    digits = re.sub(r"\s", "", found["digits"])
    magnitude = plain_value(digits)
    negative = bool(sign) and not both and sign in MINUS
    return Number(
        value=-magnitude if negative else magnitude,
        sign="+-" if both else None,
        printed=found.group().strip(),
        start=found.start(),
        end=found.end(),
    )


def as_fraction(number: Number) -> Number | None:
    """The other way to read a comma before three digits: as the comma of a fraction; None where there is no such comma."""
    return replace(number, value=number.value / 1000) if re.search(r"[1-9][0-9]{0,2},[0-9]{3}$", number.printed) else None


def plain_value(digits: str) -> float:
    """Value of digits with at most one fraction: a comma before three digits parts thousands, any other comma is decimal."""
    if re.fullmatch(r"[0-9]{1,3}(,[0-9]{3})+(\.[0-9]+)?", digits) and not digits.startswith("0"):
        digits = digits.replace(",", "")
    whole, _, fraction = digits.replace(",", ".").partition(".")
    if not fraction:
        return float(int(whole or "0"))
    return float(int((whole or "0") + fraction)) / float(10 ** len(fraction))
