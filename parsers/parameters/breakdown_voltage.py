"""Drain-source breakdown voltage: a minimum, at a small drain current."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="vbr_dss",
    symbols=(r"VBRDSS?X?", r"BVDSS?S?", r"V\(?BR\)?DSS", r"VBDSS", r"VDSSBR", r"V(?:BRXX|BR)DSS"),
    words=(r"breakdownvoltage", r"击穿电压", r"崩潰電壓", r"擊穿電壓", r"降伏電圧"),
    never=(r"coefficient", r"tempco", r"gate(?:to)?(?:source|body)?breakdown", r"temperature", r"gatesourcebreakdown", r"diode"),
    units=("V",),
    low=8,
    high=3300,
    single=Limit.MIN,
    limits=(Limit.MIN, Limit.TYP),
    keeps=("id", "tj", "vgs"),
)
