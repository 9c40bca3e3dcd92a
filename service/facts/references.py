"""Every source that a formula or a default cites, by the key under which it is cited.

``seen`` says how the source was looked at, because that is part of what it proves: ``whole`` (its own text), ``rendering`` (a third
party's plain-text copy), ``excerpt`` (the quoted passage alone) or ``recalled`` (known, not looked at; no test may rest on it).
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference:
    """One source.

    Attributes:
        title: Author or publisher, and title.
        number: Its number at the publisher.
        revision: Revision or date.
        seen: whole, rendering, excerpt or recalled.
    """

    title: str
    number: str
    revision: str
    seen: str


def _sheet(maker: str, part: str, number: str, revision: str, seen: str = "whole") -> Reference:
    """A datasheet."""
    return Reference(title=f"{maker}, datasheet of {part}", number=number, revision=revision, seen=seen)


REFERENCES: dict[str, Reference] = {
    "eee-inst-002": Reference(
        title="NASA, Instructions for EEE Parts Selection, Screening, Qualification and Derating, Section S1, Table 4",
        number="EEE-INST-002",
        revision="May 2003",
        seen="whole",
    ),
    "an11158": Reference(
        title="NXP/Nexperia, Understanding power MOSFET data sheet parameters",
        number="AN11158",
        revision="4, 2014",
        seen="whole",
    ),
    "an90003": Reference(title="Nexperia, LFPAK MOSFET thermal design guide", number="AN90003", revision="", seen="rendering"),
    "an2112": Reference(title="Infineon, Designing with Power MOSFETs", number="AN_2112", revision="", seen="rendering"),
    "an2015-10": Reference(
        title="Infineon, application note on transient thermal impedance",
        number="AN2015-10",
        revision="1.2",
        seen="rendering",
    ),
    "an936": Reference(title="International Rectifier, application note", number="AN-936", revision="", seen="whole"),
    "an1005": Reference(
        title="International Rectifier, application note, as quoted in the notes of its datasheets",
        number="AN-1005",
        revision="",
        seen="excerpt",
    ),
    "an558": Reference(title="Fairchild, Introduction to power MOSFETs and their applications", number="AN-558", revision="", seen="whole"),
    "and90146": Reference(title="onsemi, application note", number="AND90146", revision="", seen="rendering"),
    "and9093": Reference(
        title="onsemi, Using MOSFETs in Load Switch Applications",
        number="AND9093/D",
        revision="1, February 2014",
        seen="whole",
    ),
    "sluaao2": Reference(title="Texas Instruments, application report on safe operating area", number="SLUAAO2", revision="", seen="rendering"),
    "toshiba-avalanche": Reference(
        title="Toshiba, questions and answers: how to calculate the avalanche energy",
        number="",
        revision="",
        seen="excerpt",
    ),
    "lattice-2008": Reference(
        title="Lattice, Using Power MOSFETs with Power Manager Devices, p. 15-3",
        number="",
        revision="April 2008",
        seen="whole",
    ),
    "mil-prf-19500-685": Reference(
        title="US Department of Defense, performance specification, transistor 2N7475T1",
        number="MIL-PRF-19500/685",
        revision="F",
        seen="excerpt",
    ),
    "mil-prf-19500-555": Reference(
        title="US Department of Defense, performance specification, transistor 2N6788",
        number="MIL-PRF-19500/555",
        revision="L",
        seen="excerpt",
    ),
    "irf1404": _sheet("International Rectifier", "IRF1404", "PD-91896", "F"),
    "irf3205": _sheet("International Rectifier", "IRF3205", "PD-91279", "E"),
    "irfr3806": _sheet("International Rectifier", "IRFR3806", "PD-97313", ""),
    "irfp1405": _sheet("International Rectifier", "IRFP1405", "PD-95810", ""),
    "irlr2905": _sheet("International Rectifier", "IRLR2905", "PD-91334", "E"),
    "irf540npbf": _sheet("International Rectifier", "IRF540NPbF", "PD-94812", ""),
    "fairchild-2002": _sheet("Fairchild", "IRF510, IRF540, IRFP450 and IRFP240", "", "B, 2002"),
    "psmn022-30pl": _sheet("NXP", "PSMN022-30PL", "", "02"),
    "buk7y12-55b": _sheet("NXP", "BUK7Y12-55B", "", "", seen="excerpt"),
    "buk9637-100e": _sheet("Nexperia", "BUK9637-100E", "", "2016"),
    "buk7y3r5-40h": _sheet("Nexperia", "BUK7Y3R5-40H", "", "8 May 2018", seen="excerpt"),
    "lishen-lp54173207": Reference(title="Lishen, specification of cell LP54173207-202Ah", number="", revision="0", seen="excerpt"),
    "lfp-26650-3300": Reference(title="Specification of cell LFP-26650-3300", number="", revision="", seen="excerpt"),
    "astm-b258": Reference(
        title="ASTM, standard nominal diameters of AWG sizes of solid round wires",
        number="B258",
        revision="2002",
        seen="excerpt",
    ),
    "nbs-100": Reference(title="National Bureau of Standards, Copper Wire Tables", number="Handbook 100", revision="1966", seen="excerpt"),
    "iec-60228": Reference(title="IEC, Conductors of insulated cables", number="60228", revision="2004", seen="excerpt"),
    "churchill-chu-1975": Reference(
        title="Churchill and Chu, Correlating equations for laminar and turbulent free convection from a vertical plate",
        number="Int. J. Heat Mass Transfer 18",
        revision="1975",
        seen="excerpt",
    ),
    "incropera": Reference(title="Incropera and others, Introduction to Heat Transfer", number="", revision="6th edition", seen="excerpt"),
    "us-atmosphere-1976": Reference(title="NOAA, NASA and USAF, U.S. Standard Atmosphere", number="", revision="1976", seen="excerpt"),
    "rosa-grover": Reference(title="Rosa and Grover, formulas for the inductance of wires", number="", revision="", seen="recalled"),
}


def cited(text: str) -> tuple[str, ...]:
    """The keys that a card's source line names.

    Args:
        text: "an11158 eq. 5; own, inverse."

    Returns:
        Known keys in the order of the text.
    """
    words = text.replace(";", " ").replace(",", " ").replace(":", " ").replace("(", " ").split()
    return tuple(word.rstrip(".") for word in words if word.rstrip(".") in REFERENCES)
