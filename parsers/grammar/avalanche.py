"""What an avalanche energy was tested with: ``starting TJ = 25 °C, L = 0.12 mH, RG = 25 Ω, IAS = 40 A, VDD = 50 V``."""

import re

from parsers.grammar.condition import conditions_in
from parsers.grammar.number import MINUS, plain_value, without_marks
from service.facts.reading import Conditions

_NUMBER = r"(?P<digits>\d{1,4}(?:[.,]\d{1,4})?|\.\d{1,4})"
_CURRENT = re.compile(
    rf"(?<![A-Za-z])I\s?(?:AS|AR|AV|A|L|D|peak)\b\s*(?:\(?pk\)?)?\s*(?:=|\uff1d|:|≤)\s*(?P<sign>[{MINUS}])?\s?{_NUMBER}\s*A(?![A-Za-z])",
    re.IGNORECASE,
)
_COIL = re.compile(rf"(?<![A-Za-z])L\s*(?:=|\uff1d|:)\s*{_NUMBER}\s*(?P<unit>mH|[µμu]H|H)(?![A-Za-z])")
_STARTING = re.compile(r"\bstart(?:ing)?\b[^=]{0,20}T\s?\(?v?(?:j|ch)", re.IGNORECASE)
_AT_25 = re.compile(r"T\s?\(?v?(?:j|ch)(?![^=]{0,3}max)[a-z(),\s]{0,12}(?:=|\uff1d|:)\s*(?P<digits>\d{2,3})", re.IGNORECASE)
_DESTROYED = re.compile(r"destruct|destroy", re.IGNORECASE)


def avalanche_test_in(text: str) -> Conditions:
    """The test of an avalanche energy.

    Args:
        text: Words of the row, or of a footnote that tells of such a test.

    Returns:
        Current at the start, supply voltage and starting junction temperature as far as the text prints them; the coil, and that the value is
        no rating, in the note.
    """
    plain = without_marks(text)
    current, coil = _CURRENT.search(plain), _COIL.search(plain)
    notes = ["at device destruction"] if _DESTROYED.search(plain) else []
    notes += [f"L = {coil['digits']} {re.sub('[µμ]', 'u', coil['unit'])}"] if coil else []
    junction = _AT_25.search(plain)
    started = junction and (_STARTING.search(plain) or junction["digits"] == "25")
    return Conditions(
        id=None if current is None else plain_value(current["digits"]) * (-1 if current["sign"] else 1),
        vds=conditions_in(plain).vds,
        tj=float(int(junction["digits"])) if junction and started else None,
        note="; ".join(notes) or None,
    )


def tells_of_test(text: str) -> bool:
    """Whether a footnote tells how an avalanche energy was tested: it names a coil, or the temperature at the start."""
    plain = without_marks(text)
    return bool(_COIL.search(plain) or _STARTING.search(plain))
