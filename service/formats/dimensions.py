"""What a quantity may measure, and the spellings of units that are understood for it.

The left side of each table is what people write, after compatibility normalisation of the characters; the right side is our own name for the unit.
"""

from dataclasses import dataclass

PREFIXES = {"k": "kilo", "": "", "m": "milli", "u": "micro", "\u03bc": "micro", "n": "nano", "p": "pico"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Dimension:
    """One kind of quantity.

    Attributes:
        name: In plain words.
        house: The unit that facts carry, in ASCII.
        spellings: Accepted spelling to our name of the unit.
        example: How a value is written.
    """

    name: str
    house: str
    spellings: dict[str, str]
    example: str

    @property
    def allowed(self) -> str:
        """The spellings that an error message lists: the ASCII ones."""
        return ", ".join(spelling for spelling in self.spellings if spelling.isascii())


def _prefixed(symbols: tuple[str, ...], unit: str, prefixes: str) -> dict[str, str]:
    """Every symbol alone and with each prefix: ``mohm``, ``mΩ`` and so on."""
    letters = ("", *prefixes.replace("u", "u\u03bc"))
    return {letter + symbol: PREFIXES[letter] + unit for symbol in symbols for letter in letters}


# Why so many degree signs: the masculine ordinal stands where a degree sign should in much that is copied from a PDF; normalised it is an "o".
DEGREES = ("degC", "\N{DEGREE SIGN}C", "oC", "C")

CURRENT = Dimension(name="current", house="A", spellings=_prefixed(("A",), "ampere", "muk"), example="80 A")
VOLTAGE = Dimension(name="voltage", house="V", spellings=_prefixed(("V",), "volt", "mk"), example="3.65 V")
RESISTANCE = Dimension(name="resistance", house="ohm", spellings=_prefixed(("ohm", "\u03a9", "Ohm"), "ohm", "muk"), example="3.2 mohm")
POWER = Dimension(name="power", house="W", spellings=_prefixed(("W",), "watt", "mk"), example="5 W")
ENERGY = Dimension(name="energy", house="J", spellings=_prefixed(("J",), "joule", "muk"), example="300 mJ")
TIME = Dimension(
    name="time",
    house="s",
    spellings=_prefixed(("s",), "second", "mun") | {"min": "minute", "h": "hour"},
    example="250 us",
)
LENGTH = Dimension(name="length", house="m", spellings={"m": "meter", "mm": "millimeter", "cm": "centimeter"}, example="0.3 m")
AREA = Dimension(name="area", house="mm2", spellings={"mm2": "mm**2", "cm2": "cm**2"}, example="25 mm2")
INDUCTANCE = Dimension(name="inductance", house="H", spellings=_prefixed(("H",), "henry", "mun"), example="1.2 uH")
CAPACITANCE = Dimension(name="capacitance", house="F", spellings=_prefixed(("F",), "farad", "munp"), example="4200 pF")
CHARGE = Dimension(name="charge", house="C", spellings=_prefixed(("C",), "coulomb", "unp"), example="95 nC")
TEMPERATURE = Dimension(name="temperature", house="degC", spellings=dict.fromkeys(DEGREES, "degC"), example="40 degC")
HEAT_CAPACITY = Dimension(
    name="heat capacity",
    house="J/K",
    spellings={"J/K": "J/K", "kJ/K": "kJ/K"} | {f"J/{degree}": "J/K" for degree in DEGREES},
    example="55 J/K",
)
THERMAL_RESISTANCE = Dimension(
    name="thermal resistance",
    house="K/W",
    spellings={"K/W": "K/W"} | {f"{degree}/W": "K/W" for degree in DEGREES},
    example="40 K/W",
)
HEAT_SLOPE = Dimension(
    name="derating slope",
    house="W/K",
    spellings={"W/K": "W/K", "mW/K": "mW/K"} | {f"{m}W/{degree}": f"{m}W/K" for degree in DEGREES for m in ("", "m")},
    example="1.3 W/degC",
)
