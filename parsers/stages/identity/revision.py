"""Which edition of the sheet it is, as printed."""

import re
from collections import Counter
from collections.abc import Sequence

_MONTH = r"(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]*\.?"
_DATE = (
    rf"(?:\d{{1,2}}[ -])?{_MONTH}[ ,.-]*(?:\d{{1,2}}, ?)?\d{{2,4}}"
    r"|\d{4}[-/.]\d{1,2}(?:[-/.]\d{1,2})?|\d{1,2}/\d{1,2}/\d{2,4}|(?<!\d)\d{2}[-/](?:19|20)\d{2}"
)
_BETWEEN = r"[ ,:–—-]{1,4}"
_NUMBER = r"[ .:_]{0,3}[A-Z]?\d{0,2}(?:\.\d+){0,2}[A-Z]?"
_EDITIONS = (
    re.compile(
        rf"(?:(?:{_DATE}){_BETWEEN})?(?:S-?\d\d-?\d{{4}}[ –—-]{{0,3}})?"
        rf"\b(?:Rev|REV|rev)(?:ision|ISION)?\b{_NUMBER}(?:{_BETWEEN}(?:{_DATE}))?"
    ),
    re.compile(r"(?<![\w.])[Vv]\d\.\d+\b"),
    re.compile(_DATE),
)


def revision_of(page_text: Sequence[str]) -> str | None:
    """What stands on most pages and names an edition: a revision, else a version, else a date; None where nothing does."""
    for pattern in _EDITIONS:
        count = Counter(" ".join(found.split()).strip(" ,:") for text in page_text for found in {match.group() for match in pattern.finditer(text)})
        usable = {name: times for name, times in count.items() if any(map(str.isdigit, name)) or len(name.split()) > 1}
        if usable:
            return max(usable, key=lambda name: (usable[name], len(name)))
    return None
