"""Thermal resistance from junction to ambient air, as mounted."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="rth_ja",
    symbols=(r"R?(?:TH|Θ|Q|0|)?JA(?:1|2)?", r"RTHJAMB", r"RTHCHA", r"RTHJA"),
    words=(
        r"junction(?:to)?(?:the)?(?:free)?(?:ambient|air)",
        r"channel(?:to)?ambient",
        r"结到?环境",
        r"结至环境",
        r"(?:接面|結)(?:至|到)?環境",
        r"チャネル外気",
        r"junctiontoambient",
    ),
    never=(r"caseto",),
    units=("K/W", "K/mW"),
    limits=(Limit.TYP, Limit.MAX),
    low=3,
    high=1000,
    keeps=("t",),
)
