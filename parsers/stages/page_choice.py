"""Which pages hold tables of ratings or characteristics: those are read in full, graphs, outlines and legal pages are not."""

import re

_MOST_CHOSEN = 100
_BARE = 150
"""A page with less text than this has its values, if any, in a picture. [characters]"""
_TABLE_WORDS = tuple(
    re.compile(pattern, re.IGNORECASE)
    for pattern in (
        r"\bmin\b|minimum|最小", r"\btyp\b|typical|典型|標準", r"\bmax\b|maximum|最大", r"\bunits?\b|单位|單位|単位", r"\bsymbols?\b|符号|符號|記号",
        r"\bparameters?\b|characteristics?|参数|參數|項目|特性", r"conditions?\b|条件|條件", r"ratings?\b|额定|額定|定格", r"\bvalues?\b|数值|值", r"\blimit(s|ing)?\b|极限|極限",
    )
)  # fmt: skip
"""Words that head the columns of a table of values, one pattern a heading."""
_SUBJECTS = tuple(
    re.compile(pattern, re.IGNORECASE)
    for pattern in (
        r"drain.{0,4}source", r"gate.{0,4}source", r"drain\s*current", r"puls", r"dissipation", r"thermal\s*resist|junction.to", r"breakdown",
        r"threshold", r"on.{0,7}resistance|R\s*DS\s*\(?\s*on", r"leakage|[IB]V?\s*[DG]SS", r"junction", r"continuous|diode", r"capacitance", r"gate\s*charge", r"forward\s*voltage",
        r"avalanche", r"storage\s*temp",
    )
)  # fmt: skip
"""What the rows of such a table speak of."""
_VALUE = re.compile(r"(?<![\w.])\d+(?:\.\d+)?\s*(?:V|A|mA|W|mW|°C|℃|[KC]/W|m?Ω|nC|pF|ns|mJ|nA|[µμu]A)\b")
_FOOTNOTE = re.compile(r"repetitive rating|starting\s+T|pulse width limited|(?:C|℃|K)\s*/\s*W", re.IGNORECASE)
_LETTERS = re.compile(r"[A-Za-z]{3,}|[\u3040-\u9fff]{2,}")


def chosen_pages(texts: tuple[str, ...]) -> tuple[int, ...]:
    """Choose the pages worth reading in full.

    Args:
        texts: Plain text of every page.

    Returns:
        Pages, counted from 1: the first one, every page with the headings of a table, many values, or a footnote to them, and every page whose
        text cannot be made out or is so short that its values may be a picture.
    """
    numbers = [number for number, text in enumerate(texts, start=1) if number == 1 or _holds_values(text) or not _legible(text)]
    return tuple(numbers[:_MOST_CHOSEN])


def _holds_values(text: str) -> bool:
    headings = sum(1 for word in _TABLE_WORDS if word.search(text))
    if headings >= 4 or _FOOTNOTE.search(text):
        return True
    return len(_VALUE.findall(text)) >= 15 and sum(1 for subject in _SUBJECTS if subject.search(text)) >= 3


def _legible(text: str) -> bool:
    """Whether a page's text is long enough for a page of values, and has words at all."""
    return len(text) >= _BARE and len(_LETTERS.findall(text)) >= 0.02 * len(text)
