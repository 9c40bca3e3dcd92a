"""Names as sheets spell them, squeezed so that hyphens, spaces and indices no longer matter."""

import re
import unicodedata

_CONDITION = re.compile(
    r"(?:V\s?\(?GSS?\)?|V\s?\(?DSS?\)?|I\s?DS?|I\s?S|I\s?F|T\s?\(?(?:case|amb|mb|sp|vj|[CAJcaj])\)?|VGEN|VDD|R[GL]|L|f|t)\s*(?:=|@|at|≤|<)\s*"
    r"[-\u2212\u2013+±]?\s?[\d.]+\s*(?:m?V|[mµμn]?A|°\s?C|℃|C|Ω|MHz|m?H|s|sec)?",
    re.IGNORECASE,
)
_NOT_NAME = re.compile(r"[^a-z\u3040-\u30ff\u4e00-\u9fff]")
_NOT_SYMBOL = re.compile(r"[^A-Z0-9ΘΔ]")


def squeezed_name(text: str) -> str:
    """A parameter's name in small letters only: ``Drain-to-Source Voltage`` is ``draintosourcevoltage``."""
    return _NOT_NAME.sub("", unicodedata.normalize("NFKC", text).lower())


def squeezed_symbol(text: str) -> str:
    """A letter symbol in capitals and digits only: ``RDS(on)`` is ``RDSON``, ``Rth(j-c)`` is ``RTHJC``."""
    return _NOT_SYMBOL.sub("", unicodedata.normalize("NFKC", re.sub(r"\(cid:\d+\)", "", text)).upper())


def without_conditions(text: str) -> str:
    """A text with its conditions and remarks in brackets taken out: what is left names something or is silent."""
    bare = _CONDITION.sub(" ", re.sub(r"\(cid:\d+\)", "", text))
    return re.sub(r"\(\s*(?:note|fig)[^)]*\)|note\s*\d\w?|steady[ -]*state", " ", bare, flags=re.IGNORECASE)
