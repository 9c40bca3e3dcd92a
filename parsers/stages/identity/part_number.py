"""What looks like a part number, and what only seems to."""

import re
from functools import lru_cache

_SHAPE = re.compile(r"[A-Z0-9][A-Za-z0-9]*(?:[-–—/+][A-Za-z0-9]+){0,4}")
_UNITS = r"[pnµumkM]?(?:V|A|W|F|C|J|S|s|H|Hz|Ω|[Oo]hm|OHM)|m[AW]|ppm|dB|PCS|pcs|pin|PIN|inch|in|oz|K|k|°C|℃|D|L|X|x|th|nd|rd|st|mils?"
_CASES = (
    r"TO|SOT|T?S?SOP|SOIC|SO|P?DFN|[UW]?DFN|QFN|MSOP|SC|DO|D2?-?PAK|I2?-?PAK|SM[ABC]|MLP|LFPAK|TOLL|[VW]?SON|WLCSP|DIP|PG|HSOF|LL|MO|CASE"
    r"|JEDEC|MICRO|SUPERSOT|POWERDI|POWERPAK|POWER|PPAK|SUPER|ISOTOP"
)
_PAPERS = (
    r"PD-?9|DS\d{4,}|SL[A-Z]{2}\d|S-?\d\d-?\d{3,4}|JESD|JEP|IEC|IPC|UL-?\d|MIL-|IATF|J-?STD|AN-?\d|TB\d|AEC|ISO|EIA|EN\d|ROHS|\d{4}/\d+|E\d{5,}|REV|VER"
    r"|V\d(?:\.\d)?$|DSFP|MSL|QS-?9|TS-?16|R\d\d[A-Z]{2}\d|FR-?4|HTTP|WWW|FIG|CRR-"
)
_SYMBOLS = (
    r"(?:I|V|R|C|Q|T|P|E|D|G|S|BV|L|N|NO|PIN|TR|CH|X|K|M|Y|A|B|F|Z|W|H)-?\d{1,3}[A-Z]?"
    r"|(?:VDS|VGS|ID|RDS|VDD|RTH|TJ|TC|TA|IDSS|IS|IF|IR|VSD|QG|DIM|MIN|MAX|TYP|PAGE|TABLE|NOTE)[-_=@]?\d{1,3}|(?:19|20)\d\d"
)
_MONTHS = r"(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)"
_NO_PART = (
    # Why not four digits before an A: no sheet speaks of thousands of amperes, but parts are called so.
    re.compile(rf"(?!\d{{4,}}[ASCDLK]$)[-+±<>]?\d+(?:[.,]\d+)?[-/]?(?:{_UNITS})(?:/\w+)?$"),
    re.compile(rf"P?-?(?:{_CASES})[-_ ]?\d", re.IGNORECASE),
    re.compile(_PAPERS, re.IGNORECASE),
    re.compile(rf"(?:{_SYMBOLS})$", re.IGNORECASE),
    re.compile(rf"\d{{1,4}}[-/.]\d{{1,2}}[-/.]\d{{1,4}}$|\d{{1,2}}-?{_MONTHS}|{_MONTHS}\w*[-.,]?\d", re.IGNORECASE),
    re.compile(r"\d+(?:\.\d+)?[xX*×]\d+(?:\.\d+)?(?:[xX*×]\d+(?:\.\d+)?)?\w*$"),
)
_AROUND = ",;:()[]{}<>*®™“”\"'•·|="


@lru_cache(maxsize=4096)
def candidates_in(word: str) -> tuple[str, ...]:
    """The part numbers that a word may hold: ``AB12N04,`` one, ``AB12N04/CD12N04`` two."""
    if not _may_be(word):
        return ()
    bare = word.strip(_AROUND).replace("®", "").replace("™", "")
    parts = [piece.strip("-–—.()") for piece in re.split(r"[/,;]", bare) if piece]
    return tuple(part for part in (parts if all(map(is_part_number, parts)) else parts[:1]) if is_part_number(part))


def is_part_number(word: str) -> bool:
    """Whether a word has the shape of a part number, capital letters and at least two digits, and is nothing else that has it."""
    if not 4 <= len(word) <= 24 or not _may_be(word) or not _SHAPE.fullmatch(word):
        return False
    telling = sum(letter.isdigit() or letter.isupper() for letter in word)
    return telling >= 0.6 * len(word) and not any(one.match(word) for one in _NO_PART)


def _may_be(word: str) -> bool:
    """Whether it has a capital letter and two digits."""
    return any(map(str.isupper, word)) and sum(map(str.isdigit, word)) >= 2


def plain_number(word: str) -> str:
    """A part number without what makers add and drop at will: dashes, and the ending that says lead-free."""
    return re.sub(r"(TRPBF|PBF)$", "", re.sub(r"[^A-Z0-9]", "", word.upper()))
