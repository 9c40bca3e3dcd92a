"""Who makes the part, as printed: a name of the trade, a company by its form, or the address of its site."""

import re
from collections import Counter
from collections.abc import Sequence

# General knowledge of the trade; a maker who is not on the list is found by its company's form or its site.
_KNOWN = (
    "Alpha & Omega Semiconductor", "Central Semiconductor", "Chino-Excel", "Diodes Incorporated", "Diotec", "Fairchild Semiconductor", "Fairchild",
    "Fuji Electric", "GeneSiC", "Good-Ark", "Hitachi", "HUAYI", "Infineon Technologies", "Infineon", "International Rectifier", "Intersil", "IXYS",
    "JSMICRO", "Littelfuse", "Magnachip", "Micro Commercial Components", "Microchip", "Microsemi", "Mitsubishi Electric", "Motorola", "Nexperia",
    "NIKO-SEM", "NXP Semiconductors", "ON Semiconductor", "onsemi", "Panasonic", "Philips Semiconductors", "Renesas", "ROHM", "Sanken", "Sanyo",
    "Shindengen", "Siemens", "Siliconix", "Sinopower", "STMicroelectronics", "Supertex", "Taiwan Semiconductor", "TECH PUBLIC", "Texas Instruments",
    "TOSHIBA", "UMW", "Unisonic", "VBsemi", "Vishay Siliconix", "Vishay", "Wolfspeed", "Cree", "Yangjie",
)  # fmt: skip
_NAMED = re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, sorted(_KNOWN, key=len, reverse=True)))})(?![\w-])")
_SITES = {
    "aosmd": "Alpha & Omega Semiconductor",
    "irf": "International Rectifier",
    "nxp": "NXP Semiconductors",
    "st": "STMicroelectronics",
    "ti": "Texas Instruments",
}
_WORD = r"[A-Z][A-Za-z&'-]*\.?"
_SUFFIX = r"(?:Co\.?, ?Ltd\b\.?|CO\.?, ?LTD\b\.?|Inc\b\.?|Incorporated|Corporation|Corp\b\.?|GmbH|Limited|Ltd\b\.?|LLC)"
_TRADE = r"(?:Semiconductors?|SEMICONDUCTORS?|Microelectronics|MICROELECTRONICS|Microdevices|Power)"
_FORM = re.compile(
    rf"(?<![\w-])(?:(?:{_WORD}[ ,]+){{1,5}}{_SUFFIX}|(?:{_WORD} ){{1,3}}{_TRADE} (?:AS|AG|AB|SpA)\b"
    rf"|(?:{_WORD} (?:& )?){{1,2}}(?:Semiconductors?|SEMICONDUCTORS?)\b)"
)
_SITE = re.compile(r"(?:www\.|https?://(?:www\.)?)([\w-]+)\.(?:com|net|cn|example|co|de|eu|jp|tw)\b", re.IGNORECASE)
_COVER = re.compile(r"is now part of|dear customer", re.IGNORECASE)


def maker_of(page_text: Sequence[str]) -> str | None:
    """The maker; None where no name, company or site is printed."""
    pages = [" ".join(text.split()) for text in page_text if not _COVER.search(text[:1200])]
    companies = [[match.strip(" ,") for match in _FORM.findall(text)] for text in pages]
    sites = [[name.lower() for name in _SITE.findall(text)] for text in pages]
    known = _most_pages([_known_in(text) + [_SITES[name] for name in at if name in _SITES] for text, at in zip(pages, sites, strict=True)])
    if known:
        return _most_pages([[name for name in names if known.lower() in name.lower()] for names in companies]) or known
    return _most_pages(companies) or _most_pages(sites)


def _most_pages(named: list[list[str]]) -> str | None:
    """The name that stands on most pages, the longer one among equals."""
    count = Counter(name for names in named for name in set(names))
    return max(count, key=lambda name: (count[name], len(name)), default=None)


def _known_in(text: str) -> list[str]:
    """Known makers that a page names, the longer name of the same maker alone."""
    found = set(_NAMED.findall(text))
    return [name for name in found if not any(name != other and name in other for other in found)]
