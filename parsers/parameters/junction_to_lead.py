"""Thermal resistance from junction to lead, foot or solder point."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="rth_jl",
    symbols=(r"R?(?:TH|Θ|Q|0|)?J(?:L|SP|F|S)", r"RTHJSP", r"RTHJFOOT"),
    words=(r"junction(?:to)?(?:drain)?(?:lead|foot)", r"junction(?:to)?solder(?:ing)?point"),
    units=("K/W",),
    limits=(Limit.TYP, Limit.MAX),
    low=1,
    high=600,
    keeps=("t",),
)
