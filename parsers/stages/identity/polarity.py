"""Which switches are in the case: N, P, or two of them."""

import re
from collections.abc import Sequence

from parsers.stages.identity.saying import Saying

_DASH = r"[-\u00ad\u2010-\u2015\u2212\ufffe\s]*"
_N = re.compile(rf"\bn{_DASH}ch(annel)?\b|n{_DASH}沟道|n{_DASH}チャネル|\bn{_DASH}mos(fet)?\b", re.IGNORECASE)
_P = re.compile(rf"\bp{_DASH}ch(annel)?\b|p{_DASH}沟道|p{_DASH}チャネル|\bp{_DASH}mos(fet)?\b", re.IGNORECASE)
_BOTH = re.compile(
    rf"\bn{_DASH}(?:ch(?:annel)?)?\s*(?:&|and|/|\+|,)\s*p{_DASH}ch|\bp{_DASH}(?:ch(?:annel)?)?\s*(?:&|and|/|\+|,)\s*n{_DASH}ch"
    r"|complementary\s+(?:dual\s+)?(?:power\s+|enhancement|mos)",
    re.IGNORECASE,
)
_TWO = re.compile(
    rf"\bdual[ ,-]+(?:(?:common|asymmetric|matched|power|trench|logic|enhancement)\b|[np]{_DASH}ch|(?:mos)?fets?\b|transistors?\b)"
    rf"|\bdual\b[^.\n]{{0,20}}\b[np]{_DASH}ch|configuration\s+dual|\b(?:two|2)\s+(?:[np]{_DASH}channel|mosfets?\b)|common[- ]drain"
    r"|\b(?:per|each|both) (?:transistors?|channels?|mosfets?|fets?|dies?)\b|双(?:n|p|路|通道|沟道)|\bTr\.?1\b.{0,400}\bTr\.?2\b",
    re.IGNORECASE | re.DOTALL,
)
_PINS = re.compile(r"\b[GS][12]\b")
_RATED = re.compile(
    r"(?:drain[-\s]*(?:to[-\s]*)?source[-\s]*volt(?:age)?|\bv\s*\(?(?:br)?\)?\s*ds[sx]?(?![a-z]))"
    r"(?:(?!gs|gate|\bid\b|\n)[^-–—−\d]){0,40}(?P<sign>[-–—−]\s?)?\d{2,4}(?![\d.]|\s*°)",
    re.IGNORECASE,
)
_TITLE = 0.35  # share of the page


def polarity_of(sayings: Sequence[Saying], texts: Sequence[str]) -> str | None:
    """N, P, N+N, P+P or N+P by the first pages' lines, or by the sign of what all pages print; None where nothing tells."""
    if not sayings:
        return None
    title = "\n".join(line.text for line in sayings if line.top < _TITLE and line.page == sayings[0].page)
    body = "\n".join(line.text for line in sayings)
    if _BOTH.search(title) or (_told_by(title, _N) and _told_by(title, _P) and _is_double(body)):
        return "N+P"
    one = _single(title) or _single(body) or _by_sign("\n".join([body, *texts]))
    return f"{one}+{one}" if one and _is_double(body) else one


def _told_by(text: str, pattern: re.Pattern[str]) -> int:
    return len(pattern.findall(text))


def _single(text: str) -> str | None:
    """The channel that a text names more often."""
    n, p = _told_by(text, _N), _told_by(text, _P)
    return None if n == p else "N" if n > p else "P"


def _by_sign(text: str) -> str | None:
    """The channel by the sign of the rated voltage; None where no voltage stands behind its name."""
    signs = [bool(rated["sign"]) for rated in _RATED.finditer(text)]
    return None if not signs else "P" if 2 * sum(signs) > len(signs) else "N"


def _is_double(text: str) -> bool:
    """Whether a text speaks of two switches: in words, or by the numbers of their pins."""
    return bool(_TWO.search(text)) or {"G1", "G2", "S1", "S2"} <= set(_PINS.findall(text))
