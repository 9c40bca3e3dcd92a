"""Thermal resistance from case to heat sink."""

from parsers.parameter import Card

CARD = Card(
    key="rth_cs",
    symbols=(r"R?(?:TH|Θ|Q|0|)?CS", r"RTHCS(?:INK)?", r"RTHCH"),
    words=(r"case(?:to)?(?:heat)?sink",),
    units=("K/W",),
    low=0.02,
    high=10,
)
