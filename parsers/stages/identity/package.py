"""The case, as printed."""

import re
from collections import Counter
from collections.abc import Sequence

_DASHES = re.compile(r"[\u00ad\u2010-\u2015\u2212\ufffe]")
_NAMES = (
    r"(?:PG-)?TO[- ]?\d{2,3}(?:-?[A-Z0-9]{1,3})?(?:-\d{1,2}L?)?",
    r"TO-?LL(?:-8)?|TOLL-?8?L?|HSOF-8",
    r"SOT[- ]?\d{2,3}(?:-\d[A-Z]?)?[A-Z]?|SC[- ]?\d{2}[A-Z]?|SuperSOT™?-\d|Micro ?[368]|E-Line|T[SU]MT\d",
    r"SOIC[- ]?\d{1,2}|T?S?SOP[- ]?\d{1,2}L?|SO[- ]?8",
    r"[PUVW]?DFN ?\d[\d.]*[xX*×] ?\d[\d.]*(?:[- ]?\d?L|[- ]EP)?|DFN[- ]?\d{1,2}L?|[VW]?SON[- ]?\d|MLP ?\d[\d.]*[xX]\d[\d.]*",
    r"D2-?P[Aa][Kk]|D²P[Aa][Kk]|DDPAK|D-?P[Aa][Kk]|I2?-?P[Aa][Kk]|LFPAK\d*",
    r"Power ?PAK®? ?(?:SO-8|1212-8|SC-70)|PowerDI\d{4}-8",
)
_NAME = re.compile(rf"(?<![A-Za-z0-9])(?:{'|'.join(_NAMES)})(?![A-Za-z0-9])")


def package_of(texts: Sequence[str]) -> str | None:
    """The name of a case that stands most often on the first page that has one, the first among equals; None where none is printed."""
    for text in texts:
        names = Counter(found.group() for found in _NAME.finditer(_DASHES.sub("-", " ".join(text.split()))))
        if names:
            return names.most_common(1)[0][0].strip()
    return None
