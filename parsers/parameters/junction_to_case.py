"""Thermal resistance from junction to case or mounting base."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="rth_jc",
    symbols=(
        r"R?(?:TH|Θ|Q|0|)?JC(?:TOP|BOT(?:TOM)?|DRAIN|D)?",
        r"RTHJC(?:ASE)?",
        r"RTHJMB",
        r"RΘJC",
        r"RTHJCASE",
        r"RTHCHC",
        r"ΘJC",
        r"RTHJF",
    ),
    words=(
        r"junction(?:to)?(?:the)?(?:drain)?case",
        r"junction(?:to)?mountingbase",
        r"channel(?:to)?case",
        r"结到?(?:管)?壳",
        r"結-?ケース",
        r"junctiontocase",
        r"junctionto(?:exposed)?(?:pad|tab)$",
        r"thermalresistancejunctioncase",
        r"junctiontobottom",
        r"结至(?:外)?壳",
        r"(?:接面|結)(?:至|到)?(?:外|管)?殼",
        r"チャネルケース",
    ),
    never=(r"sink", r"ambient", r"caseto?sink", r"impedance(?:curve)", r"lead"),
    units=("K/W",),
    limits=(Limit.TYP, Limit.MAX),
    low=0.02,
    high=200,
    keeps=("t", "tc"),
)
