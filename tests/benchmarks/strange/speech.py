"""How one sheet words things: its language, its spellings of names, symbols, conditions and numbers; chosen once a sheet."""

import re
from collections.abc import Mapping
from random import Random
from typing import Any

from strange import wording

_LANGUAGES: dict[str, tuple[Mapping[str, tuple[str, ...]], Mapping[str, tuple[str, ...]]]] = {
    "en": ({}, {}),
    "zh": (wording.CHINESE, wording.CHINESE_TITLES),
    "zh-Hant": (wording.TRADITIONAL, wording.TRADITIONAL_TITLES),
    "ja": (wording.JAPANESE, wording.JAPANESE_TITLES),
}


class Speech:
    """The choices of one sheet."""

    def __init__(self, rng: Random) -> None:
        self.rng = rng
        self.language = rng.choices(tuple(_LANGUAGES), (14, 4, 1, 1))[0]
        self.bilingual = self.language != "en" and rng.random() < 0.4
        self.signed = rng.random() < 0.8
        self.per_watt = rng.choice(("°C/W", "°C/W", "K/W"))
        self.typical_thermal = rng.random() < 0.4
        self.minus = rng.choices(("-", "\u2212", "\u2013"), (6, 1, 1))[0]
        self.comma = rng.random() < 0.05
        self.spaced = rng.random() < 0.65
        self.equals = rng.choices(("=", "@", "at"), (10, 1, 0.5))[0]
        self.between = rng.choice((", ", ", ", "; ", ","))
        self.case = rng.choice(("T_{C}", "T_{c}", "T_{C}", "T_{case}", "T_{mb}", "TC", "Tc"))
        self.air = rng.choice(("T_{A}", "T_{A}", "T_{a}", "T_{amb}", "TA"))
        self.junction = rng.choice(("T_{J}", "T_{j}", "TJ"))
        self.degree = "℃" if self.language != "en" and rng.random() < 0.6 else rng.choice(("°C", "°C", "°C", "ºC"))
        self.indexed = rng.random() < 0.75
        self._names: dict[str, str] = {}
        self._symbols: dict[str, str] = {}

    def name(self, key: str) -> str:
        """What a parameter is called, the same throughout a sheet."""
        if key not in self._names:
            own = _LANGUAGES[self.language][0].get(key)
            english = self.rng.choice(wording.NAMES[key])
            name = self.rng.choice(own) if own else english
            self._names[key] = f"{name} {english}" if own and self.bilingual else name
        return self._names[key]

    def symbol(self, key: str) -> str:
        """Its letter symbol."""
        if key not in self._symbols:
            self._symbols[key] = self.index(self.rng.choice(wording.SYMBOLS[key]))
        return self._symbols[key]

    def lone_junction(self) -> str:
        """The name of a junction limit without a range."""
        names = {"en": ("Maximum Junction Temperature", "Operating Junction Temperature", "Junction temperature"), "zh": ("工作结温", "结温")}
        return self.rng.choice(names.get(self.language) or _LANGUAGES[self.language][0]["tj_max"])

    def lone_symbol(self) -> str:
        """Its symbol."""
        return self.index(self.rng.choice(("T_{J}", "T_{j}", "T_{j(max)}")) if self.language != "ja" else "T_{ch}")

    def title(self, column: str) -> str:
        """The heading of a column."""
        own = _LANGUAGES[self.language][1].get(column)
        return self.rng.choice(own or wording.TITLES[column])

    def caption(self, table: str) -> str:
        """The caption of a table."""
        english = self.rng.choice(wording.CAPTIONS[table])
        return wording.CHINESE_CAPTIONS[table] if self.language.startswith("zh") and not self.bilingual else english

    def index(self, text: str) -> str:
        """A symbol with its index lowered, or plain in a sheet that lowers none."""
        return text if self.indexed else re.sub(r"_\{([^}]*)\}", r"\1", text)

    def number(self, text: str) -> str:
        """A printed number with this sheet's minus and decimal sign."""
        text = re.sub(r"-(?=\s?\d)", self.minus, text)
        return re.sub(r"(?<=\d)\.(?=\d)", ",", text) if self.comma else text

    def units(self, unit: str) -> str:
        """A unit with this sheet's degree."""
        return unit.replace("°C", self.degree)

    def condition(self, name: str, value: Any) -> str:
        """One condition: ``VGS = 10 V``."""
        if name == "t":
            return "Steady State" if value == "steady" else self.rng.choice(("t ≤ 10 s", "t ≤ 10s", "t < 10 s"))
        symbol = {"vgs": "V_{GS}", "vds": "V_{DS}", "id": "I_{D}", "is": "I_{S}", "tc": self.case, "ta": self.air, "tj": self.junction}[name]
        number, unit = self._quantity(name, value)
        if name in {"tc", "ta", "tj"}:
            unit = self.degree
        gap = " " if self.spaced else ""
        equals = f" {self.equals} " if self.spaced or self.equals == "at" else self.equals
        return f"{self.index(symbol)}{equals}{self.number(number)}{gap}{unit}"

    @staticmethod
    def _quantity(name: str, value: float) -> tuple[str, str]:
        if name in {"id", "is"} and abs(value) < 0.01:
            return f"{value * 1e6:g}", "µA"
        return f"{value:g}", "V" if name in {"vgs", "vds"} else "A"

    def conditions(self, cond: Mapping[str, Any], extra: str = "") -> str:
        """All conditions of a line."""
        said = [self.condition(name, value) for name, value in cond.items()]
        return self.between.join(
            [
                *([self.index(extra)] if extra.startswith("V_{DS} = V") else []),
                *said,
                *([self.index(extra)] if extra and not extra.startswith("V_{DS} = V") else []),
            ]
        )
