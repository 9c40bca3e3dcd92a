"""Energy that one avalanche pulse may carry: ``EAS``."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="eas",
    symbols=(r"EAS", r"EDSAS", r"EAS(?:THERMALLYLIMITED|TESTED)?", r"WDSS", r"UIS", r"EDSSA?"),
    words=(
        r"singlepulsed?(?:drain(?:to)?source)?avalancheenergy",
        r"avalancheenergy.{0,3}singlepulse",
        r"nonrepetitive(?:drain(?:to)?source)?avalancheenergy",
        r"avalancheenergy",
        r"单脉冲雪崩(?:击穿)?能量",
        r"雪崩能量",
        r"單脈衝雪崩能量",
        r"singlepulse.{0,22}energy",
    ),
    never=(
        r"(?<!non)repetitiveavalancheenergy",
        r"avalancheenergyrepetitive",
        r"current",
        r"重复",
        r"(?<!non)repetitivepulse",
        r"avalancheenergy,?repetitive",
    ),
    units=("mJ", "J", "uJ"),
    low=1e-05,
    high=20,
    limits=(Limit.TYP, Limit.MAX),
)
