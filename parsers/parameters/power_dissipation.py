"""Power dissipation at a case or an ambient temperature: ``PD``, ``Ptot``."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="pd",
    symbols=(r"P(?:D|TOT|T|C|MAX)?(?:SM|MAX)?", r"PDTC25C?", r"PDTA25C?", r"PD25C?", r"PDISS", r"PCH", r"PDTC25"),
    words=(
        r"powerdissipation",
        r"totaldissipation",
        r"dissipation",
        r"耗散功率",
        r"功耗",
        r"功率(?:消耗|損耗)",
        r"許容損失",
        r"maximumpower",
        r"drainpower",
        r"channeldissipation",
    ),
    never=(r"derat", r"factor", r"above25", r"slope", r"降额", r"gatepower"),
    units=("W", "mW", "kW"),
    low=0.05,
    high=2500,
    limits=(Limit.MAX,),
    keeps=("tc", "ta", "tsp", "t"),
    needs=("tc", "ta", "tsp"),
)
