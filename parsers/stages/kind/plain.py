"""Text as the vocabularies expect it: one alphabet, one dash, one space."""

import re
import unicodedata

_DASHES = re.compile(r"[\u00ad\u2010-\u2015\u2212\ufffe]")
_SPACE = re.compile(r"\s+")


def plain(text: str) -> str:
    """Small letters, compatible forms folded, dashes made hyphens, white space made single spaces."""
    return _SPACE.sub(" ", _DASHES.sub("-", unicodedata.normalize("NFKC", text))).lower()
