"""Which pages hold tables of ratings or characteristics: those are read in full, graphs, outlines and legal pages are not."""

import re

_MOST_CHOSEN = 100
_GRAPH = re.compile(r"\bfig(?:ure)?s?\.?\s*\d|[图圖図]\s*\d", re.IGNORECASE)
_GRAPHS = 3
"""A page with so many captions of figures is a page of graphs, unless it also heads a table."""
_SURE = 5
"""So many different headings make a table. [headings]"""
_MANY, _SOME = 15, 3
"""Without headings, so many values on so many subjects make one, carried over from the page before."""
_WORDY = 0.02
"""Words in so many characters of text that can be made out, at least. [1]"""
_BARE = 150
"""A page with less text than this has its values, if any, in a picture. [characters]"""
_TABLE_WORDS = tuple(
    re.compile(pattern, re.IGNORECASE)
    for pattern in (
        r"\bmin\b|minimum|最小",
        r"\btyp\b|typical|典型|標準",
        r"\bmax\b|maximum|最大",
        r"\bunits?\b|单位|單位|単位",
        r"\bsymbols?\b|符号|符號|記号",
        r"\bparameters?\b|characteristics?|参数|參數|項目|特性",
        r"conditions?\b|条件|條件",
        r"ratings?\b|额定|額定|定格",
        r"\bvalues?\b|数值|值",
        r"\blimit(s|ing)?\b|极限|極限",
    )
)
"""Words that head the columns of a table of values, one pattern a heading."""
_SUBJECTS = tuple(
    re.compile(pattern, re.IGNORECASE)
    for pattern in (
        r"drain.{0,4}source", r"gate.{0,4}source", r"drain\s*current", r"puls", r"dissipation", r"thermal\s*resist|junction.to", r"breakdown",
        r"threshold", r"on.{0,7}resistance|R\s*DS\s*\(?\s*on", r"leakage|[IB]V?\s*[DG]SS", r"junction", r"continuous|diode", r"capacitance",
        r"gate\s*charge", r"forward\s*voltage", r"avalanche", r"storage\s*temp",
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
        Pages, counted from 1: the first one; every page with the headings of a table, many values, or a footnote to them, unless it is a page of
        graphs; every page whose text cannot be made out; and, where no page has the headings of a table, every page with next to no text, for
        its values may be a picture.
    """
    bare_too = not any(_headings(text) >= _SURE for text in texts)
    numbers = [
        number
        for number, text in enumerate(texts, start=1)
        if number == 1 or _holds_values(text) or (bare_too if len(text) < _BARE else not _legible(text))
    ]
    return tuple(numbers[:_MOST_CHOSEN])


def _holds_values(text: str) -> bool:
    headings = _headings(text)
    if headings >= _SURE or len(_GRAPH.findall(text)) >= _GRAPHS:
        return headings >= _SURE
    if headings == _SURE - 1 or _FOOTNOTE.search(text):
        return True
    return len(_VALUE.findall(text)) >= _MANY and sum(1 for subject in _SUBJECTS if subject.search(text)) >= _SOME


def _headings(text: str) -> int:
    return sum(1 for word in _TABLE_WORDS if word.search(text))


def _legible(text: str) -> bool:
    """Whether a page's text has words at all."""
    return len(_LETTERS.findall(text)) >= _WORDY * len(text)
