"""The size of a wire as written: ``2 AWG``, ``25 mm2`` (geometric) or ``25 mm2 class 5`` (largest resistance by IEC 60228)."""

import math
import re
from dataclasses import dataclass

from service.facts.sourced import Known, Sourced
from service.formats import dimensions as d
from service.formats.errors import UnitError
from service.formats.quantity import read_number

ALLOWED = "4/0 AWG to 40 AWG, '25 mm2' (geometric copper), '25 mm2 class 5' or 'class 2' (IEC 60228)"
_GAUGE = re.compile(r"(?:([1-4])/0|(0{1,4})|([1-9]|[1-3][0-9]|40))\s*AWG", re.IGNORECASE)
_CLASS = re.compile(r"(.*\S)\s+class\s+([0-9]+)")

# IEC 60228:2004, largest resistance of plain copper at 20 degC: nominal cross-section [mm2] to [ohm/km].
CLASS_OHM_PER_KM = {
    2: {2.5: 7.41, 4: 4.61, 6: 3.08, 10: 1.83, 16: 1.15, 25: 0.727, 35: 0.524},
    5: {
        0.5: 39.0,
        0.75: 26.0,
        1: 19.5,
        1.5: 13.3,
        2.5: 7.98,
        4: 4.95,
        6: 3.30,
        10: 1.91,
        16: 1.21,
        25: 0.780,
        35: 0.554,
        50: 0.386,
        70: 0.272,
        95: 0.206,
        120: 0.161,
    },
}


@dataclass(frozen=True, slots=True, kw_only=True)
class WireSize:
    """What a written size says of one conductor.

    Attributes:
        area_mm2: Copper, geometric; a class names its nominal area. [mm2]
        resistance_ohm_per_m: At 20 degC, where a class fixes it. [ohm/m]
        text: As written.
    """

    area_mm2: Sourced
    resistance_ohm_per_m: Sourced | None
    text: str


def read_wire(written: object, key: str) -> WireSize:
    """Read the size of a wire.

    Args:
        written: What was written.
        key: Where it stands.

    Returns:
        The copper's area, and the resistance where a class fixes it.

    Raises:
        UnitError: No such gauge, no area, or a size that the class does not list.
    """
    text = written.strip() if isinstance(written, str) else ""
    if gauge := _GAUGE.fullmatch(text):
        return WireSize(area_mm2=_area(gauge_area_mm2(_number(gauge)), name="ASTM B258"), resistance_ohm_per_m=None, text=text)
    classed = _CLASS.fullmatch(text)
    try:
        area = read_number(classed[1] if classed else text, key, dimension=d.AREA)
    except UnitError as error:
        raise UnitError(key=key, value=written, why="no size of a wire", allowed=ALLOWED) from error
    if not 0 < area <= 1000:
        raise UnitError(key=key, value=written, why="no size of a wire", allowed=ALLOWED)
    return WireSize(area_mm2=_area(area), resistance_ohm_per_m=_classed(area, classed[2], written, key) if classed else None, text=text)


def gauge_area_mm2(number: int) -> float:
    """Copper of an American wire gauge, 0 for 1/0 and -3 for 4/0 (ASTM B258: No. 36 is 0.127 mm, 39 equal ratios to 11.684 mm). [mm2]."""
    diameter_mm: float = 0.127 * 92 ** ((36 - number) / 39)
    return math.pi / 4 * diameter_mm**2


def _number(gauge: re.Match[str]) -> int:
    """The gauge as a number: 2/0 and 00 are -1."""
    over, noughts, plain = gauge.groups()
    return int(plain) if plain else 1 - (int(over) if over else len(noughts))


def _area(value: float, *, name: str = "") -> Sourced:
    """An area as a fact."""
    return Sourced(value=value, unit="mm2", known=Known.TYPED, name=name)


def _classed(area: float, number: str, written: object, key: str) -> Sourced:
    """The resistance that a class allows a nominal size at most."""
    sizes = CLASS_OHM_PER_KM.get(int(number), {})
    if area not in sizes:
        listed = "; ".join(f"class {name}: {', '.join(f'{size:g}' for size in row)} mm2" for name, row in CLASS_OHM_PER_KM.items())
        raise UnitError(key=key, value=written, why="no such size in this class", allowed=listed)
    return Sourced(value=sizes[area] / 1000, unit="ohm/m", known=Known.CLASS_DEFAULT, name=f"IEC 60228 class {number}, plain copper, largest")
