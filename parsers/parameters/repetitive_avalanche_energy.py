"""Energy of repeated avalanche pulses: ``EAR``."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="ear",
    symbols=(r"EAR", r"EAV", r"EDSAR"),
    words=(
        r"(?<!non)repetitiveavalancheenergy",
        r"avalancheenergy.{0,3}repetitive",
        r"(?<!non)repetitive(?:drain(?:to)?source)?avalancheenergy",
        r"重复雪崩能量",
    ),
    never=(r"current", r"nonrepetitive", r"singlepulse"),
    units=("mJ", "J", "uJ"),
    low=1e-07,
    high=5,
    limits=(Limit.MAX,),
)
