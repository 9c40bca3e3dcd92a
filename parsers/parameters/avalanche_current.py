"""Avalanche current, single or repetitive: ``IAS``, ``IAR``."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="id_aval",
    symbols=(r"IA[SRVP]?", r"IAS(?:AR)?", r"IDAS", r"IARR?", r"ILAS"),
    words=(
        r"avalanchecurrent",
        r"avalanchedraincurrent",
        r"雪崩电流",
        r"雪崩電流",
        r"アバランシェ電流",
        r"avalanchepeakcurrent",
        r"nonrepetitiveavalanchecurrent",
    ),
    never=(r"energy", r"能量"),
    units=("A", "mA"),
    low=0.05,
    high=1500,
    limits=(Limit.MAX,),
    keeps=("t",),
)
