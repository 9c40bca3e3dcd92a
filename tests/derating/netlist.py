"""Electro-thermal circuits for ngspice, written from plain numbers: volts on a heat node are degrees, amperes are watts.

It knows nothing of the engine: a test gives it the resistances that a person would take from the sheet by the conventions, and the
circuit simulator finds the state by itself.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise


@dataclass(frozen=True, kw_only=True)
class Part:
    """Equal switches of one bank: resistance at 25 degC, way to the board, and the ratio as an ngspice expression of {t}."""

    ohm: float
    kpw: float
    ratio: str
    count: int = 1


def power_law(exponent: float, cold_exponent: float | None = None) -> str:
    """The power law in kelvin, with another exponent below 25 degC where one is given."""
    law = "pow(({{t}}+273.15)/298.15,{a})"
    if cold_exponent is None:
        return law.format(a=exponent)
    return f"({{t}} > 25 ? {law.format(a=exponent)} : {law.format(a=cold_exponent)})"


def curve(points: Sequence[tuple[float, float]]) -> str:
    """Straight lines between points, as nested choices."""
    lines = []
    for (t0, k0), (t1, k1) in pairwise(points):
        lines.append((t1, f"({k0}+({{t}}-({t0}))*{(k1 - k0) / (t1 - t0):.12g})"))
    text = lines[-1][1]
    for end, line in reversed(lines[:-1]):
        text = f"({{t}} < {end} ? {line} : {text})"
    return text


def _elements(banks: Sequence[Sequence[Part]], amperes: float, board_ohm: float) -> list[str]:
    """Switches, their heat and the shared board."""
    lines: list[str] = []
    number = 0
    for b, bank in enumerate(banks):
        lines.append(f"I{b} 0 d{b} {amperes}")
        for part in bank:
            for _ in range(part.count):
                number += 1
                ratio = part.ratio.format(t=f"V(t{number})")
                lines += [
                    f"B{number} d{b} s{number} I = V(d{b},s{number})/({part.ohm:.12g}*{ratio})",
                    f"V{number} s{number} 0 0",
                    f"Bp{number} 0 t{number} I = V(d{b})*I(V{number})",
                    f"R{number} t{number} brd {part.kpw:.12g}",
                ]
    lines.append(f"Ih 0 brd {amperes**2 * board_ohm:.12g}")
    return lines


def settled_deck(banks: Sequence[Sequence[Part]], *, amperes: float, ambient_c: float, board_kpw: float, board_ohm: float = 0.0) -> str:
    """A circuit whose operating point is the settled state; prints t1, t2 ..., i1, i2 ..., brd and d0, d1."""
    count = sum(part.count for bank in banks for part in bank)
    start = " ".join(f"v(t{n})={ambient_c + 5}" for n in range(1, count + 1))
    drops = " ".join(f"v(d{b})=0.03" for b in range(len(banks)))
    shown = [f"let t{n}x = v(t{n})\nprint t{n}x\nlet i{n}x = i(v{n})\nprint i{n}x" for n in range(1, count + 1)]
    shown += [f"let d{b}x = v(d{b})\nprint d{b}x" for b in range(len(banks))]
    return "\n".join(
        [
            "* settled state of switch banks",
            *_elements(banks, amperes, board_ohm),
            f"Rba brd amb {max(board_kpw, 1e-9):.12g}",
            f"Va amb 0 {ambient_c}",
            ".options reltol=1e-7 abstol=1e-12 vntol=1e-9 itl1=2000",
            f".nodeset {start} v(brd)={ambient_c + 2} {drops}",
            ".control",
            "op",
            "let brdx = v(brd)\nprint brdx",
            *shown,
            ".endc",
            ".end",
            "",
        ],
    )


def heating_deck(banks: Sequence[Sequence[Part]], *, amperes: float, ambient_c: float, board_kpw: float, seconds: float) -> str:
    """The same from cold in time, with 0.02 J/K a junction; measures the first junction at the middle and at the end."""
    count = sum(part.count for bank in banks for part in bank)
    masses = [f"C{n} t{n} 0 0.02 ic={ambient_c}" for n in range(1, count + 1)]
    return "\n".join(
        [
            "* heating of switch banks from cold",
            *_elements(banks, amperes, 0.0),
            f"Rba brd amb {max(board_kpw, 1e-9):.12g}",
            f"Va amb 0 {ambient_c}",
            *masses,
            f"Cb brd 0 0.02 ic={ambient_c}",
            f".tran {seconds / 400:.6g} {seconds} 0 {seconds / 400:.6g} uic",
            f".meas tran middle find v(t1) at={seconds / 2:.6g}",
            f".meas tran final find v(t1) at={seconds * 0.999:.6g}",
            ".end",
            "",
        ],
    )
