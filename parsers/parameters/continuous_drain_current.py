"""Continuous drain current: at a case or an ambient temperature, limited by silicon or by the package."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="id_cont",
    symbols=(r"IDS?(?:DC|CONT|25C?|100C?|TC25C?|TC100C?|TC|TA|70C?)?", r"IDSM"),
    words=(r"continuousdraincurrent", r"draincurrent", r"漏极?(?:连续)?电流", r"连续漏极?电流", r"ドレイン電流", r"汲極電流", r"currentcontinuous"),
    never=(
        r"pulse",
        r"peak",
        r"leakage",
        r"zerogate",
        r"onstate",
        r"offstate",
        r"avalanche",
        r"cutoff",
        r"reverse",
        r"diode",
        r"saturation",
        r"脉冲",
        r"パルス",
        r"脈衝",
        r"雪崩",
        r"sourcecurrent",
        r"maximumcurrentpulsed",
        r"bodydiode",
        r"sourcedrain",
        r"drainsourcediode",
        r"^draincutoff",
        r"gatevoltage",
        r"switching",
    ),
    units=("A", "mA"),
    low=0.02,
    high=1500,
    limits=(Limit.MAX,),
    keeps=("tc", "ta", "tsp", "vgs", "t", "tj"),
    needs=("tc", "ta", "tsp"),
)
