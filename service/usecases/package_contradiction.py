"""Whether the package and pins seen on the board can be those that the sheet prints."""

import re
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Outline:
    """A package outline as the trade names it.

    Attributes:
        name: What we call it.
        spelled: What it is called, as a pattern over letters and digits in capitals.
        pins: Pin counts that a person may arrive at, tab counted or not, joined pins counted as one or not.
    """

    name: str
    spelled: str
    pins: frozenset[int]


OUTLINES = (
    # Names, everyday names and ways of counting: common practice, no source. The first that fits counts, so the particular stands before the
    # general.
    Outline(name="TO-263-7", spelled=r"(TO263|D2PAK|DDPAK)7.*|D2PAK.*7P.*", pins=frozenset({6, 7, 8})),
    Outline(name="TO-263", spelled=r"(TO263|D2PAK|DDPAK).*", pins=frozenset({2, 3, 4})),
    Outline(name="TO-252", spelled=r"(TO252|DPAK).*", pins=frozenset({2, 3, 4})),
    Outline(name="TO-251", spelled=r"(TO251|IPAK).*", pins=frozenset({3, 4})),
    Outline(name="TO-262", spelled=r"(TO262|I2PAK).*", pins=frozenset({3, 4})),
    Outline(name="TO-220", spelled=r"I?TO220.*", pins=frozenset({3, 4})),
    Outline(name="TO-247", spelled=r"TO247.*", pins=frozenset({3, 4})),
    Outline(name="SOT-23-6", spelled=r"(SOT|TSOT)23?6.*|TSOP6.*", pins=frozenset({6})),
    Outline(name="SOT-23", spelled=r"(SOT23|TO236).*", pins=frozenset({3})),
    Outline(name="TSSOP-8", spelled=r"TSSOP8.*", pins=frozenset({8})),
    Outline(name="SO-8", spelled=r"(SO|SOP|SOIC)8.*", pins=frozenset({8})),
    Outline(name="DFN 5x6", spelled=r"(P?DFN|QFN|PDFNWB)8?5X6.*", pins=frozenset({4, 5, 8, 9})),
    Outline(name="DFN 3x3", spelled=r"(P?DFN|QFN|PDFNWB)8?3X3.*", pins=frozenset({4, 5, 8, 9})),
)


def outline_of(package: str | None) -> Outline | None:
    """The outline that a package name means; None where we do not know it.

    Args:
        package: As printed or seen: ``D²PAK-7``, ``TO263``.
    """
    plain = re.sub(r"[^A-Z0-9]", "", (package or "").upper().replace("²", "2").replace("×", "X"))
    plain = re.sub(r"^PG", "", plain)
    return next((outline for outline in OUTLINES if re.fullmatch(outline.spelled, plain)), None)


def package_contradiction(*, seen_package: str | None, seen_pins: int | None, sheet_package: str | None) -> str | None:
    """Say what does not fit between the part on the board and its supposed sheet.

    Args:
        seen_package: As a person named it, where they did.
        seen_pins: As counted, where they were.
        sheet_package: As printed.

    Returns:
        One sentence; None where nothing contradicts, also because nothing is known.
    """
    seen, printed = outline_of(seen_package), outline_of(sheet_package)
    if seen and printed and seen.name != printed.name and not _counted_apart(seen, printed, seen_pins):
        return f"the board carries {seen_package}, the sheet is of {sheet_package}: another part, or another ordering code of it"
    if printed and seen_pins is not None and seen_pins not in printed.pins:
        usual = ", ".join(map(str, sorted(printed.pins)))
        return f"{seen_pins} pins were counted, a part in {sheet_package} has {usual} depending on how one counts: look at both again"
    return None


def _counted_apart(seen: Outline, printed: Outline, pins: int | None) -> bool:
    """Whether a person named the family and the pins tell the member: "TO-263" with seven pins is a TO-263-7."""
    return printed.name.startswith(seen.name) and pins in printed.pins
