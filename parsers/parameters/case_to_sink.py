"""Thermal resistance from case to heat sink."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="rth_cs",
    symbols=(r"R?(?:TH|Θ|Q|0|)?CS", r"RTHCS(?:INK)?", r"RTHCH"),
    words=(r"case(?:to)?(?:heat)?sink",),
    units=("K/W",),
    limits=(Limit.TYP, Limit.MAX),
    low=0.02,
    high=10,
)
