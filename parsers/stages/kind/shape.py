"""What a document looks like before its words are understood: sentences, table headings, designators."""

import re
from dataclasses import dataclass

_HEADINGS = (
    r"absolute[- ]+max|maximum ratings|limiting values|absolute ratings|极限参数|最大(额定|定格)",
    r"(electrical|static|dynamic|thermal|performance) (characteristics|specification)|电气?(特性|参数)",
    r"\bmin\.?[ ./]+(typ|nom)\.?[ /]+max|\btyp\.? max|\bmin\.? max|最小值?.{0,6}典型值?.{0,6}最大",
    r"order(ing)? (information|code|guide)|part numbering|how to order|订(购|货)信息",
)
_LITTLE_WORD = re.compile(r"\b(the|a|an|of|to|is|are|and|in|for|with)\b")
_DESIGNATOR = re.compile(r"\b[rcdluqj]\d{1,3}\b")
_END = re.compile(r"(?<=[a-z)\]])\. |。")
_FEWEST_WORDS = 8
MOST_SHEETS = 10  # why: a circuit on more sheets comes with a text around it


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """Measures of a plain text.

    Attributes:
        prose: Share of the text that stands in whole sentences, 0 to 1.
        headings: How many of four kinds of datasheet heading it has.
        designators: How many different designators of a circuit drawing it names.
        pages: How many pages it has.
        blank: Share of pages that hold next to no text, 0 to 1.
    """

    prose: float
    headings: int
    designators: int
    pages: int
    blank: float

    @property
    def is_prose(self) -> bool:
        """Whether somebody tells something, rather than lists what a part can do."""
        return self.prose > 0.18 and self.headings < 2 and not self.is_pictured

    @property
    def is_pictured(self) -> bool:
        """Whether most pages are pictures, so that what is said may be no more than a caution at the end."""
        return self.blank > 0.5

    @property
    def is_drawn(self) -> bool:
        """Whether it is words on a drawing."""
        return self.prose < 0.05 and not self.headings and self.designators >= 5 and self.pages <= MOST_SHEETS


def shape_of(told: list[str], *, pages: int) -> Shape:
    """Measure the plain text of the first of so many pages."""
    text = " ".join(told)
    spoken = sum(len(one) for one in _END.split(text) if _is_sentence(one))
    return Shape(
        prose=spoken / max(len(text), 1),
        headings=sum(bool(re.search(one, text)) for one in _HEADINGS),
        designators=len(set(_DESIGNATOR.findall(text))),
        pages=pages,
        blank=sum(len(page) < 200 for page in told) / max(len(told), 1),
    )


def _is_sentence(text: str) -> bool:
    """A quarter of a sentence's words are little ones; Chinese has none, and is taken by its length."""
    words = text.split()
    if re.search(r"[\u4e00-\u9fff]{12}", text):
        return True
    return len(words) >= _FEWEST_WORDS and len(_LITTLE_WORD.findall(text)) > len(words) / 4
